package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Draws the pressure along one line of tubing above the ground it lies on. The range in which the
 * emitters work is a band behind the pressure; drawn small enough for a phone.
 */
final class ProfileChart {
  private static final double WIDTH = 360;
  private static final double LEFT = 52;
  private static final double RIGHT = 12;
  private static final double TOP = 14;
  private static final double PRESSURE_BOTTOM = 190;
  private static final double GROUND_TOP = 214;
  private static final double GROUND_BOTTOM = 278;
  private static final double HEIGHT = 326;
  private static final double LABEL = 11.5;

  private final Span across;
  private final Span pressure;
  private final Span ground;
  private final Svg svg = new Svg();

  /**
   * What is drawn, in the units of the axes.
   *
   * @param lengthTitle title of the axis of distance
   * @param pressureTitle title of the axis of pressure
   * @param groundTitle title of the axis of ground
   * @param along distance of each place from the feed
   * @param pressure pressure at each place
   * @param ground height of the ground at each place
   * @param rangeFrom least pressure that suits all emitters
   * @param rangeTo greatest pressure that suits all emitters
   * @param drips the emitters
   */
  record Content(
      String lengthTitle,
      String pressureTitle,
      String groundTitle,
      double[] along,
      double[] pressure,
      double[] ground,
      double rangeFrom,
      double rangeTo,
      List<Drip> drips) {}

  /**
   * An emitter.
   *
   * @param along its distance from the feed
   * @param pressure the pressure at it
   * @param label its name and number, or empty text
   * @param within whether the pressure suits it
   */
  record Drip(double along, double pressure, String label, boolean within) {}

  private ProfileChart(Content content) {
    double[] p = content.pressure();
    double highest = most(p);
    double lowest = Math.min(least(p), content.rangeFrom());
    for (Drip drip : content.drips()) {
      highest = Math.max(highest, drip.pressure());
      lowest = Math.min(lowest, drip.pressure());
    }
    if (content.rangeTo() < 1.3 * highest) {
      highest = Math.max(highest, content.rangeTo());
    }
    double room = 0.12 * (highest - lowest);
    across = Span.of(0, content.along()[content.along().length - 1], 5);
    pressure = Span.of(Math.max(0, lowest - room), highest + room, 5);
    double low = least(content.ground());
    double high = most(content.ground());
    // a level row should look level: never less than half a metre from top to bottom
    double spare = Math.max(0, (content.along()[content.along().length - 1] / 60 - high + low) / 2);
    ground = Span.of(low - spare, high + Math.max(spare, 1e-3), 3);
  }

  /**
   * The drawing.
   *
   * @param title what it shows
   * @param id part of the ids in the drawing, unique in the page
   * @param content what is drawn
   */
  static String draw(String title, String id, Content content) {
    return new ProfileChart(content).drawn(title, id, content);
  }

  private String drawn(String title, String id, Content content) {
    svg.drawing(WIDTH, HEIGHT, "chart", id + "-title");
    svg.text("title", title, "id", id + "-title");
    range(content);
    axes(content);
    ground(content);
    String curve = line(content.along(), content.pressure(), pressure, TOP, PRESSURE_BOTTOM);
    svg.leaf("path", "class", "curve", "d", curve);
    drips(content);
    svg.close();
    return svg.toString();
  }

  private void range(Content content) {
    double top = y(Math.min(content.rangeTo(), pressure.to()), pressure, TOP, PRESSURE_BOTTOM);
    double bottom =
        y(Math.max(content.rangeFrom(), pressure.from()), pressure, TOP, PRESSURE_BOTTOM);
    if (bottom > top) {
      double wide = WIDTH - RIGHT - LEFT;
      svg.leaf(
          "rect", "class", "range", "x", LEFT, "y", top, "width", wide, "height", bottom - top);
    }
    for (double edge : new double[] {content.rangeFrom(), content.rangeTo()}) {
      if (edge >= pressure.from() && edge <= pressure.to()) {
        double y = y(edge, pressure, TOP, PRESSURE_BOTTOM);
        svg.leaf("line", "class", "range-edge", "x1", LEFT, "y1", y, "x2", WIDTH - RIGHT, "y2", y);
      }
    }
  }

