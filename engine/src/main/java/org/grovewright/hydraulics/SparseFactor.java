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

  /** Heads in m and flows in m3/s below this are taken as none. */
  private static final double FADED = 1e-60;

  private final int n;
  private final int[] columnStart;
  private final int[] row;
  private final int[] target;
  private final double[] inverse;

  /** The matrix before it was factored, and the columns whose factors do not fit it any more. */
  private double[] keptDiagonal;

  private double[] keptLower;
  private final boolean[] stale;
  private boolean anyStale;

  /** For every row the columns with an entry in it and the places of those entries. */
  private int[] rowStart;

  private int[] rowColumn;
  private int[] rowPlace;
  private int[] placeOfRow;

  /**
   * The diagonal, to be filled before a solve; one spare place at the end takes what is ignored.
   */
  final double[] diagonal;

  /** The entries below the diagonal by column; the last place takes what is ignored. */
  final double[] lower;

  /**
   * Prepares the pattern.
   *
   * @param columnStart for every column where its rows start, and the end of all
   * @param row the rows below the diagonal, rising in each column and already closed under
   *     elimination
   * @param spare further places at the end of the diagonal
   */
  SparseFactor(int[] columnStart, int[] row, int spare) {
    this(columnStart, row, targets(columnStart, row), spare);
  }

  private SparseFactor(int[] columnStart, int[] row, int[] target, int spare) {
    n = columnStart.length - 1;
    this.columnStart = columnStart;
    this.row = row;
    this.target = target;
    diagonal = new double[n + spare];
    inverse = new double[n];
    stale = new boolean[n];
    lower = new double[row.length + 1];
  }

  /** An empty matrix of the same pattern. */
  SparseFactor blank() {
    return new SparseFactor(columnStart, row, target, diagonal.length - n);
  }

  /** For every pair of rows of a column, in the order of elimination, the place it writes to. */
  private static int[] targets(int[] columnStart, int[] row) {
    int n = columnStart.length - 1;
    int pairs = 0;
    for (int k = 0; k < n; k++) {
      int size = columnStart[k + 1] - columnStart[k];
      pairs += size <= TABLE_LIMIT ? size * (size - 1) / 2 : 0;
    }
    int[] target = new int[pairs];
    int at = 0;
    for (int k = 0; k < n; k++) {
      int end = columnStart[k + 1];
      if (end - columnStart[k] > TABLE_LIMIT) {
        continue;
      }
      for (int a = columnStart[k]; a < end; a++) {
        for (int b = a + 1; b < end; b++) {
          target[at++] = place(columnStart, row, row[b], row[a]);
        }
      }
    }
    return target;
  }

  /** Place in {@link #lower} of the entry in a row and an earlier column. */
  int place(int inRow, int inColumn) {
    return place(columnStart, row, inRow, inColumn);
  }

  private static int place(int[] columnStart, int[] row, int inRow, int inColumn) {
    int at = columnStart[inColumn];
    int end = columnStart[inColumn + 1];
    if (end - at > TABLE_LIMIT) {
      at = Math.max(at, Arrays.binarySearch(row, at, end, inRow));
    }
    while (at < end && row[at] != inRow) {
      at++;
    }
    if (at == end) {
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

  /**
   * Keeps the matrix as it stands before it is factored, so that {@link #change} can alter it
   * later.
   */
  void keep() {
    if (keptDiagonal == null) {
      keptDiagonal = new double[diagonal.length];
      keptLower = new double[lower.length];
    }
    System.arraycopy(diagonal, 0, keptDiagonal, 0, diagonal.length);
    System.arraycopy(lower, 0, keptLower, 0, lower.length);
  }

  /**
   * Adds to the kept matrix what one link adds whose ends are two rows.
   *
   * @param i an end
   * @param j the other end
   * @param place place of their entry below the diagonal
   * @param more what is added on the diagonal and taken off below it
   */
  void change(int i, int j, int place, double more) {
    keptDiagonal[i] += more;
    keptDiagonal[j] += more;
    keptLower[place] -= more;
    mark(i);
    mark(j);
  }

  private void mark(int column) {
    if (column < n) {
      stale[column] = true;
      anyStale = true;
    }
  }

  /**
   * Factors anew the columns that the changes reach: those changed and all that are eliminated
   * because of them.
   */
  void refactorChanged() {
    if (!anyStale) {
      return;
    }
    if (rowStart == null) {
      indexRows();
    }
    for (int k = 0; k < n; k++) {
      if (stale[k]) {
        stale[k] = false;
        refactor(k);
        if (columnStart[k] < columnStart[k + 1]) {
          stale[row[columnStart[k]]] = true;
        }
      }
    }
    anyStale = false;
  }

  /** Works out one column from the kept matrix and the earlier columns that reach into it. */
  private void refactor(int k) {
    int begin = columnStart[k];
    int end = columnStart[k + 1];
    for (int a = begin; a < end; a++) {
      lower[a] = keptLower[a];
      placeOfRow[row[a]] = a;
    }
    double d = keptDiagonal[k];
    for (int r = rowStart[k]; r < rowStart[k + 1]; r++) {
      int at = rowPlace[r];
      int j = rowColumn[r];
      double times = lower[at] / inverse[j];
      d -= times * lower[at];
      // the rows of column j below k are all among the rows of column k
      for (int b = at + 1; b < columnStart[j + 1]; b++) {
        lower[placeOfRow[row[b]]] -= times * lower[b];
      }
    }
    inverse[k] = 1 / d;
    for (int a = begin; a < end; a++) {
      lower[a] *= inverse[k];
    }
  }

  /** Lists for every row the columns that have an entry in it. */
  private void indexRows() {
    rowStart = new int[n + 1];
    for (int r : row) {
      rowStart[r + 1]++;
    }
    for (int k = 0; k < n; k++) {
      rowStart[k + 1] += rowStart[k];
    }
    rowColumn = new int[row.length];
    rowPlace = new int[row.length];
    int[] next = Arrays.copyOf(rowStart, n);
    for (int k = 0; k < n; k++) {
      for (int a = columnStart[k]; a < columnStart[k + 1]; a++) {
        int at = next[row[a]]++;
        rowColumn[at] = k;
        rowPlace[at] = a;
      }
    }
    placeOfRow = new int[n];
  }

  /** Factors the matrix in place. */
  void factor() {
    factorAndSolve(new double[diagonal.length]);
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

  /** Solves for another right side with the factors found last, which it becomes. */
  void solve(double[] x) {
    for (int k = 0; k < n; k++) {
      double xk = x[k];
      // after a local change most of the right side is nothing, or as good as nothing; numbers
      // that fade towards the least that can be written would make every step slow
      if (Math.abs(xk) < FADED) {
        x[k] = 0;
      } else {
        for (int a = columnStart[k]; a < columnStart[k + 1]; a++) {
          x[row[a]] -= lower[a] * xk;
        }
      }
    }
    backward(x);
  }

  private void backward(double[] x) {
    for (int k = n - 1; k >= 0; k--) {
      double sum = x[k] * inverse[k];
      for (int a = columnStart[k]; a < columnStart[k + 1]; a++) {
        sum -= lower[a] * x[row[a]];
      }
      x[k] = Math.abs(sum) < FADED ? 0 : sum;
    }
  }
}
