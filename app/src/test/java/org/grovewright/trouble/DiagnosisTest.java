package org.grovewright.trouble;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.grovewright.hydraulics.Calibration.Parameter;
import org.grovewright.hydraulics.Fault;
import org.grovewright.hydraulics.FaultSearch.Finding;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.PreparedNetwork;
import org.grovewright.hydraulics.Reading;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.irrigation.Outlet;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.plan.Plan;
import org.grovewright.trouble.FieldReading.Kind;
import org.junit.jupiter.api.Test;

/** The whole way from a faulty system through noisy readings to the place to dig, on the demo. */
class DiagnosisTest {
  private static final Plan PLAN = ExamplePlans.of("demo.yaml");
  private static final int YEAR = 3;
  private static final double NOISE = 0.05;

  private final Random random = new Random(7);
  private final List<FieldReading> readings = new ArrayList<>();

  private static ZoneResult zone() {
    return PLAN.watering().zonesIn(YEAR).get(0);
  }

  /** The tubing of the zone; what the other zones hold lies behind a closed valve. */
  private static List<Tubing.Run> runs() {
    return Tubing.runs(PLAN.watering().zonesIn(YEAR)).stream()
        .filter(run -> run.zone() == zone())
        .toList();
  }

  private String plant(Outlet outlet) {
    return PLAN.grove().plantings().get(outlet.plant()).id();
  }

  /** Takes the readings that the fields name from a faulty network, with noise. */
  private void read(Network faulty, Kind kind, String place, List<String> folded) {
    FieldReading asked = new FieldReading(1, zone().design().id(), kind, place, folded, 0);
    PlacedReading placed =
        PlacedReading.of(List.of(asked), PLAN.grove(), PLAN.watering(), YEAR).get(0);
    PreparedNetwork prepared = Solver.prepare(faulty);
    placed.closed().forEach(pipe -> prepared.setClosed(pipe, true));
    Solution solution = prepared.solve();
    double value = new Reading(placed.quantity(), placed.id(), 0, 1).in(solution);
    double noisy = value * (1 + NOISE * random.nextGaussian());
    double si = kind == Kind.PRESSURE ? noisy * 9806.65 : noisy;
    readings.add(new FieldReading(1, asked.zoneId(), kind, place, folded, si));
  }

  /** Meter, gauges at tap and row ends, a can at every plant. */
  private void round(Network faulty) {
    read(faulty, Kind.METER, "", List.of());
    read(faulty, Kind.PRESSURE, "tap", List.of());
    for (Tubing.Run run : runs()) {
      read(faulty, Kind.PRESSURE, run.profile().line().id() + " end", List.of());
    }
    zone().design().outlets().stream()
        .map(this::plant)
        .distinct()
        .forEach(plant -> read(faulty, Kind.CATCH, plant, List.of()));
  }

  private Diagnosis diagnosis() {
    return Diagnosis.of(
        PlacedReading.of(readings, PLAN.grove(), PLAN.watering(), YEAR),
        PLAN.grove(),
        PLAN.watering(),
        YEAR,
        NOISE);
  }

  private static List<String> firstThree(Diagnosis diagnosis) {
    return diagnosis.likeliest().stream()
        .limit(3)
        .map(finding -> finding.suspicion().element())
        .toList();
  }

  @Test
  void aSoundSystemGivesNoAlarm() {
    round(zone().network().network());
    Diagnosis diagnosis = diagnosis();
    assertThat(diagnosis.pointsToFault()).isFalse();
    assertThat(diagnosis.estimates().get(Parameter.EMITTERS).low()).isLessThan(1);
    assertThat(diagnosis.estimates().get(Parameter.EMITTERS).high()).isGreaterThan(1);
  }

  /** Emitters worn alike are wear, not a fault, and the bounds hold the truth. */
  @Test
  void wearIsMeasured() {
    Network sound = zone().network().network();
    Set<String> all = Set.copyOf(sound.emitters().stream().map(group -> group.id()).toList());
    round(new Fault.Clogging(all, 0.85).applyTo(sound));
    Diagnosis diagnosis = diagnosis();
    assertThat(diagnosis.pointsToFault()).isFalse();
    assertThat(diagnosis.estimates().get(Parameter.EMITTERS).factor()).isBetween(0.80, 0.90);
  }

