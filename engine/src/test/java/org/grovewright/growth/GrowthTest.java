package org.grovewright.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.water.TestCatalogue;
import org.junit.jupiter.api.Test;

class GrowthTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);
  private static final LocalDate PLANTED = LocalDate.of(2021, 3, 1);
  private static final Species TREE = TestCatalogue.evergreen();

  private static Planting planting(
      double litres, OptionalDouble measured, OptionalDouble kept, LocalDate planted) {
    return new Planting(
        "a",
        TREE.key(),
        Optional.empty(),
        new Point(0, 0),
        Optional.empty(),
        planted,
        litres / 1000,
        new Planting.Measured(measured, OptionalDouble.empty(), Optional.empty()),
        kept,
        OptionalDouble.empty());
  }

  private static Growth young(double litres) {
    return Growth.of(
        planting(litres, OptionalDouble.empty(), OptionalDouble.empty(), DAY),
        TREE,
        DAY,
        TestCatalogue.constants());
  }

  @Test
  void startsAsItComesAndEndsMature() {
    Growth growth = young(15);
    assertThat(growth.spreadM(0)).isCloseTo(2.4 * Math.cbrt(0.015), within(1e-9));
    // The catalogue's meaning of years to maturity: 95 % of the mature spread.
    assertThat(growth.spreadM(10)).isCloseTo(0.95 * 7, within(1e-9));
    assertThat(growth.spreadM(60)).isCloseTo(7, within(1e-3));
    assertThat(growth.heightM(60)).isCloseTo(6, within(1e-3));
    assertThat(growth.rootDepthM(60)).isCloseTo(0.8, within(1e-3));
  }

  @Test
  void rootsStartAsTheBall() {
    Growth growth = young(15);
    // A cylinder as deep as wide holds the container.
    double volume = Math.PI * Math.pow(growth.ballRadiusM(), 2) * growth.ballDepthM();
    assertThat(volume).isCloseTo(0.015, within(1e-9));
    assertThat(growth.rootRadiusM(0)).isCloseTo(growth.ballRadiusM(), within(1e-12));
    assertThat(growth.rootDepthM(0)).isCloseTo(growth.ballDepthM(), within(1e-12));
    assertThat(growth.rootRadiusM(1) - growth.rootRadiusM(0)).isCloseTo(0.45, within(1e-9));
    assertThat(growth.rootRadiusM(60)).isCloseTo(3.5, within(1e-9));
  }

  @Test
  void aBareRootedPlantStartsLikeOneFromItsUsualContainer() {
    Growth bare = young(0);
    Growth potted = young(10);
    assertThat(bare.spreadM(0)).isEqualTo(potted.spreadM(0));
    assertThat(bare.heightM(2)).isEqualTo(potted.heightM(2));
    assertThat(bare.ballDepthM()).isEqualTo(potted.ballDepthM()).isGreaterThan(0.2);
    assertThat(bare.rootRadiusM(1)).isEqualTo(potted.rootRadiusM(1));
  }

  @Test
  void meetsTheMeasuredSpread() {
    LocalDate planted = LocalDate.of(2021, 3, 1);
    Growth growth =
        Growth.of(
            planting(15, OptionalDouble.of(3.2), OptionalDouble.empty(), planted),
            TREE,
            DAY,
            TestCatalogue.constants());
    double now = growth.yearsAt(DAY);
    assertThat(now).isCloseTo(5, within(0.01));
    assertThat(growth.spreadM(now)).isCloseTo(3.2, within(1e-9));
    assertThat(growth.spreadM(now + 1)).isBetween(3.3, 4.5);
  }

  @Test
  void keepsToTheSpreadItIsPrunedTo() {
    Growth growth =
        Growth.of(
            planting(15, OptionalDouble.empty(), OptionalDouble.of(2.5), DAY),
            TREE,
            DAY,
            TestCatalogue.constants());
    assertThat(growth.spreadM(1)).isLessThan(2.5);
    assertThat(growth.spreadM(20)).isEqualTo(2.5);
    assertThat(growth.crownAreaM2(20)).isCloseTo(Math.PI * 1.25 * 1.25, within(1e-9));
  }

  @Test
  void aMeasuredSpreadBeyondMatureIsBelieved() {
    Growth growth =
        Growth.of(
            planting(15, OptionalDouble.of(9), OptionalDouble.empty(), LocalDate.of(2000, 1, 1)),
            TREE,
            DAY,
            TestCatalogue.constants());
    assertThat(growth.spreadM(growth.yearsAt(DAY))).isCloseTo(9, within(1e-6));
    assertThat(growth.spreadM(growth.yearsAt(DAY) + 5)).isBetween(9.0, 9.5);
  }

  private static Growth measured(Double spreadM, Double heightM, LocalDate on) {
    Planting plain = planting(15, OptionalDouble.empty(), OptionalDouble.empty(), PLANTED);
    return Growth.of(
        new Planting(
            plain.id(),
            plain.speciesKey(),
            plain.cultivar(),
            plain.at(),
            plain.rowId(),
            plain.plantedOn(),
            plain.containerM3(),
            new Planting.Measured(
                spreadM == null ? OptionalDouble.empty() : OptionalDouble.of(spreadM),
                heightM == null ? OptionalDouble.empty() : OptionalDouble.of(heightM),
                Optional.ofNullable(on)),
            plain.keptSpreadM(),
            plain.keptHeightM()),
        TREE,
        DAY,
        TestCatalogue.constants());
  }

  @Test
  void meetsTheSizesOnTheDayTheyWereMeasured() {
    LocalDate later = DAY.plusYears(2);
    Growth growth = measured(2.6, 4.1, later);
    double then = growth.yearsAt(later);
    assertThat(growth.spreadM(then)).isCloseTo(2.6, within(1e-9));
    assertThat(growth.heightM(then)).isCloseTo(4.1, within(1e-9));
    assertThat(growth.spreadM(then - 2)).isLessThan(2.6);
    assertThat(growth.heightM(then + 1)).isBetween(4.1, 6.0);
    // The same sizes two years earlier are those of a plant two years ahead.
    Growth ahead = measured(2.6, 4.1, DAY);
    assertThat(ahead.spreadM(ahead.yearsAt(DAY))).isCloseTo(2.6, within(1e-9));
    assertThat(ahead.rootRadiusM(then)).isGreaterThanOrEqualTo(growth.rootRadiusM(then));
  }

  @Test
  void aHeightAloneMovesTheWholePlant() {
    Growth byCurve = measured(null, null, null);
    double now = byCurve.yearsAt(DAY);
    Growth low = measured(null, 0.7 * byCurve.heightM(now), DAY);
    Growth high = measured(null, 1.2 * byCurve.heightM(now), DAY);
    assertThat(low.heightM(now)).isCloseTo(0.7 * byCurve.heightM(now), within(1e-9));
    assertThat(high.heightM(now)).isCloseTo(1.2 * byCurve.heightM(now), within(1e-9));
    assertThat(byCurve.spreadM(now)).isBetween(low.spreadM(now), high.spreadM(now));
    assertThat(byCurve.rootDepthM(now)).isBetween(low.rootDepthM(now), high.rootDepthM(now));
    assertThat(byCurve.rootRadiusM(now)).isBetween(low.rootRadiusM(now), high.rootRadiusM(now));
    assertThat(low.spreadM(now)).isLessThan(high.spreadM(now));
  }

  @Test
  void aPlantSmallerThanItsContainerPromisedAndOneTallerThanItsKindAreBelieved() {
    Growth small = measured(0.3, 0.4, PLANTED);
    assertThat(small.spreadM(0)).isCloseTo(0.3, within(1e-6));
    assertThat(small.heightM(0)).isCloseTo(0.4, within(1e-6));
    assertThat(small.spreadM(1)).isGreaterThan(0.3);
    Growth tall = measured(null, 8.0, DAY);
    assertThat(tall.heightM(tall.yearsAt(DAY))).isCloseTo(8, within(1e-6));
  }

  @Property(tries = 200)
  void neverShrinks(
      @ForAll @DoubleRange(min = 0, max = 40) double years,
      @ForAll @DoubleRange(min = 0.01, max = 5) double later,
      @ForAll @DoubleRange(min = 0.5, max = 200) double litres) {
    Growth growth = young(litres);
    assertThat(growth.spreadM(years + later)).isGreaterThanOrEqualTo(growth.spreadM(years));
    assertThat(growth.heightM(years + later)).isGreaterThanOrEqualTo(growth.heightM(years));
    assertThat(growth.rootDepthM(years + later)).isGreaterThanOrEqualTo(growth.rootDepthM(years));
    assertThat(growth.rootRadiusM(years + later)).isGreaterThanOrEqualTo(growth.rootRadiusM(years));
    assertThat(growth.spreadM(years)).isBetween(0.0, TREE.matureSpreadM());
  }
}
