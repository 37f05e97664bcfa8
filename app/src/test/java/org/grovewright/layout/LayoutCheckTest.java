package org.grovewright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.ground.SampleGrove;
import org.grovewright.growth.Growth;
import org.grovewright.model.Climate;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.grovewright.model.SpotHeight;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

class LayoutCheckTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static LayoutReport check(SampleGrove sample) {
    return LayoutCheck.of(sample.grove(), SampleGrove.CATALOGUE, new FigureBook());
  }

  private static List<String> codes(LayoutReport report) {
    return report.findings().stream().map(Finding::code).toList();
  }

  private static Species species(String key) {
    return SampleGrove.CATALOGUE.species().get(key);
  }

  @Test
  void aGroveLaidOutWellHasNoConflicts() {
    assertThat(check(SampleGrove.full()).conflicts()).isEmpty();
  }

  @Test
  void crownsMeetInTheYearAScanFinds() {
    SampleGrove sample =
        new SampleGrove().plant("a", "avocado", 0, 0, 20).plant("b", "lemon", 0, 4, 15);
    FigureBook book = new FigureBook();
    Grove grove = sample.grove();
    Conflict conflict = LayoutCheck.of(grove, SampleGrove.CATALOGUE, book).conflicts().get(0);
    Growth a =
        Growth.of(
            grove.plantings().get(0),
            species("avocado"),
            SampleGrove.START,
            SampleGrove.CATALOGUE.constants());
    Growth b =
        Growth.of(
            grove.plantings().get(1),
            species("lemon"),
            SampleGrove.START,
            SampleGrove.CATALOGUE.constants());
    double scanned = 0;
    while (a.spreadM(scanned) / 2 + b.spreadM(scanned) / 2 < 4) {
      scanned += 1e-4;
    }
    assertThat(conflict.kind()).isEqualTo(Conflict.Kind.CROWNS_MEET);
    assertThat(conflict.years()).isCloseTo(scanned, within(2e-4));
    assertThat(conflict.year()).isEqualTo((int) Math.floor(scanned));
    assertThat(book.get("layout.conflict.a.plant.b.year").value()).isEqualTo(conflict.year());
    assertThat(conflict.distanceM()).isEqualTo(4);
    // Full crowns of the catalogue: half of 8 m and half of 5 m.
    assertThat(conflict.neededM()).isCloseTo(6.5, within(1e-3));
    assertThat(conflict.moveM()).isCloseTo(2.5, within(1e-3));
    assertThat(conflict.finding().severity()).isEqualTo(Severity.SHORTFALL);
  }

  @Property(tries = 60)
  void followingEitherAdviceEndsTheConflict(
      @ForAll @DoubleRange(min = 0.5, max = 9) double distance) {
    SampleGrove near =
        new SampleGrove().plant("a", "avocado", 0, 0, 20).plant("b", "mango", 0, distance, 20);
    for (Conflict conflict : check(near).conflicts()) {
      SampleGrove moved =
          new SampleGrove()
              .plant("a", "avocado", 0, 0, 20)
              .plant("b", "mango", 0, distance + conflict.moveM(), 20);
      assertThat(check(moved).conflicts()).isEmpty();
      if (conflict.keepSpreadM().isPresent()) {
        SampleGrove pruned =
            new SampleGrove()
                .plant("a", "avocado", 0, 0, 20, SampleGrove.START, NONE, conflict.keepSpreadM())
                .plant(
                    "b",
                    "mango",
                    0,
                    distance,
                    20,
                    SampleGrove.START,
                    NONE,
                    conflict.keepOtherSpreadM());
        assertThat(check(pruned).conflicts()).isEmpty();
      }
    }
  }

  @Property(tries = 60)
  void fartherApartNeverMeetsSooner(
      @ForAll @DoubleRange(min = 0.5, max = 8) double distance,
      @ForAll @DoubleRange(min = 0, max = 2) double more) {
    double near = years(distance);
    double far = years(distance + more);
    assertThat(far).isGreaterThanOrEqualTo(near);
  }

  private static double years(double distance) {
    SampleGrove sample =
        new SampleGrove().plant("a", "avocado", 0, 0, 20).plant("b", "mango", 0, distance, 20);
    List<Conflict> conflicts = check(sample).conflicts();
    return conflicts.isEmpty() ? Double.POSITIVE_INFINITY : conflicts.get(0).years();
  }

  @Test
  void usualSpacingIsOnlyANote() {
    // The catalogue's usual spacing of avocado, 6 m, is less than its spread of 8 m.
    Conflict usual =
        check(new SampleGrove().plant("a", "avocado", 0, 0, 20).plant("b", "avocado", 0, 6, 20))
            .conflicts()
            .get(0);
    assertThat(usual.finding().severity()).isEqualTo(Severity.NOTE);
    Conflict near =
        check(new SampleGrove().plant("a", "avocado", 0, 0, 20).plant("b", "avocado", 0, 3, 20))
            .conflicts()
            .get(0);
    assertThat(near.finding().severity()).isEqualTo(Severity.SHORTFALL);
    assertThat(near.keepSpreadM()).isEmpty();
    assertThat(near.finding().message()).contains("choose a smaller kind");
  }

  @Test
  void companionsMayLiveUnderACrownButNotInItsCollar() {
    SampleGrove sample =
        new SampleGrove()
            .plant("tree", "avocado", 0, 0, 20)
            .plant("under", "comfrey", 1.5, 0, 3)
            .plant("clover", "white-clover", 0, 1, 1)
            .plant("in", "lavender", 0.2, 0, 3);
    LayoutReport report = check(sample);
    assertThat(report.conflicts()).hasSize(1);
    Conflict conflict = report.conflicts().get(0);
    assertThat(conflict.kind()).isEqualTo(Conflict.Kind.IN_COLLAR);
    assertThat(conflict.plantId()).isEqualTo("in");
    assertThat(conflict.year()).isZero();
    // Collar of 0.3 m and the crown at planting, 2.4 times the cube root of 3 l.
    assertThat(conflict.neededM()).isCloseTo(0.3 + 1.2 * Math.cbrt(0.003), within(1e-9));
  }

  @Test
  void crowdedCompanionsAreNotedAndGroundCoversAreLeftToClose() {
    SampleGrove sample =
        new SampleGrove()
            .plant("a", "rosemary", 0, 0, 3)
            .plant("b", "rosemary", 0.6, 0, 3)
            .plant("t1", "creeping-thyme", 5, 0, 1)
            .plant("t2", "creeping-thyme", 5.1, 0, 1);
    List<Conflict> conflicts = check(sample).conflicts();
    assertThat(conflicts).hasSize(1);
    assertThat(conflicts.get(0).kind()).isEqualTo(Conflict.Kind.CROWDED);
    assertThat(conflicts.get(0).neededM()).isCloseTo(species("rosemary").spacingM(), within(1e-6));
  }

  @Test
  void twoPlantsOnOneSpot() {
    Conflict conflict =
        check(new SampleGrove().plant("a", "lemon", 1, 1, 20).plant("b", "fig", 1, 1.01, 20))
            .conflicts()
            .get(0);
    assertThat(conflict.kind()).isEqualTo(Conflict.Kind.SAME_PLACE);
  }

  @Test
  void trunksAndCrownsKeepOffFixedThings() {
    SampleGrove sample = new SampleGrove();
    sample.fixture(
        "house",
        FixtureKind.BUILDING,
        new Shape.Area(
            List.of(new Point(0, 0), new Point(10, 0), new Point(10, 10), new Point(0, 10))));
    sample.plant("near", "lemon", -2, 5, 20);
    sample.plant("later", "avocado", 14, 5, 20);
    sample.plant("clear", "lemon", 5, 20, 20);
    sample.plant("herb", "lavender", 5, -0.95, 3);
    sample.plant("in", "fig", 5, 5, 20);
    List<Conflict> conflicts = check(sample).conflicts();
    assertThat(conflicts).extracting(Conflict::plantId).containsExactly("near", "later", "in");
    // Catalogue: a trunk keeps 3 m from a building and a crown 0.5 m.
    assertThat(conflicts.get(0).kind()).isEqualTo(Conflict.Kind.TRUNK_NEAR_FIXTURE);
    assertThat(conflicts.get(0).moveM()).isCloseTo(1, within(1e-9));
    Conflict later = conflicts.get(1);
    assertThat(later.kind()).isEqualTo(Conflict.Kind.CROWN_NEAR_FIXTURE);
    assertThat(later.neededM()).isCloseTo(4.5, within(1e-3));
    assertThat(later.keepSpreadM().orElseThrow()).isCloseTo(2 * (4 - 0.5), within(1e-9));
    // 95 % of 8 m in year 9; a radius of 3.5 m is reached somewhat before.
    assertThat(later.year()).isBetween(4, 8);
    assertThat(conflicts.get(2).finding().code()).isEqualTo("layout.on-fixture");
  }

  @Test
  void theOwnersClearanceTakesThePlaceOfTheCatalogues() {
    SampleGrove sample = new SampleGrove();
    sample.fixtures.add(
        new Fixture(
            "tank",
            FixtureKind.TANK,
            new Shape.Round(new Point(0, 0), 1),
            2,
            OptionalDouble.of(6)));
    sample.plant("a", "lemon", 0, 5, 20);
    Conflict conflict = check(sample).conflicts().get(0);
    assertThat(conflict.neededM()).isEqualTo(6);
    assertThat(conflict.distanceM()).isEqualTo(4);
  }

  @Test
  void nearASepticFieldAndABuriedServiceItSaysWhy() {
    SampleGrove sample = new SampleGrove();
    sample.fixture("field", FixtureKind.SEPTIC_FIELD, new Shape.Round(new Point(0, 0), 4));
    sample.fixture(
        "gas",
        FixtureKind.BURIED_SERVICE,
        new Shape.Line(List.of(new Point(20, -30), new Point(20, 30))));
    sample.plant("a", "fig", 0, 2, 20).plant("b", "lemon", 21, 0, 20);
    LayoutReport report = check(sample);
    assertThat(report.conflicts()).hasSize(2);
    assertThat(report.conflicts().get(0).finding().message()).contains("drain lines");
    assertThat(report.conflicts().get(1).finding().message()).contains("located and marked");
  }

  @Test
  void plantsStayWithinTheBoundary() {
    SampleGrove sample = new SampleGrove();
    sample.plant("out", "lemon", 55, 0, 20);
    sample.plant("edge", "lemon", 48, 0, 20);
    List<Conflict> conflicts = check(sample).conflicts();
    assertThat(conflicts.get(0).kind()).isEqualTo(Conflict.Kind.OUTSIDE);
    assertThat(conflicts.get(0).moveM()).isCloseTo(5, within(1e-9));
    assertThat(conflicts.get(1).kind()).isEqualTo(Conflict.Kind.OVER_BOUNDARY);
    assertThat(conflicts.get(1).keepSpreadM().orElseThrow()).isCloseTo(4, within(1e-9));
  }

  @Test
  void standingTreesAreJudgedFromTheirMeasuredSizeAndNotMoved() {
    LocalDate planted = SampleGrove.START.minusYears(12);
    SampleGrove sample =
        new SampleGrove()
            .plant("old", "lemon", 0, 0, 20, planted, OptionalDouble.of(4.8), NONE)
            .plant("older", "lemon", 0, 4, 20, planted, OptionalDouble.of(4.8), NONE);
    Conflict conflict = check(sample).conflicts().get(0);
    assertThat(conflict.years()).isZero();
    assertThat(conflict.finding().message()).doesNotContain("further away");
  }

  @Test
  void aPlantSetLaterHasNoCrownBefore() {
    SampleGrove sample =
        new SampleGrove()
            .plant("now", "lemon", 0, 0, 20)
            .plant("later", "lemon", 0, 1, 20, SampleGrove.START.plusYears(3), NONE, NONE);
    Conflict conflict = check(sample).conflicts().get(0);
    assertThat(conflict.years()).isBetween(1.0, 3.1);
  }

  @Test
  void suitsClimateSoilAndSlope() {
    SampleGrove sample = new SampleGrove().plant("a", "avocado", 0, 0, 20);
    sample.coldestNight = -4;
    sample.ph = OptionalDouble.of(8.1);
    sample.spots.add(new SpotHeight(new Point(0, 0), 0));
    sample.spots.add(new SpotHeight(new Point(10, 0), 3));
    assertThat(codes(check(sample)))
        .contains("layout.cold", "layout.soil-reaction", "layout.steep")
        .doesNotContain("layout.level-assumed");

    SampleGrove mild = new SampleGrove().plant("a", "avocado", 0, 0, 20);
    mild.coldestNight = 9;
    assertThat(codes(check(mild)))
        .contains("layout.level-assumed")
        .doesNotContain("layout.cold", "layout.soil-reaction", "layout.steep");
    mild.days.add(
        new Climate.DayWeather(
            LocalDate.of(2020, 1, 3), -5, 8, NONE, NONE, NONE, NONE, NONE, NONE));
    assertThat(codes(check(mild))).contains("layout.cold");
  }

  @Test
  void standsUpToStrangeGroves() {
    SampleGrove empty = new SampleGrove();
    empty.boundary = List.of();
    assertThat(codes(check(empty))).contains("layout.boundary-unclear");
    SampleGrove far = new SampleGrove();
    far.boundary = List.of();
    far.plant("a", "lemon", 1e6, 1e6, 20).plant("b", "raspberry", 1e6, 1e6 + 0.4, 0);
    assertThat(check(far).conflicts()).hasSize(1);
    SampleGrove unknown = new SampleGrove().plant("a", "moonflower", 0, 0, 20);
    assertThatThrownBy(() -> check(unknown)).hasMessageContaining("moonflower");
  }
}
