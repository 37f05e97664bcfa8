package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.hydraulics.Link;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.texts.Language;
import org.grovewright.work.CareEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The watering systems planned for the two example sites, checked part against part. */
class ExampleSystemsTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final double G = 9.80665;

  private static Grove example(String name) {
    return new DescriptionReader(CATALOGUE, null).read(Path.of("../examples", name + ".yaml"));
  }

  static Stream<Plan> plans() {
    return Stream.of("demo", "us-gravity").map(name -> Planner.plan(example(name), CATALOGUE));
  }

  /**
   * The job of a later year names every plant, how many emitters it gets, their rating and when.
   */
  @ParameterizedTest
  @MethodSource("plans")
  void theJobOfAddedEmittersNamesPlantsNumbersRatingsAndSeason(Plan plan) {
    // Both plans begin in February: summer in the south, winter in the north.
    assertThat(plan.grove().start().getMonthValue()).isEqualTo(2);
    String season = plan.grove().site().latitudeDeg() < 0 ? "summer" : "winter";
    for (ZoneResult zone : plan.watering().zones()) {
      for (int year = 2; year <= 3; year++) {
        Map<String, Integer> added = new HashMap<>();
        for (Outlet outlet : zone.design().allOutlets()) {
          if (outlet.fromYear() == year) {
            String plant = plan.grove().plantings().get(outlet.plant()).id();
            added.merge(plant + "|" + outlet.emitter().name(), 1, Integer::sum);
          }
        }
        String id = "care.emitters." + zone.design().id() + ".year-" + year;
        List<CareEvent> events =
            plan.care().events().stream().filter(e -> e.id().equals(id)).toList();
        assertThat(events).hasSize(added.isEmpty() ? 0 : 1);
        if (added.isEmpty()) {
          continue;
        }
        String message = events.get(0).message();
        added.forEach(
            (what, count) -> {
              String plant = what.substring(0, what.indexOf('|'));
              String emitter = what.substring(what.indexOf('|') + 1);
              assertThat(message.split("\\. "))
                  .anySatisfy(
                      sentence ->
                          assertThat(sentence + ",")
                              .contains(" add ", count + " \u00d7 " + emitter)
                              .containsPattern("[ ]" + Pattern.quote(plant) + "[, ]"));
            });
        assertThat(message)
            .startsWith("In " + season + ", as year " + year + " of the plan begins in ")
            .contains("of zone " + zone.design().id().replace("zone-", "") + ".");
        assertThat(Language.of("es").say(message))
            .startsWith("En ")
            .doesNotContain(" add ", "plan begins", "Then set");
      }
    }
    assertThat(plan.care().events()).anyMatch(e -> e.id().startsWith("care.emitters."));
  }

  /** Conservation of mass: what the emitters give is what the supply gives. */
  @ParameterizedTest
  @MethodSource("plans")
  void theSupplyGivesWhatTheEmittersGive(Plan plan) {
    assertThat(plan.watering().zones()).isNotEmpty();
    for (ZoneResult zone : plan.watering().zones()) {
      double given = zone.outlets().stream().mapToDouble(o -> o.flowM3PerS()).sum();
      assertThat(given).isCloseTo(zone.flowM3PerS(), within(1e-9));
      assertThat(zone.solution().massResidual()).isLessThan(1e-9);
      assertThat(zone.solution().energyResidual()).isLessThan(1e-6);
    }
  }

  /**
   * Head at an emitter by walking from the supply and taking off each loss by the friction formula
   * itself: Hazen-Williams in SI, h = 10.67 L Q^1.852 / (C^1.852 d^4.8704) (from memory; the
   * constant follows from the definition with k = 0.849), for the example that uses it.
   */
  @Test
  void headsFollowHazenWilliamsAlongTheMain() {
    Plan plan = Planner.plan(example("us-gravity"), CATALOGUE);
    ZoneResult zone = plan.watering().zones().get(0);
    int checked = 0;
    for (Link link : zone.network().network().links()) {
      if (link instanceof Link.Pipe pipe) {
        double q = Math.abs(zone.solution().flow(pipe.id()));
        double area = Math.PI / 4 * pipe.diameter() * pipe.diameter();
        double v = q / area;
        double friction =
            10.674
                * pipe.length()
                * Math.pow(q, 1.852)
                / (Math.pow(pipe.roughness().value(), 1.852) * Math.pow(pipe.diameter(), 4.8704));
        double loss = friction + pipe.minorLoss() * v * v / (2 * G);
        assertThat(Math.abs(zone.solution().headLoss(pipe.id())))
            .as(pipe.id())
            .isCloseTo(loss, within(3e-3 * loss + 2e-6));
        checked++;
      }
    }
    assertThat(checked).isGreaterThan(20);
  }

  /** The emitter equation q = qn (p/pn)^x, Karmeli and Keller, holds at every plain emitter. */
  @Test
  void plainEmittersFollowTheEmitterEquation() {
    Plan plan = Planner.plan(example("us-gravity"), CATALOGUE);
    for (ZoneResult zone : plan.watering().zones()) {
      for (ZoneResult.OutletResult o : zone.outlets()) {
        EmitterType e = o.outlet().emitter();
        assertThat(e.compensating()).isFalse();
        double expected =
            e.nominalFlowM3PerS() * Math.pow(o.pressurePa() / e.nominalPressurePa(), e.exponent());
        assertThat(o.flowM3PerS()).isCloseTo(expected, within(1e-4 * expected));
      }
    }
  }

  /** Every metre of tubing in the network is on the list of goods, and the other way round. */
  @ParameterizedTest
  @MethodSource("plans")
  void theGoodsHoldThePipeOfTheNetwork(Plan plan) {
    Map<String, Double> designed = new HashMap<>();
    for (ZoneResult zone : plan.watering().zones()) {
      for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
        for (Line line : lateral.lines()) {
          double along = Terrain.of(plan.grove().site()).lengthOver(line.path());
          designed.merge(lateral.tubing().key(), along, Double::sum);
        }
      }
    }
    for (Map.Entry<String, Double> tubing : designed.entrySet()) {
      List<Requirement> asked =
          plan.watering().requirements().stream()
              .filter(r -> r.itemKey().equals(tubing.getKey()))
              .toList();
      assertThat(asked).hasSize(1);
      assertThat(asked.get(0).quantity()).isCloseTo(tubing.getValue(), within(1e-6));
      double cut = asked.get(0).cuts().stream().mapToDouble(Requirement.Cut::lengthM).sum();
      assertThat(cut).isCloseTo(tubing.getValue(), within(1e-6));
    }
  }

  /** Every plant gets its need in every month, or a remark says that it does not. */
  @ParameterizedTest
  @MethodSource("plans")
  void noPlantIsShortWithoutARemark(Plan plan) {
    List<String> said =
        plan.findings().stream()
            .filter(f -> f.code().equals("timer.short"))
            .map(Finding::subject)
            .toList();
    assertThat(plan.programme().supplies()).isNotEmpty();
    for (Programme.PlantSupply s : plan.programme().supplies()) {
      String plant = plan.grove().plantings().get(s.plant()).id();
      if (!said.contains(plant)) {
        assertThat(s.share()).as(plant + " " + s.year() + "-" + s.month()).isGreaterThan(0.95);
      }
    }
  }

  /**
   * Young trees beside fast companions, found with the figures of the plan: with the same emitters
   * from the first day the worst plant of the demo got 7.3 times its need in its thirstiest month.
   */
  @ParameterizedTest
  @MethodSource("plans")
  void stagedEmittersKeepYoungPlantsFromDrowning(Plan plan) {
    double most = plan.grove().site().name().startsWith("Wattlefall") ? 2.6 : 2.6;
    Map<List<Integer>, Programme.PlantSupply> peaks = new HashMap<>();
    for (Programme.PlantSupply s : plan.programme().supplies()) {
      peaks.merge(
          List.of(s.plant(), s.year()), s, (a, b) -> b.needsM3PerS() > a.needsM3PerS() ? b : a);
    }
    double leastExcess = CATALOGUE.constant("irrigation.least-excess").value();
    for (Programme.PlantSupply s : peaks.values()) {
      if (s.getsM3PerS() - s.needsM3PerS() > leastExcess) {
        assertThat(s.share())
            .as(plan.grove().plantings().get(s.plant()).id() + " in year " + s.year())
            .isLessThan(most);
      }
    }
    for (MixedNeeds zone : plan.watering().mixedNeeds()) {
      assertThat(zone.after().worstShare()).isLessThanOrEqualTo(zone.before().worstShare());
      assertThat(zone.after().totalM3()).isLessThan(zone.before().totalM3());
    }
  }

  /** What is bought for the first and for later years is what the emitters of all years are. */
  @ParameterizedTest
  @MethodSource("plans")
  void emittersOfAllYearsAreBoughtAndFitted(Plan plan) {
    Map<String, Integer> designed = new HashMap<>();
    int first = 0;
    for (ZoneResult zone : plan.watering().zones()) {
      for (Outlet outlet : zone.design().allOutlets()) {
        designed.merge(outlet.emitter().key() + " " + outlet.fromYear(), 1, Integer::sum);
        first += outlet.fromYear() == 1 ? 1 : 0;
      }
    }
    Map<String, Integer> asked = new HashMap<>();
    for (Requirement r : plan.watering().requirements()) {
      if (CATALOGUE.emitters().containsKey(r.itemKey())) {
        int year = r.figureId().endsWith(".year-2") ? 2 : r.figureId().endsWith(".year-3") ? 3 : 1;
        asked.merge(r.itemKey() + " " + year, (int) r.quantity(), Integer::sum);
      }
    }
    assertThat(asked).isEqualTo(designed);
    double fitted =
        plan.watering().work().stream()
            .filter(w -> w.taskKey().equals("fit-emitter"))
            .mapToDouble(w -> w.amount())
            .sum();
    assertThat(fitted).isEqualTo(first);
    for (String year : List.of("2", "3")) {
      if (designed.keySet().stream().anyMatch(k -> k.endsWith(" " + year))) {
        assertThat(plan.care().events()).anyMatch(e -> e.id().endsWith(".year-" + year));
      }
    }
  }

  /** No cycle starts or ends outside the allowed hours. */
  @ParameterizedTest
  @MethodSource("plans")
  void theTimerKeepsTheAllowedHours(Plan plan) {
    List<Supply.Hours> allowed = plan.grove().supply().allowedHours();
    assertThat(allowed).isNotEmpty();
    for (TimerSetting setting : plan.programme().settings()) {
      for (LocalTime start : setting.starts()) {
        int from = start.toSecondOfDay();
        int until = from + 60 * setting.minutesPerCycle();
        assertThat(allowed)
            .as(setting.toString())
            .anyMatch(
                h ->
                    from >= h.from().toSecondOfDay()
                        && until <= h.from().toSecondOfDay() + h.seconds());
      }
    }
  }

  /** A plan is a function of its input alone. */
  @Test
  void planningTwiceGivesTheSameFigures() {
    Plan once = Planner.plan(example("demo"), CATALOGUE);
    Plan again = Planner.plan(example("demo"), CATALOGUE);

    assertThat(new ArrayList<>(again.figures().values()))
        .isEqualTo(new ArrayList<>(once.figures().values()));
    assertThat(again.findings()).isEqualTo(once.findings());
  }
}
