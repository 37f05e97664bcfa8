package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.irrigation.Line;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.model.Point;

/**
 * Draws the pipes of one zone with a coloured mark for each emitter and a number for each plant.
 */
final class EmitterMap {
  private static final double LABEL = 17;
  private static final double KEY_ROW = 30;

  /** The key keeps to the left half, which a telephone shows without moving the picture. */
  private static final int KEY_COLUMNS = 2;

  private static final double MARK = 6;
  private static final double LEAST_HEIGHT = 230;

  private final ZoneDesign zone;
  private final MapFrame frame;
  private final double above;
  private final Svg svg = new Svg();

  /**
   * An emitter.
   *
   * @param at where it drips
   * @param title what is shown when it is pointed at
   * @param value its value in the unit of the steps
   * @param range -1 where the pressure is below the emitter's range, 1 above it, 0 within
   */
  record Mark(Point at, String title, double value, int range) {}

  /**
   * A plant.
   *
   * @param at where it stands
   * @param text its name and number
   * @param worst whether it is served worst
   * @param main whether its label must be shown if there is any room
   */
  record Label(Point at, String text, boolean worst, boolean main) {}

  private EmitterMap(ZoneDesign zone, List<Mark> marks, List<Label> labels) {
    this.zone = zone;
    List<Point> points = new ArrayList<>();
    zone.main().forEach(points::addAll);
    zone.laterals().forEach(l -> l.lines().forEach(line -> points.addAll(line.path())));
    marks.forEach(mark -> points.add(mark.at()));
    labels.forEach(label -> points.add(label.at()));
    frame = MapFrame.around(points);
    above = Math.max(0, (LEAST_HEIGHT - frame.height()) / 2);
  }

  /**
   * The drawing.
   *
   * @param title what it shows
   * @param id part of the ids in the drawing, unique in the page
   * @param zone the zone
   * @param steps the steps of the colours
   * @param keys what each step holds, in words
   * @param marks the emitters
   * @param labels the plants, the most important first
   */
  static String draw(
      String title,
      String id,
      ZoneDesign zone,
      ValueSteps steps,
      List<String> keys,
      List<Mark> marks,
      List<Label> labels) {
    return new EmitterMap(zone, marks, labels).drawn(title, id, steps, keys, marks, labels);
  }

  private String drawn(
      String title,
      String id,
      ValueSteps steps,
      List<String> keys,
      List<Mark> marks,
      List<Label> labels) {
    boolean outside = marks.stream().anyMatch(mark -> mark.range() != 0);
    double bottom = frame.height() + 2 * above;
    int rows = (keys.size() + KEY_COLUMNS - 1) / KEY_COLUMNS;
    double height = bottom + KEY_ROW * (rows + (outside ? 1 : 0)) + 10;
    svg.drawing(frame.width(), height, "map", id + "-title");
    svg.text("title", title, "id", id + "-title");
    svg.leaf("rect", "class", "sheet", "width", frame.width(), "height", height);
    pipes();
    LabelPlacer placer = new LabelPlacer(new Box(4, 4, frame.width() - 4, bottom));
    zone.main().forEach(leg -> avoid(leg, placer));
    for (Mark mark : marks) {
      placer.avoid(Box.around(x(mark.at()), y(mark.at()), MARK, MARK));
    }
    for (Mark mark : marks) {
      mark(mark, "step step-" + steps.colour(steps.of(mark.value())));
    }
    labels.forEach(label -> label(label, placer));
    key(steps, keys, bottom + KEY_ROW / 2 + 5, outside);
    svg.close();
    return svg.toString();
  }

  /** Keeps labels off a leg of the main. */
  private void avoid(List<Point> leg, LabelPlacer placer) {
    for (int i = 1; i < leg.size(); i++) {
      double x = x(leg.get(i - 1));
      double y = y(leg.get(i - 1));
      double dx = x(leg.get(i)) - x;
      double dy = y(leg.get(i)) - y;
      int pieces = (int) Math.ceil(Math.hypot(dx, dy) / MARK);
      for (int p = 0; p <= pieces && pieces > 0; p++) {
        placer.avoid(Box.around(x + dx * p / pieces, y + dy * p / pieces, MARK / 2, MARK / 2));
      }
    }
  }

  private void pipes() {
    for (List<Point> leg : zone.main()) {
      svg.leaf("path", "class", "feed", "d", path(leg));
    }
    for (ZoneDesign.LateralDesign lateral : zone.laterals()) {
      for (Line line : lateral.lines()) {
        svg.leaf("path", "class", "tube", "d", path(line.path()));
      }
    }
  }

  private void mark(Mark mark, String colour) {
    double x = x(mark.at());
    double y = y(mark.at());
    svg.open("g");
    svg.text("title", mark.title());
    shape(x, y, mark.range(), colour);
    svg.close();
  }

  private void shape(double x, double y, int range, String colour) {
    if (range == 0) {
      svg.leaf("circle", "class", colour, "cx", x, "cy", y, "r", MARK);
      return;
    }
    double tip = range < 0 ? MARK : -MARK;
    svg.leaf(
        "path",
        "class",
        colour,
        "d",
        "M"
            + pair(x - MARK, y - tip)
            + " L"
            + pair(x + MARK, y - tip)
            + " L"
            + pair(x, y + tip)
            + " Z");
  }

  private static String pair(double x, double y) {
    return Decimals.coordinate(x) + " " + Decimals.coordinate(y);
  }

  private void label(Label label, LabelPlacer placer) {
    double x = x(label.at());
    double y = y(label.at());
    Optional<LabelPlacer.Place> place =
        label.main() || label.worst()
            ? placer.place(label.text(), LABEL, x, y)
            : placer.near(label.text(), LABEL, x, y);
    place.ifPresent(
        p -> {
          if (p.far()) {
            svg.leaf("line", "class", "tie", "x1", x, "y1", y, "x2", p.x(), "y2", p.y());
          }
          svg.text(
              "text",
              label.text(),
              "class",
              label.worst() ? "worth worst" : "worth",
              "x",
              p.x(),
              "y",
              p.y() + LABEL * 0.36);
        });
  }

  private void key(ValueSteps steps, List<String> keys, double y, boolean outside) {
    double wide = frame.width() / 4;
    double next = y - KEY_ROW;
    for (int i = 0; i < keys.size(); i++) {
      double x = i % KEY_COLUMNS * wide;
      next += i % KEY_COLUMNS == 0 ? KEY_ROW : 0;
      shape(16 + x, next, 0, "step step-" + steps.colour(i));
      svg.text("text", keys.get(i), "class", "key", "x", 30 + x, "y", next + 6);
    }
    if (outside) {
      next += KEY_ROW;
      shape(16, next, -1, "step");
      shape(36, next, 1, "step");
      svg.text(
          "text",
          "point down: less pressure than the emitter is made for; point up: more",
          "class",
          "key",
          "x",
          50,
          "y",
          next + 6);
    }
  }

  private String path(List<Point> points) {
    StringBuilder path = new StringBuilder();
    for (Point point : points) {
      path.append(path.length() == 0 ? "M" : " L").append(pair(x(point), y(point)));
    }
    return path.toString();
  }

  private double x(Point point) {
    return frame.x(point);
  }

  private double y(Point point) {
    return frame.y(point) + above;
  }
}
