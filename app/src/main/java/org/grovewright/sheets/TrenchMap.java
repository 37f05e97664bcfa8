package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.grovewright.model.Fixture;
import org.grovewright.model.Point;
import org.grovewright.model.Row;
import org.grovewright.model.Shape;
import org.grovewright.trench.Trench;

/** Draws the trench of the mains with the numbers of its segments. */
final class TrenchMap {
  private static final double LABEL = 17;
  private static final double RING = 11;
  private static final double LEAST_HEIGHT = 230;

  private final Trench trench;
  private final List<Fixture> fixtures;
  private final MapFrame frame;
  private final double above;
  private final Svg svg = new Svg();
  private final LabelPlacer labels;

  private TrenchMap(Trench trench, List<Fixture> fixtures) {
    this.trench = trench;
    this.fixtures = fixtures;
    List<Point> points = new ArrayList<>();
    trench.segments().forEach(segment -> points.addAll(segment.line()));
    frame = MapFrame.around(points);
    above = Math.max(0, (LEAST_HEIGHT - frame.height()) / 2);
    labels = new LabelPlacer(new Box(4, 4, frame.width() - 4, height() - 4));
  }

  /**
   * The drawing.
   *
   * @param trench what to draw
   * @param fixtures fixed things; those near the trench are shown
   */
  static String draw(Trench trench, List<Fixture> fixtures) {
    return new TrenchMap(trench, fixtures).drawn();
  }

  private double height() {
    return frame.height() + 2 * above;
  }

  private String drawn() {
    svg.drawing(frame.width(), height(), "map", "trench-map-title");
    svg.text("title", "The trench of the mains with its segments", "id", "trench-map-title");
    svg.open("defs");
    svg.open("clipPath", "id", "trench-clip");
    svg.leaf("rect", "width", frame.width(), "height", height()).close();
    svg.close();
    svg.leaf("rect", "class", "sheet", "width", frame.width(), "height", height());
    svg.open("g", "clip-path", "url(#trench-clip)");
    fixtures.forEach(this::fixture);
    svg.close();
    for (Trench.Segment segment : trench.segments()) {
      svg.leaf("path", "class", "feed", "d", path(segment.line(), false));
      for (int i = 1; i < segment.line().size(); i++) {
        Point a = segment.line().get(i - 1);
        Point b = segment.line().get(i);
        labels.discourage(frame.x(a), y(a), frame.x(b), y(b));
      }
      joint(segment.line().get(0));
      joint(segment.line().get(segment.line().size() - 1));
    }
    for (Trench.Crossing crossing : trench.crossings()) {
      svg.open("g").text("title", "Crosses " + crossing.service());
      svg.leaf(
              "circle",
              "class",
              "fixture buried-service open",
              "cx",
              frame.x(crossing.at()),
              "cy",
              y(crossing.at()),
              "r",
              RING)
          .close();
      labels.avoid(Box.around(frame.x(crossing.at()), y(crossing.at()), RING, RING));
    }
    trench.segments().forEach(this::number);
    svg.close();
    return svg.toString();
  }

  private void joint(Point at) {
    svg.leaf("circle", "class", "emitter", "cx", frame.x(at), "cy", y(at), "r", 4);
  }

  private void fixture(Fixture fixture) {
    String kind = fixture.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    svg.open("g").text("title", fixture.id());
    if (fixture.shape() instanceof Shape.Area area) {
      svg.leaf("path", "class", "fixture " + kind, "d", path(area.corners(), true));
    } else if (fixture.shape() instanceof Shape.Line line) {
      svg.leaf("path", "class", "fixture " + kind + " open", "d", path(line.points(), false));
    } else if (fixture.shape() instanceof Shape.Round round) {
      svg.leaf(
          "circle",
          "class",
          "fixture " + kind,
          "cx",
          frame.x(round.centre()),
          "cy",
          y(round.centre()),
          "r",
          Math.max(2, round.radiusM() * frame.scale()));
    }
    svg.close();
  }

  private void number(Trench.Segment segment) {
    Point middle = middle(segment);
    String text = String.valueOf(segment.number());
    labels
        .place(text, LABEL, frame.x(middle), y(middle))
        .ifPresent(
            place ->
                svg.text(
                    "text",
                    text,
                    "class",
                    "worth worst",
                    "x",
                    place.x(),
                    "y",
                    place.y() + LABEL * 0.36));
  }

  private static Point middle(Trench.Segment segment) {
    return new Row("", segment.line()).at(segment.lengthM() / 2);
  }

  private String path(List<Point> points, boolean closed) {
    StringBuilder path = new StringBuilder();
    for (Point point : points) {
      path.append(path.length() == 0 ? "M" : " L")
          .append(Decimals.coordinate(frame.x(point)))
          .append(' ')
          .append(Decimals.coordinate(y(point)));
    }
    return closed ? path.append(" Z").toString() : path.toString();
  }

  private double y(Point point) {
    return frame.y(point) + above;
  }
}
