package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.junit.jupiter.api.Test;

/** A thirsty and two dry-loving kinds on one valve, with emitters that the owner has drawn. */
class RemediesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final String GROVE =
      """
      units: metric
      start: 2027-02-20
      site:
        name: Two needs
        latitude: 38.2
        longitude: -1.1
        elevation: 90 m
        boundary: [[0 m, 0 m], [30 m, 0 m], [30 m, 14 m], [0 m, 14 m]]
        north: 0 deg
      soil:
        texture: loam
        depth: 1 m
      climate:
        source: invented
        wind_height: 2 m
        months:
          tmin: 4 5 7 9 12 16 19 19 16 12 8 5 °C
          tmax: 16 17 20 22 26 30 33 33 29 24 20 16 °C
          humidity: 70 66 62 60 58 55 55 58 62 66 70 72 %
          wind: 2 2.1 2.2 2.3 2.2 2.1 2.1 2 1.9 1.8 1.9 1.9 m/s
          sunshine: 6 6.8 7.3 8.3 9.6 10.7 11.5 10.6 8.6 7.2 6.2 5.7 h
          rain: 25 27 28 33 30 18 4 9 30 42 34 26 mm
      supply:
        kind: house tap
        at: [1 m, 1 m]
        outlet_height: 0.5 m
        static_pressure: 350 kPa
        flow_tests:
          - {volume: 10 L, time: 24 s, pressure: 0 kPa}
          - {volume: 10 L, time: 36 s, pressure: 170 kPa}
        hours: [05:00-08:30]
      rows:
        - id: A
          from: [4 m, 7 m]
          to: [27 m, 7 m]
          planted: 2027-03-10
          container: 25 L
          plants:
            - {species: avocado, at: 2 m, kept_spread: 4 m, kept_height: 4 m}
            - {species: olive, at: 9 m, kept_spread: 4 m, kept_height: 4 m}
            - {species: olive, cultivar: Second (invented), at: 15 m, kept_spread: 3 m, kept_height: 3 m}
          companions:
            - {species: lavender, between: each, count: 2, container: 2 L}
      watering:
        main: {route: [[1 m, 1 m], [3 m, 7 m]], pipe: pipe.pe-25}
        zones:
          - id: all
            laterals:
              - {row: A, run: two sided, tubing: pipe.pe-16, emitter: emitter.pc-8, emitters_per_plant: 4, companion_emitter: emitter.pc-8}
      crew:
        people: 1
        hours: {Sat: 08:00-13:00}
      """;

  private static Plan plan(String text) {
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null).read(text, "grove.yaml", Path.of("")), CATALOGUE);
  }

  private static Finding drowned(Plan plan) {
    return plan.findings().stream()
        .filter(f -> f.code().equals("timer.too-much") && f.subject().contains("lavender"))
        .findFirst()
        .orElseThrow();
  }

  /**
   * The change that is proposed is made, and the plan made with it must show what was promised: the
   * plan's own arithmetic twice, no outside source.
   */
  @Test
  void theProposedRatingGivesWhatIsPromised() {
    Finding before = drowned(plan(GROVE));
    double needs = before.quantities().get(2).value();
    double gets = before.quantities().get(3).value();
    double promised = before.quantities().get(4).value();
    // 8 L/h is the only rating on the valve; a smaller one has to be bought.
    assertThat(before.message())
        .contains("With 1 \u00d7 Compensating emitter 1.6 L/h in that year");
    assertThat(promised).isGreaterThanOrEqualTo(needs).isLessThan(gets / 4);
    int year = (int) before.quantities().get(1).value();
    int month = (int) before.quantities().get(0).value();
    String plant = before.subject().split(", ")[0];
    Plan after =
        plan(GROVE.replace("companion_emitter: emitter.pc-8", "companion_emitter: emitter.pc-1-6"));
    Programme.PlantSupply supply =
        after.programme().supplies().stream()
            .filter(s -> s.year() == year && s.month() == month)
            .filter(s -> after.grove().plantings().get(s.plant()).id().equals(plant))
            .findFirst()
            .orElseThrow();
    assertThat(supply.getsM3PerS()).isCloseTo(promised, within(0.1 * promised));
    assertThat(after.findings()).noneMatch(f -> f.code().equals("timer.short"));
  }
}
