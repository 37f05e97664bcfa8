package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences.Units;
import org.grovewright.model.Shape;

/** Draws a {@link MapScene} to scale. */
final class MapSvg {
  private static final double LABEL = 13;
  private static final double SMALL_LABEL = 11;
  private static final double STRIP = 64;
  private static final double LEGEND_ROW = 26;
  private static final double LEGEND_COLUMN = 250;

  /** Zone styles told apart by dash as well as colour; more zones begin again. */
  static final int ZONE_STYLES = 6;

  private final MapScene scene;
  private final Units units;
  private final MapFrame frame;
  private final Svg svg = new Svg();
  private final LabelPlacer labels;

  private MapSvg(MapScene scene, Units units) {
    this.scene = scene;
    this.units = units;
    this.frame = MapFrame.of(scene);
    this.labels = new LabelPlacer(new Box(4, 4, frame.width() - 4, frame.height() - 4));
  }

  /**
   * The drawing as an element to put into a page whose style sheet holds that of the map.
   *
   * @param scene what to draw
   * @param units system of units of the scale bar
   */
  static String element(MapScene scene, Units units) {
    return new MapSvg(scene, units).draw("");
  }

  /**
   * The drawing as a file of its own.
   *
   * @param scene what to draw
   * @param units system of units of the scale bar
   */
  static String file(MapScene scene, Units units) {
    String style = Resources.text("map.css");
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + new MapSvg(scene, units).draw("<style>\n" + style + "</style>\n");
  }

  private String draw(String style) {
    List<LegendEntry> legend = legend();
    double legendTop = frame.height() + STRIP;
    int columns = (int) (frame.width() / LEGEND_COLUMN);
    int rows = (legend.size() + columns - 1) / columns;
    double total = legendTop + rows * LEGEND_ROW + 10;
    svg.drawing(frame.width(), total, "map", "map-title map-desc");
    svg.text("title", "Map of " + scene.title(), "id", "map-title");
    svg.text("desc", description(), "id", "map-desc");
    svg.raw(style);
    patterns();
    svg.leaf("rect", "class", "sheet", "width", frame.width(), "height", total);
    svg.leaf("path", "class", "land", "d", frame.path(scene.boundary(), true));
    keepLabelsOff(scene.boundary());
    keepLabelsOff(
        List.of(scene.boundary().get(scene.boundary().size() - 1), scene.boundary().get(0)));
    scene.fixtures().forEach(this::fixture);
    scene
        .rows()
        .forEach(row -> svg.leaf("path", "class", "row", "d", frame.path(row.line(), false)));
    crowns();
    scene.pipes().stream().filter(pipe -> !pipe.lateral()).forEach(this::pipe);
    scene.pipes().stream().filter(MapScene.PipeMark::lateral).forEach(this::pipe);
    emitters();
    trunks();
    scene.devices().forEach(this::device);
    writeLabels();
    strip();
    drawLegend(legend, legendTop, columns);
    svg.close();
    return svg.toString();
  }

  private String description() {
    long main = scene.plants().stream().filter(MapScene.PlantMark::main).count();
    return "Plan drawn to scale with "
        + main
        + " main plants, "
        + (scene.plants().size() - main)
        + " companions, "
        + scene.pipes().size()
        + " pipes and "
        + scene.emitters().size()
        + " emitters. The tables below the map hold the same places in words.";
  }

  private void patterns() {
    svg.open("defs");
    svg.open(
        "pattern",
        "id",
        "hatch",
        "width",
        8,
        "height",
        8,
        "patternUnits",
        "userSpaceOnUse",
        "patternTransform",
        "rotate(45)");
    svg.leaf("path", "class", "hatch", "d", "M0 0 V8").close();
    svg.open("pattern", "id", "dots", "width", 9, "height", 9, "patternUnits", "userSpaceOnUse");
    svg.leaf("circle", "class", "dot", "cx", 3, "cy", 3, "r", 1.3).close();
    svg.close();
  }

  private void fixture(Fixture fixture) {
    String style = "fixture " + styleOf(fixture.kind());
    Shape shape = fixture.shape();
    svg.open("g").text("title", fixture.id() + ": " + words(fixture.kind()));
    if (shape instanceof Shape.Area area) {
      svg.leaf("path", "class", style, "d", frame.path(area.corners(), true));
    } else if (shape instanceof Shape.Line line) {
      svg.leaf("path", "class", style + " open", "d", frame.path(line.points(), false));
      keepLabelsOff(line.points());
    } else if (shape instanceof Shape.Round round) {
      svg.leaf(
          "circle",
          "class",
          style,
          "cx",
          frame.x(round.centre()),
          "cy",
          frame.y(round.centre()),
          "r",
          Math.max(2, round.radiusM() * frame.scale()));
    }
    svg.close();
  }

  private void crowns() {
    for (int stage = 0; stage < scene.stages().size(); stage++) {
      svg.open("g", "class", "stage stage-" + stage);
      for (MapScene.PlantMark plant : scene.plants()) {
        svg.leaf(
            "circle",
            "class",
            plant.main() ? "crown main" : "crown companion",
            "cx",
            frame.x(plant.at()),
            "cy",
            frame.y(plant.at()),
            "r",
            plant.spreadsM().get(stage) / 2 * frame.scale());
      }
      svg.close();
    }
  }