  private void axes(Content content) {
    for (double tick : across.ticks()) {
      double x = x(tick);
      svg.leaf("line", "class", "grid", "x1", x, "y1", TOP, "x2", x, "y2", GROUND_BOTTOM);
      number(tick, "tick mid", x, GROUND_BOTTOM + 16);
    }
    for (double tick : pressure.ticks()) {
      rung(tick, y(tick, pressure, TOP, PRESSURE_BOTTOM));
    }
    for (double tick : ground.ticks()) {
      rung(tick, y(tick, ground, GROUND_TOP, GROUND_BOTTOM));
    }
    svg.text(
        "text",
        content.lengthTitle(),
        "class",
        "axis mid",
        "x",
        (LEFT + WIDTH - RIGHT) / 2,
        "y",
        HEIGHT - 10);
    upright(content.pressureTitle(), (TOP + PRESSURE_BOTTOM) / 2);
    upright(content.groundTitle(), (GROUND_TOP + GROUND_BOTTOM) / 2);
  }

  private void rung(double tick, double y) {
    svg.leaf("line", "class", "grid", "x1", LEFT, "y1", y, "x2", WIDTH - RIGHT, "y2", y);
    number(tick, "tick end", LEFT - 5, y + 4);
  }

  private void number(double tick, String style, double x, double y) {
    svg.text("text", Decimals.significant(tick, 5), "class", style, "x", x, "y", y);
  }

  private void upright(String title, double y) {
    svg.text(
        "text",
        title,
        "class",
        "axis mid",
        "transform",
        "translate(13 " + Decimals.coordinate(y) + ") rotate(-90)");
  }

  private void ground(Content content) {
    double last = content.along()[content.along().length - 1];
    String bottom = Decimals.coordinate(GROUND_BOTTOM);
    String area =
        line(content.along(), content.ground(), ground, GROUND_TOP, GROUND_BOTTOM)
            + " L"
            + Decimals.coordinate(x(last))
            + " "
            + bottom
            + " L"
            + Decimals.coordinate(x(0))
            + " "
            + bottom
            + " Z";
    svg.leaf("path", "class", "ground", "d", area);
  }

  private void drips(Content content) {
    LabelPlacer labels = new LabelPlacer(new Box(LEFT + 1, TOP - 6, WIDTH - 2, PRESSURE_BOTTOM));
    for (int i = 1; i < content.along().length; i++) {
      labels.discourage(
          x(content.along()[i - 1]),
          y(content.pressure()[i - 1], pressure, TOP, PRESSURE_BOTTOM),
          x(content.along()[i]),
          y(content.pressure()[i], pressure, TOP, PRESSURE_BOTTOM));
    }
    for (Drip drip : content.drips()) {
      double x = x(drip.along());
      double y = y(drip.pressure(), pressure, TOP, PRESSURE_BOTTOM);
      svg.leaf("circle", "class", drip.within() ? "drip" : "out", "cx", x, "cy", y, "r", 2.8);
      labels.avoid(Box.around(x, y, 3, 3));
    }
    for (Drip drip : content.drips()) {
      if (drip.label().isEmpty()) {
        continue;
      }
      double x = x(drip.along());
      double y = y(drip.pressure(), pressure, TOP, PRESSURE_BOTTOM);
      labels
          .place(drip.label(), LABEL, x, y)
          .ifPresent(
              place ->
                  svg.text(
                      "text",
                      drip.label(),
                      "class",
                      "mark-label small",
                      "x",
                      place.x(),
                      "y",
                      place.y() + LABEL * 0.36));
    }
  }

  private String line(double[] along, double[] values, Span span, double top, double bottom) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < along.length; i++) {
      Svg.lead(path, x(along[i]), y(values[i], span, top, bottom));
    }
    return path.toString();
  }

  private double x(double value) {
    return LEFT + across.share(value) * (WIDTH - LEFT - RIGHT);
  }

  private static double y(double value, Span span, double top, double bottom) {
    return bottom - span.share(value) * (bottom - top);
  }

  private static double least(double[] values) {
    return Arrays.stream(values).min().orElseThrow();
  }

  private static double most(double[] values) {
    return Arrays.stream(values).max().orElseThrow();
  }

  /** An axis between two values, with ticks at round numbers within. */
  private record Span(double from, double to, double step) {
    static Span of(double from, double to, int parts) {
      double rough = Math.max(to - from, 1e-9) / parts;
      double power = Math.pow(10, Math.floor(Math.log10(rough)));
      double lead = rough / power;
      return new Span(
          from,
          Math.max(to, from + 1e-9),
          power * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10));
    }

    double share(double value) {
      return (value - from) / (to - from);
    }

    List<Double> ticks() {
      List<Double> ticks = new ArrayList<>();
      for (long i = (long) Math.ceil(from / step - 1e-9); i * step <= to * (1 + 1e-12); i++) {
        ticks.add(i * step);
      }
      return ticks;
    }
  }
}
