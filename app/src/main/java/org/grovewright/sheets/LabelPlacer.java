package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds places for labels so that none lies on another or on a mark. Labels are placed in the order
 * asked for, each at the nearest free place around its mark.
 */
final class LabelPlacer {
  /** Directions tried around a mark, in the order of preference: right, left, below, above. */
  private static final double[][] DIRECTIONS = {
    {1, 0}, {-1, 0}, {0, 1}, {0, -1}, {0.8, 0.8}, {0.8, -0.8}, {-0.8, 0.8}, {-0.8, -0.8}
  };

  private static final double[] DISTANCES = {8, 15, 24, 36, 52, 72, 96};

  /** Labels farther than this from their mark are tied to it by a line. */
  private static final double LEADER_FROM = 20;

  /** How much farther from its mark a label may go to keep off one line. */
  private static final double CROSSING_COST = 5;

  /** Mean width of a character over its height; wide enough for the usual sans-serif faces. */
  private static final double CHARACTER_WIDTH = 0.6;

  private final Box canvas;
  private final List<Box> taken = new ArrayList<>();
  private final List<double[]> lines = new ArrayList<>();

  LabelPlacer(Box canvas) {
    this.canvas = canvas;
  }

  /** Keeps labels off a box. */
  void avoid(Box box) {
    taken.add(box);
  }

  /** Makes labels prefer places off a line. */
  void discourage(double x1, double y1, double x2, double y2) {
    lines.add(new double[] {x1, y1, x2, y2});
  }

  /**
   * Finds a place for a label that belongs to an area: its middle if that is free, or else a place
   * nearby.
   *
   * @param text its text
   * @param size height of the text
   * @param x middle of the area
   * @param y middle of the area
   */
  Optional<Place> placeOn(String text, double size, double x, double y) {
    Box box = Box.around(x, y, halfWidth(text, size), size * 0.6);
    if (box.within(canvas) && taken.stream().noneMatch(box::overlaps) && crossings(box) == 0) {
      taken.add(box);
      return Optional.of(new Place(x, y, box, false));
    }
    return place(text, size, x, y);
  }

  private static double halfWidth(String text, double size) {
    return text.length() * size * CHARACTER_WIDTH / 2 + 1;
  }

  /**
   * Finds a place for a label.
   *
   * @param text its text
   * @param size height of the text
   * @param x the mark it belongs to
   * @param y the mark it belongs to
   * @return its place, or nothing where all places are taken
   */
  Optional<Place> place(String text, double size, double x, double y) {
    return place(text, size, x, y, Double.POSITIVE_INFINITY);
  }

  /** Finds a place right beside a mark, where no leader line is needed; or none. */
  Optional<Place> near(String text, double size, double x, double y) {
    return place(text, size, x, y, LEADER_FROM);
  }

  private Optional<Place> place(String text, double size, double x, double y, double farthest) {
    double halfWidth = halfWidth(text, size);
    double halfHeight = size * 0.6;
    Place best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double distance : DISTANCES) {
      if (distance > farthest || distance >= least) {
        break;
      }
      for (double[] direction : DIRECTIONS) {
        double centreX = x + direction[0] * distance + Math.signum(direction[0]) * halfWidth;
        double centreY = y + direction[1] * (distance + halfHeight);
        Box box = Box.around(centreX, centreY, halfWidth, halfHeight);
        if (!box.within(canvas) || taken.stream().anyMatch(box::overlaps)) {
          continue;
        }
        double cost = distance + CROSSING_COST * crossings(box);
        if (cost < least) {
          least = cost;
          best = new Place(centreX, centreY, box, distance > LEADER_FROM);
        }
      }
    }
    if (best == null) {
      return Optional.empty();
    }
    taken.add(best.box());
    return Optional.of(best);
  }

  private int crossings(Box box) {
    int count = 0;
    for (double[] line : lines) {
      if (box.meetsLine(line[0], line[1], line[2], line[3])) {
        count++;
      }
    }
    return count;
  }

  /**
   * Where a label goes.
   *
   * @param x middle of the text
   * @param y middle of the text
   * @param box room it takes
   * @param far whether a leader line should tie it to its mark
   */
  record Place(double x, double y, Box box, boolean far) {}
}
