package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.texts.Language;
import org.grovewright.trench.Trench;
import org.junit.jupiter.api.Test;

/** What a plan says of its trench, on an invented grove that has everything in the way. */
class TrenchRemarksTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  private static Plan plan(String site, String tmin, String tmax) {
    String text =
        """
        units: metric
        start: 2027-02-20
        site:
          name: Everything in the way (invented)
          latitude: 45
          longitude: 10
          elevation: 100 m
          boundary: [[0 m, 0 m], [40 m, 0 m], [40 m, 30 m], [0 m, 30 m]]
        %s
        soil: {texture: loam, depth: 1 m, ph: 6.5}
        climate:
          source: invented
          months:
            tmin: %s °C
            tmax: %s °C
        supply:
          kind: house tap
          at: [5 m, 2 m]
          outlet_height: 0.5 m
          static_pressure: 350 kPa
          flow_tests:
            - {volume: 10 L, time: 20 s, pressure: 0 kPa}
        rows:
          - id: A
            from: [5 m, 20 m]
            to: [30 m, 20 m]
            planted: 2027-03-20
            container: 20 L
            plants:
              - {species: fig, at: 2 m}
              - {species: lemon, at: 9 m}
              - {species: pomegranate, at: 16 m}
        crew: {people: 2, hours: {Sat: 08:00-17:00}}
        """
            .formatted(site, tmin, tmax);
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null).read(text, "everything.yaml", Path.of(".")),
        CATALOGUE);
  }

  private static final String MILD_LOW = "8 8 9 11 13 15 17 17 15 13 10 8";
  private static final String MILD_HIGH = "16 17 18 20 23 26 29 29 26 22 18 16";

  private static final String ACROSS =
      """
        fixed:
          - {id: yard, kind: paving, area: [[0 m, 6 m], [40 m, 6 m], [40 m, 9 m], [0 m, 9 m]]}
          - {id: cable, kind: buried service, service: electric, depth: 0.5 m,
             line: [[0 m, 12 m], [40 m, 12 m]]}
          - {id: pipe, kind: buried service, line: [[0 m, 3.8 m], [40 m, 3.8 m]]}
          - {id: elm, kind: existing tree, at: [6 m, 15 m], radius: 0.3 m, height: 12 m}
          - {id: green, kind: lawn, area: [[0 m, 16 m], [40 m, 16 m], [40 m, 28 m], [0 m, 28 m]]}
      """;

  private static List<String> codes(Plan plan) {
    return plan.findings().stream().map(Finding::code).distinct().toList();
  }

  private static void speaksSpanish(Plan plan) {
    Language spanish = Language.of("es");
    plan.findings().stream()
        .filter(f -> f.code().startsWith("irrigation."))
        .forEach(f -> assertThat(spanish.canSay(f.message())).as(f.message()).isTrue());
    plan.figures().values().stream()
        .filter(f -> f.id().startsWith("irrigation.trench"))
        .forEach(f -> assertThat(spanish.canSay(f.label())).as(f.label()).isTrue());
  }

  @Test
  void saysWhatIsInTheWay() {
    Plan plan = plan(ACROSS, MILD_LOW, MILD_HIGH);
    assertThat(codes(plan))
        .contains(
            "irrigation.trench-through-paving",
            "irrigation.trench-crosses-service",
            "irrigation.trench-traffic-assumed",
            "irrigation.lateral-across")
        .doesNotContain("irrigation.main-crosses", "irrigation.frost-assumed");
    speaksSpanish(plan);
    Trench trench = plan.watering().trench();
    assertThat(trench.crossings()).extracting(Trench.Crossing::service).contains("cable", "pipe");
    assertThat(trench.crossings())
        .allSatisfy(c -> assertThat(Math.toDegrees(c.angleRad())).isGreaterThan(80));
    // Under a yard of 3 m, taken to bear vehicles: AS/NZS 2566.2 as quoted in the catalogue, 0.6 m.
    assertThat(trench.segments())
        .filteredOn(s -> s.ground().kind() == TrenchGround.Kind.PAVING)
        .isNotEmpty()
        .allSatisfy(s -> assertThat(s.coverM()).isEqualTo(0.6));
    assertThat(trench.segments())
        .filteredOn(s -> s.ground().kind() == TrenchGround.Kind.SOIL)
        .isNotEmpty()
        .allSatisfy(s -> assertThat(s.coverM()).isEqualTo(0.3));
    assertThat(plan.work().tasks())
        .filteredOn(t -> t.kind().key().equals("mend-paving"))
        .singleElement()
        .satisfies(t -> assertThat(t.segments()).isNotEmpty());
    assertThat(plan.work().find("expose-service").orElseThrow().amount()).isEqualTo(2);
    assertThat(plan.cautions()).containsKeys("buried-services", "cutting");
  }

  /** Soil of the work is the soil of the segments, each once. */
  @Test
  void countsNoSoilTwice() {
    Plan plan = plan(ACROSS, MILD_LOW, MILD_HIGH);
    Trench trench = plan.watering().trench();
    double dug =
        plan.work().tasks().stream()
            .filter(t -> t.kind().key().startsWith("dig-trench"))
            .mapToDouble(t -> t.amount())
            .sum();
    double byHand =
        trench.segments().stream().mapToDouble(s -> s.lengthM() * s.widthM() * s.depthM()).sum();
    assertThat(dug).isEqualTo(byHand, within(1e-9));
    assertThat(plan.work().find("backfill-trench").orElseThrow().amount())
        .isEqualTo(byHand, within(1e-9));
  }

  /**
   * Stefan's formula by hand: January at a mean of 0 °C in a usual year, 3 K colder in a cold one,
   * is 93 kelvin days; half of them reach the ground; 0.0588 sqrt(46.5) = 0.401 m.
   */
  @Test
  void laysTheMainBelowTheFrost() {
    Plan plan = plan("", "-4 5 9 11 13 15 17 17 15 13 10 8", "4 15 18 20 23 26 29 29 26 22 18 16");
    assertThat(plan.figure("irrigation.frost-depth").orElseThrow().value())
        .isEqualTo(0.401, within(5e-4));
    assertThat(codes(plan)).contains("irrigation.frost-assumed");
    assertThat(plan.watering().trench().segments())
        .allSatisfy(s -> assertThat(s.coverM()).isEqualTo(0.401, within(5e-4)));
    speaksSpanish(plan);
  }

  @Test
  void drainsTheMainWhereFrostGoesDeep() {
    Plan plan = plan("  frost_depth: 1.2 m", MILD_LOW, MILD_HIGH);
    assertThat(codes(plan)).contains("irrigation.main-drained");
    assertThat(plan.watering().trench().segments())
        .allSatisfy(s -> assertThat(s.coverM()).isEqualTo(0.3));
    speaksSpanish(plan);
  }

  @Test
  void saysWhatNoWayLeadsRound() {
    Plan plan =
        plan(
            "  fixed:\n"
                + "    - {id: long hall, kind: building, area: [[0 m, 8 m], [40 m, 8 m], [40 m, 10 m],"
                + " [0 m, 10 m]], height: 3 m}\n",
            MILD_LOW,
            MILD_HIGH);
    assertThat(plan.findings())
        .filteredOn(f -> f.code().equals("irrigation.main-crosses"))
        .singleElement()
        .satisfies(f -> assertThat(f.subject()).isEqualTo("long hall"));
    speaksSpanish(plan);
  }
}