  private void pipe(MapScene.PipeMark pipe) {
    svg.open("g").text("title", pipe.title());
    svg.leaf("path", "class", styleOf(pipe), "d", frame.path(pipe.line(), false)).close();
    keepLabelsOff(pipe.line());
  }

  private void keepLabelsOff(List<Point> line) {
    for (int i = 1; i < line.size(); i++) {
      Point a = line.get(i - 1);
      Point b = line.get(i);
      labels.discourage(frame.x(a), frame.y(a), frame.x(b), frame.y(b));
    }
  }

  private static String styleOf(MapScene.PipeMark pipe) {
    String zone = pipe.zone() < 0 ? "" : " zone-" + pipe.zone() % ZONE_STYLES;
    return (pipe.lateral() ? "pipe lateral" : "pipe main-pipe") + zone;
  }

  private void emitters() {
    for (Point emitter : scene.emitters()) {
      svg.leaf(
          "circle", "class", "emitter", "cx", frame.x(emitter), "cy", frame.y(emitter), "r", 2.6);
    }
  }

  private void trunks() {
    for (MapScene.PlantMark plant : scene.plants()) {
      double x = frame.x(plant.at());
      double y = frame.y(plant.at());
      svg.open("g").text("title", plant.title());
      if (plant.main()) {
        svg.leaf("circle", "class", "trunk main", "cx", x, "cy", y, "r", 5);
      } else {
        svg.leaf("path", "class", "trunk companion", "d", triangle(x, y, 4.5));
      }
      svg.close();
      labels.avoid(Box.around(x, y, 6, 6));
    }
  }

  private static String triangle(double x, double y, double size) {
    return "M"
        + Decimals.coordinate(x)
        + " "
        + Decimals.coordinate(y - size)
        + " L"
        + Decimals.coordinate(x + size)
        + " "
        + Decimals.coordinate(y + size * 0.8)
        + " L"
        + Decimals.coordinate(x - size)
        + " "
        + Decimals.coordinate(y + size * 0.8)
        + " Z";
  }

  private void device(MapScene.DeviceMark device) {
    double x = frame.x(device.at());
    double y = frame.y(device.at());
    svg.open("g").text("title", device.label());
    svg.leaf("rect", "class", "device", "x", x - 5, "y", y - 5, "width", 10, "height", 10).close();
    labels.avoid(Box.around(x, y, 7, 7));
  }

  private void writeLabels() {
    svg.open("g", "class", "labels");
    for (MapScene.DeviceMark device : scene.devices()) {
      label(device.label(), LABEL, "label device-label", device.at());
    }
    List<Fixture> areasFirst = new ArrayList<>(scene.fixtures());
    areasFirst.sort(Comparator.comparing(fixture -> !(fixture.shape() instanceof Shape.Area)));
    for (Fixture fixture : areasFirst) {
      Point middle = middle(fixture.shape());
      double x = frame.x(middle);
      double y = frame.y(middle);
      double reach =
          fixture.shape() instanceof Shape.Round round ? round.radiusM() * frame.scale() : 0;
      boolean roomy = reach == 0 || reach > fixture.id().length() * LABEL / 3;
      if (!roomy) {
        labels.avoid(Box.around(x, y, Math.max(8, reach), Math.max(8, reach)));
      }
      write(
          roomy
              ? labels.placeOn(fixture.id(), LABEL, x, y)
              : labels.place(fixture.id(), LABEL, x, y),
          fixture.id(),
          LABEL,
          "label fixture-label",
          middle);
    }
    for (MapScene.RowMark row : scene.rows()) {
      label("Row " + row.id(), LABEL, "label row-label", row.line().get(0));
    }
    for (MapScene.PlantMark plant : scene.plants()) {
      if (plant.main()) {
        label(plant.label(), LABEL, "label", plant.at());
      }
    }
    for (MapScene.PlantMark plant : scene.plants()) {
      if (!plant.main()) {
        // A companion far from its name is better left to its symbol and the table.
        Point at = plant.at();
        Optional<LabelPlacer.Place> place =
            labels.near(plant.label(), SMALL_LABEL, frame.x(at), frame.y(at));
        write(place, plant.label(), SMALL_LABEL, "label small", at);
      }
    }
    svg.close();
  }

  private void label(String text, double size, String style, Point at) {
    write(labels.place(text, size, frame.x(at), frame.y(at)), text, size, style, at);
  }

  private void write(
      Optional<LabelPlacer.Place> found, String text, double size, String style, Point at) {
    if (found.isEmpty()) {
      return;
    }
    LabelPlacer.Place place = found.get();
    if (place.far()) {
      Box box = place.box();
      double x = frame.x(at);
      double y = frame.y(at);
      double endX = Math.max(box.left(), Math.min(box.right(), x));
      double endY = Math.max(box.top(), Math.min(box.bottom(), y));
      svg.leaf("line", "class", "leader", "x1", x, "y1", y, "x2", endX, "y2", endY);
    }
    svg.text("text", text, "class", style, "x", place.x(), "y", place.y() + size * 0.36);
  }

