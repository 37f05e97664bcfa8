package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import javax.xml.xpath.XPathConstants;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences.Units;
import org.grovewright.model.Shape;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class MapSvgTest {
  private static final MapScene SCENE = scene(30);

  private static MapScene scene(double bearing) {
    List<MapScene.PlantMark> plants = new java.util.ArrayList<>();
    for (int i = 0; i < 6; i++) {
      plants.add(
          new MapScene.PlantMark(
              "tree-" + (i + 1),
              "tree-" + (i + 1) + ", <fig> & \"friend\"",
              new Point(4 + 2 * i, 6),
              true,
              List.of(0.5, 2.0, 4.5)));
      plants.add(
          new MapScene.PlantMark(
              "herb-" + (i + 1), "herb", new Point(5 + 2 * i, 6.4), false, List.of(0.2, 0.8, 1.0)));
    }
    return new MapScene(
        "Test & plot",
        List.of(new Point(0, 0), new Point(22, 0), new Point(22, 12), new Point(0, 12)),
        bearing,
        List.of(
            new Fixture(
                "house",
                FixtureKind.BUILDING,
                new Shape.Area(
                    List.of(new Point(0, 9), new Point(5, 9), new Point(5, 12), new Point(0, 12))),
                4,
                OptionalDouble.empty()),
            new Fixture(
                "gas line",
                FixtureKind.BURIED_SERVICE,
                new Shape.Line(List.of(new Point(0, 2), new Point(22, 3))),
                0,
                OptionalDouble.empty()),
            new Fixture(
                "tank",
                FixtureKind.TANK,
                new Shape.Round(new Point(20, 10), 1),
                2,
                OptionalDouble.empty())),
        List.of(new MapScene.RowMark("A", List.of(new Point(3, 6), new Point(13, 6)))),
        List.of("when planted", "after three years", "when mature"),
        plants,
        List.of(
            new MapScene.PipeMark("Main", -1, false, List.of(new Point(1, 9), new Point(3, 6))),
            new MapScene.PipeMark(
                "Zone A", 0, true, List.of(new Point(3, 6.15), new Point(15, 6.15)))),
        List.of(new Point(4, 6.15), new Point(6, 6.15)),
        List.of(new MapScene.DeviceMark("Tap", new Point(1, 9))));
  }

  private static Document parsed(String svg) throws Exception {
    return XmlChecks.parse(svg);
  }

  @Test
  void theFileIsWellFormedAndSpeaks() throws Exception {
    Document map = parsed(MapSvg.file(SCENE, Units.METRIC));
    assertThat(map.getDocumentElement().getAttribute("role")).isEqualTo("img");
    assertThat(XmlChecks.text(map, "//*[@id='map-title']")).isEqualTo("Map of Test & plot");
    assertThat(MapSvg.file(SCENE, Units.METRIC)).contains("&lt;fig&gt; &amp; &quot;friend&quot;");
  }

  /** A row of 10 m must be as long as a scale bar would say, in either system of units. */
  @Test
  void aRowOfTenMetresIsTenMetresLongOnTheScale() throws Exception {
    for (Units units : Units.values()) {
      Document map = parsed(MapSvg.element(SCENE, units));
      String[] row = XmlChecks.text(map, "//*[@class='row']/@d").split("[ML ]+");
      double drawn =
          Math.hypot(
              Double.parseDouble(row[3]) - Double.parseDouble(row[1]),
              Double.parseDouble(row[4]) - Double.parseDouble(row[2]));
      double bar = Double.parseDouble(XmlChecks.text(map, "//*[@class='bar']/@width"));
      String label = XmlChecks.text(map, "//*[@class='scale-bar']/*[last()]");
      double number = Double.parseDouble(label.substring(0, label.indexOf(' ')));
      double metres = units == Units.US ? number * 0.3048 : number;
      assertThat(drawn / bar * metres).isCloseTo(10, within(0.005));
      assertThat(label).endsWith(units == Units.US ? " ft" : " m");
    }
  }

  @Test
  void northIsTurnedAgainstTheBearingOfTheSketch() {
    // A sketch whose y axis points east (bearing 90) has north to its left: a quarter turn back.
    assertThat(MapSvg.element(scene(90), Units.METRIC)).contains("rotate(-90)");
    assertThat(MapSvg.element(scene(0), Units.METRIC)).contains("rotate(0)");
  }

  @Test
  void labelsDoNotLieOnEachOtherOrOnTrunks() throws Exception {
    Document map = parsed(MapSvg.element(SCENE, Units.METRIC));
    NodeList texts =
        (NodeList)
            XmlChecks.find(
                map, "//*[@class='labels']/*[local-name()='text']", XPathConstants.NODESET);
    List<Box> boxes = new java.util.ArrayList<>();
    for (int i = 0; i < texts.getLength(); i++) {
      Element text = (Element) texts.item(i);
      double size = text.getAttribute("class").contains("small") ? 11 : 13;
      Box box =
          Box.around(
              Double.parseDouble(text.getAttribute("x")),
              Double.parseDouble(text.getAttribute("y")) - size * 0.36,
              text.getTextContent().length() * size * 0.3,
              size * 0.5);
      assertThat(boxes).as(text.getTextContent()).noneMatch(box::overlaps);
      boxes.add(box);
    }
    assertThat(boxes).hasSize(17);
  }

  @Test
  void crownsAreDrawnForEveryStage() throws Exception {
    Document map = parsed(MapSvg.element(SCENE, Units.METRIC));
    for (int stage = 0; stage < 3; stage++) {
      Object count =
          XmlChecks.find(
              map, "count(//*[@class='stage stage-" + stage + "']/*)", XPathConstants.NUMBER);
      assertThat((Double) count).isEqualTo(12);
    }
  }
}