  @Test
  void aLeakIsFoundToAStretch() {
    Stretch where = Stretch.of(zone(), PLAN.grove()).get(6);
    Network leaking =
        new Fault.Hole(where.pipeId(), 0.4, 0.003).applyTo(zone().network().network());
    round(leaking);
    for (Tubing.Run run : runs()) {
      String line = run.profile().line().id();
      read(leaking, Kind.METER, "", List.of(line + " start"));
      for (double along = 3; along < run.lengthM() - 1; along += 3) {
        read(leaking, Kind.METER, "", List.of(line + " " + along + " m"));
      }
    }
    Diagnosis diagnosis = diagnosis();
    assertThat(diagnosis.pointsToFault()).isTrue();
    assertThat(firstThree(diagnosis)).contains(where.name());
    Finding found =
        diagnosis.likeliest().stream()
            .filter(f -> f.suspicion().element().equals(where.name()))
            .findFirst()
            .orElseThrow();
    assertThat(found.size()).isBetween(0.0025, 0.0035);
  }

  @Test
  void aCloggedPlantIsFound() {
    Outlet some = zone().design().outlets().get(9);
    Set<String> its =
        Set.copyOf(
            zone().design().outlets().stream()
                .filter(o -> o.plant() == some.plant())
                .map(Outlet::id)
                .toList());
    round(new Fault.Clogging(its, 0.4).applyTo(zone().network().network()));
    Diagnosis diagnosis = diagnosis();
    assertThat(diagnosis.pointsToFault()).isTrue();
    assertThat(firstThree(diagnosis)).contains("the emitters of " + plant(some));
  }

  /**
   * What to read next was not read before, and following it narrows a leak down: five readings on,
   * the stretch is among the first three, which the round alone leaves to chance.
   */
  @Test
  void whatToReadNextIsNewAndNarrowsALeakDown() {
    Stretch where = Stretch.of(zone(), PLAN.grove()).get(6);
    Network leaking =
        new Fault.Hole(where.pipeId(), 0.4, 0.003).applyTo(zone().network().network());
    round(leaking);
    Diagnosis diagnosis = diagnosis();
    int asked = 0;
    while (diagnosis.next().isPresent() && asked < 6) {
      FieldReading next = diagnosis.next().get();
      assertThat(readings)
          .noneMatch(
              r ->
                  r.kind() == next.kind()
                      && r.place().equals(next.place())
                      && r.folded().equals(next.folded()));
      read(leaking, next.kind(), next.place(), next.folded());
      diagnosis = diagnosis();
      asked++;
    }
    assertThat(asked).isPositive();
    assertThat(firstThree(diagnosis)).contains(where.name());
  }

  /** Emitters that give twice their rating are not worn: water beyond reason means a leak. */
  @Test
  void aLeakIsNotTakenForWearWhereOnlyTheMeterTellsOfIt() {
    Stretch where = Stretch.of(zone(), PLAN.grove()).get(6);
    Network leaking =
        new Fault.Hole(where.pipeId(), 0.4, 0.003).applyTo(zone().network().network());
    read(leaking, Kind.METER, "", List.of());
    read(leaking, Kind.PRESSURE, "tap", List.of());
    for (Tubing.Run run : runs()) {
      read(leaking, Kind.PRESSURE, run.profile().line().id() + " end", List.of());
    }
    Diagnosis diagnosis = diagnosis();
    assertThat(diagnosis.pointsToFault()).isTrue();
    assertThat(diagnosis.likeliest().get(0).suspicion().kind())
        .isEqualTo(org.grovewright.hydraulics.FaultSearch.Kind.LEAK);
    assertThat(diagnosis.estimates().get(Parameter.EMITTERS).factor()).isBetween(0.6, 1.5);
  }
}