  private static Point middle(Shape shape) {
    if (shape instanceof Shape.Round round) {
      return round.centre();
    }
    if (shape instanceof Shape.Line line) {
      return middleOfLongest(line.points());
    }
    List<Point> points = ((Shape.Area) shape).corners();
    double x = points.stream().mapToDouble(Point::x).average().orElse(0);
    double y = points.stream().mapToDouble(Point::y).average().orElse(0);
    return new Point(x, y);
  }

  private static Point middleOfLongest(List<Point> line) {
    Point from = line.get(0);
    Point to = line.get(1);
    for (int i = 2; i < line.size(); i++) {
      if (line.get(i - 1).distanceTo(line.get(i)) > from.distanceTo(to)) {
        from = line.get(i - 1);
        to = line.get(i);
      }
    }
    return new Point((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
  }

  /** The strip below the map: scale bar and north arrow. */
  private void strip() {
    double y = frame.height() + 34;
    MapFrame.Bar bar = frame.scaleBar(units);
    double start = 24;
    svg.open("g", "class", "scale-bar");
    svg.leaf("rect", "class", "bar", "x", start, "y", y, "width", bar.length(), "height", 7);
    svg.leaf(
        "rect", "class", "bar half", "x", start, "y", y, "width", bar.length() / 2, "height", 7);
    svg.text("text", "0", "class", "label", "x", start, "y", y - 6);
    svg.text("text", bar.label(), "class", "label", "x", start + bar.length(), "y", y - 6);
    svg.close();
    double x = frame.width() - 44;
    svg.open(
        "g",
        "class",
        "north",
        "transform",
        "translate("
            + Decimals.coordinate(x)
            + " "
            + Decimals.coordinate(y)
            + ") rotate("
            + Decimals.coordinate(-scene.northBearingDeg())
            + ")");
    svg.leaf("path", "class", "arrow", "d", "M0 -24 L8 14 L0 8 L-8 14 Z");
    svg.close();
    svg.text("text", "North", "class", "label north-label", "x", x - 56, "y", y + 5);
  }

  private List<LegendEntry> legend() {
    List<LegendEntry> entries = new ArrayList<>();
    if (scene.plants().stream().anyMatch(MapScene.PlantMark::main)) {
      entries.add(new LegendEntry(Swatch.ROUND, "crown main", "Main plant and its crown"));
    }
    if (scene.plants().stream().anyMatch(plant -> !plant.main())) {
      entries.add(new LegendEntry(Swatch.ROUND, "crown companion", "Companion and its crown"));
    }
    Set<String> seen = new LinkedHashSet<>();
    for (MapScene.PipeMark pipe : scene.pipes()) {
      if (seen.add(styleOf(pipe))) {
        entries.add(new LegendEntry(Swatch.LINE, styleOf(pipe), pipe.title()));
      }
    }
    if (!scene.emitters().isEmpty()) {
      entries.add(new LegendEntry(Swatch.DROP, "emitter", "Emitter (drips water)"));
    }
    if (!scene.devices().isEmpty()) {
      entries.add(new LegendEntry(Swatch.SQUARE, "device", "Supply and fittings"));
    }
    Set<FixtureKind> kinds = new LinkedHashSet<>();
    for (Fixture fixture : scene.fixtures()) {
      if (kinds.add(fixture.kind())) {
        boolean open = fixture.shape() instanceof Shape.Line;
        entries.add(
            new LegendEntry(
                open ? Swatch.LINE : Swatch.ROUND,
                "fixture " + styleOf(fixture.kind()) + (open ? " open" : ""),
                capital(words(fixture.kind()))));
      }
    }
    return entries;
  }

  private void drawLegend(List<LegendEntry> entries, double top, int columns) {
    svg.open("g", "class", "legend");
    for (int i = 0; i < entries.size(); i++) {
      LegendEntry entry = entries.get(i);
      double x = 24 + (i % columns) * LEGEND_COLUMN;
      double y = top + (i / columns) * LEGEND_ROW + 8;
      switch (entry.swatch()) {
        case ROUND -> svg.leaf("circle", "class", entry.style(), "cx", x + 14, "cy", y, "r", 9);
        case LINE ->
            svg.leaf("line", "class", entry.style(), "x1", x, "y1", y, "x2", x + 28, "y2", y);
        case DROP -> svg.leaf("circle", "class", entry.style(), "cx", x + 14, "cy", y, "r", 2.4);
        case SQUARE ->
            svg.leaf(
                "rect", "class", entry.style(), "x", x + 9, "y", y - 5, "width", 10, "height", 10);
      }
      svg.text("text", entry.text(), "class", "legend-text", "x", x + 38, "y", y + 4.5);
    }
    svg.close();
  }

  private static String styleOf(FixtureKind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String words(FixtureKind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private enum Swatch {
    ROUND,
    LINE,
    DROP,
    SQUARE
  }

  private record LegendEntry(Swatch swatch, String style, String text) {}
}
