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
import org.grovewright.layout.CrownSizes;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.MonthNeed;
import org.grovewright.water.WaterNeeds;
import org.junit.jupiter.api.Test;

/**
 * What an owner measures with a tape goes before the catalogue's curve, from the description on.
 */
class MeasuredCrownTest {
  /** A month in which it rains little. */
  private static final int DRY = 9;

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

  /** The whole way on: what the tape says reaches the crown, the roots, the need and the timer. */
  @Test
  void whatIsMeasuredLaterMovesCrownRootsNeedAndTimer() throws Exception {
    // Measured as the second year begins: far behind and far ahead of the curve.
    Plan slow = plan("measured_spread: 0.9 m, measured_height: 1.0 m, measured_on: 2028-02-20,");
    Plan quick = plan("measured_spread: 3.3 m, measured_height: 3.2 m, measured_on: 2028-02-20,");
    MonthNeed before = slow.water().plant("A3").at(2, 3);
    MonthNeed after = quick.water().plant("A3").at(2, 3);
    assertThat(before.spreadM()).isCloseTo(0.9, within(0.08));
    assertThat(after.spreadM()).isCloseTo(3.3, within(0.1));
    assertThat(before.storeM3()).isLessThan(after.storeM3());
    assertThat(before.transpirationM3PerS()).isLessThan(0.6 * after.transpirationM3PerS());
    // In the dry month; in March it rains enough.
    assertThat(slow.water().plant("A3").at(2, DRY).need().value())
        .isLessThan(0.8 * quick.water().plant("A3").at(2, DRY).need().value());
    // A plant that was as large a year later was smaller at the start.
    MonthNeed first = plan("measured_spread: 3.3 m,").water().plant("A3").at(1, 3);
    assertThat(quick.water().plant("A3").at(1, 3).spreadM()).isLessThan(first.spreadM());
    // The zone of the neediest plant runs longer, or gives it more emitters.
    assertThat(given(quick)).isGreaterThan(given(slow));
    assertThat(quick.figure(CrownSizes.firstId("A3")).map(f -> f.working().inputs().toString()))
        .hasValueSatisfying(text -> assertThat(text).contains("measured on 2028-02-20"));
  }

  /** What the timer gives the lemon on a day of the dry month of the second year, m3. */
  private static double given(Plan plan) {
    return plan.programme().supplies().stream()
        .filter(s -> s.plant() == index(plan.grove()) && s.year() == 2 && s.month() == DRY)
        .mapToDouble(s -> s.getsM3PerS())
        .findFirst()
        .orElseThrow();
  }

  private static int index(Grove grove) {
    return grove.plantings().stream().map(p -> p.id()).toList().indexOf("A3");
  }

  private static Plan plan(String lemon) throws Exception {
    return Planner.plan(grove(lemon), CATALOGUE);
  }
}
