package org.grovewright.trouble;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.trouble.Mishap.Place;
import org.grovewright.trouble.WhatIfAnswer.PlantChange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WhatIfsTest {
  private static final Plan DEMO = ExamplePlans.of("demo.yaml");
  private static final int YEAR = 3;
  private static final Plan TANK = ExamplePlans.of("us-gravity.yaml");

  private static WhatIfs of(Plan plan) {
    return new WhatIfs(plan.grove(), plan.watering(), plan.programme(), YEAR);
  }

  private static double after(WhatIfAnswer answer) {
    return answer.plants().stream().mapToDouble(PlantChange::flowAfter).sum();
  }

  private static double metered(WhatIfAnswer answer) {
    return answer.zones().stream().mapToDouble(WhatIfAnswer.ZoneChange::after).sum();
  }

  /**
   * What the meter shows more than the plants get runs out of the hole: Torricelli's {@code 0.6 A
   * sqrt(2 g h)} with the textbook coefficient of a sharp edge, at a head between the least and the
   * greatest of the zone's emitters, which stand within a metre of the hole's height.
   */
  @Test
  void cutLosesWhatAnOrificeLoses() {
    WhatIfAnswer answer = of(DEMO).answer(new Mishap.Cut(Place.ANY, 0.003));
    double lost = metered(answer) - after(answer);
    double area = Math.PI / 4 * 0.003 * 0.003;
    double head = Math.pow(lost / (0.6 * area), 2) / (2 * 9.80665);
    double[] heads =
        answer.plants().stream().mapToDouble(p -> p.pressureAfter() / 9806.65).sorted().toArray();
    assertThat(head).isBetween(heads[0] - 0.5, heads[heads.length - 1] + 0.5);
    assertThat(answer.plants())
        .allSatisfy(p -> assertThat(p.pressureAfter()).isLessThan(p.pressureBefore()));
    assertThat(answer.worst().needAfter()).isLessThanOrEqualTo(answer.worst().needBefore());
  }

  @Test
  void everySecondEmitterStopsAndTheRestGiveNoLess() {
    WhatIfAnswer answer = of(DEMO).answer(new Mishap.HalfClogged(0));
    double before = answer.plants().stream().mapToDouble(PlantChange::flowBefore).sum();
    assertThat(after(answer)).isBetween(0.4 * before, 0.62 * before);
    assertThat(answer.plants())
        .allSatisfy(p -> assertThat(p.pressureAfter()).isGreaterThanOrEqualTo(p.pressureBefore()));
  }

  /** Hydrostatics: at half the level no emitter can have more than half the level's head left. */
  @Test
  void halfTankHasHalfTheHead() {
    WhatIfAnswer answer = of(TANK).answer(new Mishap.HalfPressure());
    double level = TANK.grove().supply().tankLevelM().orElseThrow();
    assertThat(answer.title().message()).contains("tank");
    double elevation = TANK.watering().supply().elevationM();
    double lowest =
        TANK.watering().zones().stream()
            .flatMap(z -> z.network().network().nodes().stream())
            .mapToDouble(n -> n.elevation())
            .min()
            .orElseThrow();
    assertThat(answer.plants())
        .hasSize(TANK.grove().plantings().size())
        .allSatisfy(
            p -> {
              assertThat(p.pressureAfter() / 9806.65).isLessThan(elevation + level / 2 - lowest);
              assertThat(p.flowAfter()).isLessThan(p.flowBefore());
            });
  }

  @ParameterizedTest
  @ValueSource(strings = {"A", "b"})
  void addedTreesDrinkToo(String row) {
    WhatIfAnswer answer = of(DEMO).answer(new Mishap.MoreTrees(Optional.of(row), 2));
    List<PlantChange> added =
        answer.plants().stream().filter(p -> p.plantId().startsWith("new-")).toList();
    assertThat(added).hasSize(2).allSatisfy(p -> assertThat(p.flowAfter()).isPositive());
    assertThat(metered(answer)).isCloseTo(after(answer), within(1e-9));
    assertThat(answer.title().message()).contains("row " + row.toUpperCase(java.util.Locale.ROOT));
    assertThat(answer.plants())
        .filteredOn(p -> p.flowBefore() > 0)
        .allSatisfy(p -> assertThat(p.pressureAfter()).isLessThanOrEqualTo(p.pressureBefore()));
  }

  @Test
  void shutValveLeavesTheZoneDry() {
    WhatIfAnswer answer = of(DEMO).answer(new Mishap.StuckValve(Optional.empty(), false));
    assertThat(after(answer)).isZero();
    assertThat(answer.worst().needAfter()).isZero();
  }

  /** With two zones on one supply each gets less than alone, and the meter shows both. */
  @Test
  void openValveSharesTheSupply() {
    Plan plan = TANK.watering().zones().size() > 1 ? TANK : DEMO;
    ZoneResult stuck = plan.watering().zones().get(0);
    WhatIfAnswer answer =
        of(plan).answer(new Mishap.StuckValve(Optional.of(stuck.design().id()), true));
    assertThat(answer.zones()).hasSize(plan.watering().zones().size() - 1);
    answer.zones().forEach(z -> assertThat(z.after()).isGreaterThan(z.before()));
    answer.plants().forEach(p -> assertThat(p.pressureAfter()).isLessThan(p.pressureBefore()));
    assertThat(answer.remarks())
        .anyMatch(r -> r.message().contains("until someone shuts the supply"));
  }

  /**
   * A loop that is cut anywhere still reaches every plant; of a dead end only the plants that have
   * an emitter before the cut or on another line get any water.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 0.9})
  void aCutLineStillWatersWhatIsNotBeyond(double share) {
    for (Plan plan : List.of(DEMO, TANK)) {
      for (Tubing.Run run : Tubing.runs(plan.watering().zonesIn(YEAR))) {
        String row = run.profile().rowId();
        Tubing.Run first = Tubing.along(Optional.of(row), plan.watering().zonesIn(YEAR)).get(0);
        double along = share * first.lengthM();
        WhatIfAnswer answer =
            of(plan)
                .answer(new Mishap.Severed(new Place(Optional.of(row), OptionalDouble.of(along))));
        for (PlantChange plant : answer.plants()) {
          boolean reached =
              first.zone().outlets().stream()
                  .map(o -> o.outlet())
                  .filter(o -> plan.grove().plantings().get(o.plant()).id().equals(plant.plantId()))
                  .anyMatch(
                      o ->
                          first.profile().line().closed()
                              || !first.profile().line().outlets().contains(o)
                              || o.alongM() < along - 0.01);
          assertThat(plant.flowAfter() > 0).as(plant.plantId()).isEqualTo(reached);
        }
      }
    }
  }

  @Test
  void placesThatAreNotThereAreNamed() {
    assertThatThrownBy(() -> of(DEMO).answer(new Mishap.MoreTrees(Optional.of("Z"), 2)))
        .hasMessage("No tubing runs along a row Z; there is A, B.");
    Place far = new Place(Optional.of("A"), OptionalDouble.of(500));
    assertThatThrownBy(() -> of(DEMO).answer(new Mishap.Severed(far)))
        .isInstanceOfSatisfying(
            NoSuchPlaceException.class,
            e -> {
              assertThat(e.told().message()).contains("{1} from its start");
              assertThat(e.told().quantities().get(1)).isEqualTo(new Quantity(500, Kind.LENGTH));
            });
    assertThatThrownBy(() -> of(DEMO).answer(new Mishap.StuckValve(Optional.of("zone-9"), true)))
        .hasMessageContaining("There is no zone 9; there is zone-1");
  }
}
