package org.grovewright.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.MonthNeed;
import org.grovewright.water.WaterNeeds;
import org.junit.jupiter.api.Test;

/**
 * What an owner measures with a tape goes before the catalogue's curve, from the description on.
 */
class MeasuredCrownTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  private static Grove grove(String lemon) throws Exception {
    try (InputStream in =
        MeasuredCrownTest.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      String changed =
          text.replace(
              "{species: lemon, at: 16.5 m,",
              "{species: lemon, at: 16.5 m, planted: 2024-02-20, " + lemon);
      assertThat(changed).isNotEqualTo(text);
      return new DescriptionReader(CATALOGUE, new WeatherOfDescription())
          .read(changed, "demo.yaml", Path.of(""));
    }
  }

  private static MonthNeed march(Grove grove) {
    return WaterNeeds.of(grove, CATALOGUE, new FigureBook()).plant("A3").at(1, 3);
  }

  @Test
  void aMeasuredSpreadMovesTheCurveAndTheNeed() throws Exception {
    MonthNeed byCurve = march(grove(""));
    MonthNeed small = march(grove("measured_spread: 0.9 m,"));
    MonthNeed large = march(grove("measured_spread: 3.35 m,"));
    // The tape was read at the start, 20 February; the middle of March is three weeks on.
    assertThat(small.spreadM()).isCloseTo(0.9, within(0.08)).isGreaterThan(0.9);
    assertThat(large.spreadM()).isCloseTo(3.35, within(0.1)).isGreaterThan(3.35);
    assertThat(byCurve.spreadM()).isBetween(small.spreadM(), large.spreadM());
    assertThat(small.transpirationM3PerS()).isLessThan(byCurve.transpirationM3PerS());
    assertThat(large.transpirationM3PerS()).isGreaterThan(byCurve.transpirationM3PerS());
    // Wider crowns go with wider roots: more soil to drink from.
    assertThat(large.storeM3()).isGreaterThan(small.storeM3());
  }
}
