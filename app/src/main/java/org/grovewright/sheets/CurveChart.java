package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;

/**
 * Draws a curve with marked points on plain axes, such as what a supply gives against what zones
 * draw.
 */
final class CurveChart {
  private static final double WIDTH = 640;
  private static final double HEIGHT = 340;
  private static final double LEFT = 64;
  private static final double RIGHT = 24;
  private static final double TOP = 20;
  private static final double BOTTOM = 54;
  private static final double LABEL = 13;

  private final Axis across;
  private final Axis up;
  private final Svg svg = new Svg();

  private CurveChart(Axis across, Axis up) {
    this.across = across;
    this.up = up;
  }

  /**
   * The drawing.
   *
   * @param title what it shows
   * @param id part of the ids in the drawing, unique in the page
   * @param across the horizontal axis
   * @param up the vertical axis
   * @param curve points of the curve from left to right
   * @param marks named points
   */
  static String draw(
      String title, String id, Axis across, Axis up, List<double[]> curve, List<Mark> marks) {
    return new CurveChart(across, up).drawn(title, id, curve, marks);
  }

  private String drawn(String title, String id, List<double[]> curve, List<Mark> marks) {
    svg.drawing(WIDTH, HEIGHT, "chart", id + "-title");
    svg.text("title", title, "id", id + "-title");
    axes();
    StringBuilder path = new StringBuilder();
    for (double[] point : curve) {
      Svg.lead(path, x(point[0]), y(point[1]));
    }
    svg.leaf("path", "class", "curve", "d", path);
    LabelPlacer labels = new LabelPlacer(new Box(LEFT + 2, TOP, WIDTH - 4, HEIGHT - BOTTOM - 2));
    for (int i = 1; i < curve.size(); i++) {
      labels.discourage(
          x(curve.get(i - 1)[0]), y(curve.get(i - 1)[1]), x(curve.get(i)[0]), y(curve.get(i)[1]));
    }
    for (Mark mark : marks) {
      labels.avoid(Box.around(x(mark.x()), y(mark.y()), 6, 6));
    }
    for (Mark mark : marks) {
      double x = x(mark.x());
      double y = y(mark.y());
      svg.leaf("circle", "class", "mark", "cx", x, "cy", y, "r", 5.5);
      labels
          .place(mark.label(), LABEL, x, y)
          .ifPresent(
              place ->
                  svg.text(
                      "text",
                      mark.label(),
                      "class",
                      "mark-label",
                      "x",
                      place.x(),
                      "y",
                      place.y() + LABEL * 0.36));
    }
    svg.close();
    return svg.toString();
  }

  private void axes() {
    for (double tick : across.ticks()) {
      double x = x(tick);
      svg.leaf("line", "class", "grid", "x1", x, "y1", TOP, "x2", x, "y2", HEIGHT - BOTTOM);
      svg.text(
          "text", Decimals.significant(tick, 6), "class", "tick mid", "x", x, "y", HEIGHT - 34);
    }
    for (double tick : up.ticks()) {
      double y = y(tick);
      svg.leaf("line", "class", "grid", "x1", LEFT, "y1", y, "x2", WIDTH - RIGHT, "y2", y);
      svg.text(
          "text", Decimals.significant(tick, 6), "class", "tick end", "x", LEFT - 8, "y", y + 4);
    }
    svg.text(
        "text",
        across.title(),
        "class",
        "axis mid",
        "x",
        (LEFT + WIDTH - RIGHT) / 2,
        "y",
        HEIGHT - 10);
    svg.text(
        "text",
        up.title(),
        "class",
        "axis mid",
        "transform",
        "translate(16 " + Decimals.coordinate((TOP + HEIGHT - BOTTOM) / 2) + ") rotate(-90)");
  }

  private double x(double value) {
    return LEFT + across.share(value) * (WIDTH - LEFT - RIGHT);
  }

  private double y(double value) {
    return HEIGHT - BOTTOM - up.share(value) * (HEIGHT - TOP - BOTTOM);
  }

  /**
   * An axis.
   *
   * @param title what it shows, with the unit
   * @param least smallest value on it
   * @param most largest value on it, above the smallest
   */
  record Axis(String title, double least, double most) {
    /** An axis from zero. */
    Axis(String title, double most) {
      this(title, 0, most);
    }

    /**
     * An axis about some values, with room on both sides.
     *
     * @param bound what it does not pass
     */
    static Axis around(String title, double least, double most, double bound) {
      double room = Math.max((most - least) * 0.15, Math.abs(most) * 0.005);
      return new Axis(title, Math.max(0, least - room), Math.min(bound, most + room));
    }

    private double step() {
      double rough = (most - least) / 5;
      double power = Math.pow(10, Math.floor(Math.log10(rough)));
      double lead = rough / power;
      return power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
    }

    private double start() {
      return Math.floor(least / step() + 1e-9) * step();
    }

    private double end() {
      return Math.ceil(most / step() - 1e-9) * step();
    }

    /** Place of a value along the axis, from 0 to 1. */
    private double share(double value) {
      return (value - start()) / (end() - start());
    }

    private List<Double> ticks() {
      List<Double> ticks = new ArrayList<>();
      for (int i = 0; start() + i * step() <= end() + step() * 1e-9; i++) {
        ticks.add(start() + i * step());
      }
      return ticks;
    }
  }

  /** A named point in the units of the axes. */
  record Mark(String label, double x, double y) {}
}
