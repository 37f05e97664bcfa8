package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.demand.Requirement;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.model.Stock;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The ways to water that are compared, on the example sites. */
class AlternativesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();

  static Stream<Plan> plans() {
    DescriptionReader reader = new DescriptionReader(CATALOGUE, null);
    return Stream.of("demo", "us-gravity")
        .map(name -> Planner.plan(reader.read(Path.of("../examples", name + ".yaml")), CATALOGUE));
  }

  private static Alternative planned(Plan plan) {
    List<Alternative> planned =
        plan.watering().alternatives().stream().filter(Alternative::planned).toList();
    assertThat(planned).hasSize(1);
    return planned.get(0);
  }

  @ParameterizedTest
  @MethodSource("plans")
  void atLeastThreeAreShownAndTheCheapestThatKeepsTheRulesIsPlanned(Plan plan) {
    List<Alternative> shown = plan.watering().alternatives();
    Alternative planned = planned(plan);

    assertThat(shown).hasSizeGreaterThanOrEqualTo(3);
    assertThat(shown).extracting(Alternative::name).doesNotHaveDuplicates();
    assertThat(planned.keepsRules()).isTrue();
    for (Alternative other : shown) {
      if (other.keepsRules()) {
        assertThat(planned.cost().total())
            .as(other.name())
            .isLessThanOrEqualTo(other.cost().total());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("plans")
  void onTheFrontMoreCostBringsMoreUniformity(Plan plan) {
    List<Alternative> front =
        plan.watering().alternatives().stream().filter(Alternative::onFront).toList();

    assertThat(front).contains(planned(plan));
    for (int i = 1; i < front.size(); i++) {
      assertThat(front.get(i).cost().total())
          .isGreaterThanOrEqualTo(front.get(i - 1).cost().total());
      assertThat(front.get(i).emissionUniformity())
          .isGreaterThan(front.get(i - 1).emissionUniformity());
    }
  }

  /** The money of the planned way is the goods of the plan by their prices, added up here anew. */
  @ParameterizedTest
  @MethodSource("plans")
  void thePlannedWayCostsWhatItsGoodsCost(Plan plan) {
    Stock stock = plan.grove().stock();
    double pipe = 0;
    double rest = 0;
    for (Requirement r : plan.watering().requirements()) {
      Stock.Price own = stock.prices().get(r.itemKey());
      TypicalPrice typical = CATALOGUE.prices().get(r.itemKey());
      double price =
          own != null
              ? own.amount() / own.packSize()
              : typical.amount() / typical.packSize() * stock.typicalTimes().orElse(1);
      if (CATALOGUE.pipes().containsKey(r.itemKey())) {
        pipe += price * r.quantity();
      } else {
        rest += price * r.quantity();
      }
    }
    assertThat(planned(plan).cost().pipe()).isCloseTo(pipe, within(1e-6));
    assertThat(planned(plan).cost().fittings()).isCloseTo(rest, within(1e-6));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void eachHasItsFigures(Plan plan) {
    for (Alternative a : plan.watering().alternatives()) {
      String id = "irrigation.alternative." + FigureBook.slug(a.name()) + ".";
      assertThat(plan.figures().get(id + "cost").value()).isEqualTo(a.cost().total());
      assertThat(plan.figures().get(id + "uniformity").value()).isEqualTo(a.emissionUniformity());
      assertThat(plan.figures().get(id + "work").value()).isEqualTo(a.cost().workS());
      assertThat(plan.figures().get(id + "wasted-water").value()).isEqualTo(a.cost().wastedM3());
    }
  }

  /** The planned zones are those of the plan, so the least even of them is the planned one's. */
  @ParameterizedTest
  @MethodSource("plans")
  void thePlannedWayIsTheSystemOfThePlan(Plan plan) {
    Alternative planned = planned(plan);
    List<ZoneResult> zones = plan.watering().zones();

    assertThat(planned.zones()).isEqualTo(zones.size());
    assertThat(planned.emissionUniformity())
        .isEqualTo(zones.stream().mapToDouble(ZoneResult::emissionUniformity).min().orElseThrow());
  }
}
