package org.grovewright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.Starter;
import org.grovewright.model.Grove;
import org.junit.jupiter.api.Test;

class NoonShadeTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  private static Grove grove(double latitude, String north, String fixed, String... plants) {
    String text =
        Starter.text()
            .replaceAll("(?ms)^site:.*?(?=^\\S)", site(latitude, north, fixed))
            .replaceAll("(?ms)^(rows|plants|watering):.*?(?=^\\S|\\z)", "")
            .replaceAll("(?m)^start:.*$", "start: 2027-03-01");
    StringBuilder all = new StringBuilder(text).append("\nplants:\n");
    for (String plant : plants) {
      all.append("  - ").append(plant).append('\n');
    }
    return new DescriptionReader(CATALOGUE, (file, height, source) -> null)
        .describe(all.toString(), "test")
        .grove();
  }

  private static String site(double latitude, String north, String fixed) {
    return "site:\n  name: S\n  latitude: "
        + latitude
        + "\n  longitude: 10\n  elevation: 10 m\n  north: "
        + north
        + "\n  boundary: [[0 m, 0 m], [60 m, 0 m], [60 m, 60 m], [0 m, 60 m]]\n  fixed: ["
        + fixed
        + "]\n";
  }

  private static String lemon(String id, double x, double y) {
    return "{id: "
        + id
        + ", species: lemon, at: ["
        + x
        + " m, "
        + y
        + " m], planted: 2027-03-01, container: 15 L, kept_height: 2 m, kept_spread: 2 m}";
  }

  private static String wall(double y) {
    return "{id: wall, kind: wall, line: [[0 m, " + y + " m], [60 m, " + y + " m]], height: 4 m}";
  }

  /**
   * At latitude 45 the noon sun of the equinox stands 45 degrees high, so a wall of 4 m shades up
   * to 4 m behind it: plane trigonometry.
   */
  @Test
  void aWallTowardsTheSunShadesAsHighAsItsShadowReaches() {
    Grove near = grove(45, "0 deg", wall(20), lemon("T", 30, 23));
    assertThat(NoonShade.of(near, CATALOGUE, 0, 20))
        .singleElement()
        .satisfies(
            shade -> {
              assertThat(shade.byId()).isEqualTo("wall");
              assertThat(shade.share()).isCloseTo(0.5, within(0.02));
            });
    assertThat(NoonShade.of(grove(45, "0 deg", wall(20), lemon("T", 30, 24.1)), CATALOGUE, 0, 20))
        .isEmpty();
  }

  @Test
  void theSunStandsInTheNorthSouthOfTheEquatorAndTheSketchMayBeTurned() {
    assertThat(NoonShade.of(grove(45, "0 deg", wall(26), lemon("T", 30, 23)), CATALOGUE, 0, 20))
        .isEmpty();
    assertThat(NoonShade.of(grove(-45, "0 deg", wall(26), lemon("T", 30, 23)), CATALOGUE, 0, 20))
        .hasSize(1);
    assertThat(NoonShade.of(grove(45, "180 deg", wall(26), lemon("T", 30, 23)), CATALOGUE, 0, 20))
        .hasSize(1);
  }

  /**
   * In winter the shadow is longer: at latitude 45 the noon sun stands 90 - 45 - 23.44 degrees
   * high, so 4 m cast 4 / tan(21.56 deg) = 10.12 m. The declination at the solstice is the tilt of
   * the earth's axis, from memory.
   */
  @Test
  void winterShadowsAreLonger() {
    double winter = NoonShade.winterDeclinationDeg(45);
    assertThat(winter).isEqualTo(-23.44);
    assertThat(NoonShade.winterDeclinationDeg(-45)).isEqualTo(23.44);
    assertThat(
            NoonShade.of(grove(45, "0 deg", wall(20), lemon("T", 30, 29.8)), CATALOGUE, winter, 20))
        .hasSize(1);
    assertThat(
            NoonShade.of(grove(45, "0 deg", wall(20), lemon("T", 30, 30.2)), CATALOGUE, winter, 20))
        .isEmpty();
  }

  @Test
  void aTreeShadesTheOneBehindIt() {
    Grove grove =
        grove(
            45,
            "0 deg",
            "",
            lemon("front", 30, 20),
            lemon("back", 30, 22.5),
            lemon("aside", 33, 22.5));
    List<NoonShade> shades = NoonShade.of(grove, CATALOGUE, -23.44, 20);
    assertThat(shades)
        .singleElement()
        .satisfies(
            s -> {
              assertThat(s.plantId()).isEqualTo("back");
              assertThat(s.byId()).isEqualTo("front");
              // The crown's edge is 1.5 m away: 2 m - 1.5 m tan(21.56 deg) = 1.407 m of 2 m.
              assertThat(s.share()).isCloseTo(0.704, within(0.01));
            });
  }
}
