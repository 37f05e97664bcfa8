package org.grovewright.hydraulics;

import java.util.Arrays;

/**
 * Factors and solves a sparse symmetric positive definite system whose pattern is known beforehand,
 * as {@code L D L^T}. Rows are in the order of elimination. The pattern and the places every step
 * writes to are worked out once; each solve then only runs through flat arrays.
 */
final class SparseFactor {
  /** Columns with more entries than this look their places up anew to keep the tables small. */
  private static final int TABLE_LIMIT = 12;

  private final int n;
  private final int[] columnStart;
  private final int[] row;
  private final int[] target;
  private final double[] inverse;

  /**
   * The diagonal, to be filled before a solve; one spare place at the end takes what is ignored.
   */
  final double[] diagonal;

  /** The entries below the diagonal by column; the last place takes what is ignored. */
  final double[] lower;

  /**
   * Prepares the pattern.
   *
   * @param structure for every column the rows below the diagonal, already closed under
   *     elimination, in any order; is sorted
   * @param spare further places at the end of the diagonal
   */
  SparseFactor(int[][] structure, int spare) {
    n = structure.length;
    columnStart = new int[n + 1];
    for (int k = 0; k < n; k++) {
      Arrays.sort(structure[k]);
      columnStart[k + 1] = columnStart[k] + structure[k].length;
    }
    row = new int[columnStart[n]];
    int pairs = 0;
    for (int k = 0; k < n; k++) {
      int size = structure[k].length;
      System.arraycopy(structure[k], 0, row, columnStart[k], size);
      if (size <= TABLE_LIMIT) {
        pairs += size * (size - 1) / 2;
      }
    }
    target = new int[pairs];
    int at = 0;
    for (int k = 0; k < n; k++) {
      int size = structure[k].length;
      if (size > TABLE_LIMIT) {
        continue;
      }
      for (int a = 0; a < size; a++) {
        for (int b = a + 1; b < size; b++) {
          target[at++] = place(structure[k][b], structure[k][a]);
        }
      }
    }
    diagonal = new double[n + spare];
    inverse = new double[n];
    lower = new double[row.length + 1];
  }

  /** Place in {@link #lower} of the entry in a row and an earlier column. */
  int place(int inRow, int inColumn) {
    int at = Arrays.binarySearch(row, columnStart[inColumn], columnStart[inColumn + 1], inRow);
    if (at < 0) {
      throw new IllegalStateException("no entry in row " + inRow + ", column " + inColumn);
    }
    return at;
  }

  /** Place in {@link #lower} whose content is ignored. */
  int sparePlace() {
    return row.length;
  }

  /** Empties the matrix, with a small value on the diagonal that keeps it positive definite. */
  void clear(double onDiagonal) {
    Arrays.fill(diagonal, onDiagonal);
    Arrays.fill(lower, 0);
  }

  /** Factors the matrix in place and solves for one right side, which becomes the solution. */
  void factorAndSolve(double[] x) {
    int pair = 0;
    for (int k = 0; k < n; k++) {
      double inv = 1 / diagonal[k];
      inverse[k] = inv;
      double xk = x[k];
      int end = columnStart[k + 1];
      if (end - columnStart[k] > TABLE_LIMIT) {
        wideColumn(k, inv, xk, x);
        continue;
      }
      for (int a = columnStart[k]; a < end; a++) {
        double value = lower[a];
        double l = value * inv;
        int r = row[a];
        diagonal[r] -= l * value;
        x[r] -= l * xk;
        for (int b = a + 1; b < end; b++) {
          lower[target[pair++]] -= l * lower[b];
        }
        lower[a] = l;
      }
    }
    backward(x);
  }

  private void wideColumn(int k, double inv, double xk, double[] x) {
    int end = columnStart[k + 1];
    for (int a = columnStart[k]; a < end; a++) {
      double value = lower[a];
      double l = value * inv;
      int r = row[a];
      diagonal[r] -= l * value;
      x[r] -= l * xk;
      // the rows of this column below r are all among the rows of column r
      int into = columnStart[r];
      for (int b = a + 1; b < end; b++) {
        while (row[into] != row[b]) {
          into++;
        }
        lower[into] -= l * lower[b];
      }
      lower[a] = l;
    }
  }

  private void backward(double[] x) {
    for (int k = n - 1; k >= 0; k--) {
      double sum = x[k] * inverse[k];
      for (int a = columnStart[k]; a < columnStart[k + 1]; a++) {
        sum -= lower[a] * x[row[a]];
      }
      x[k] = sum;
    }
  }
}
