package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.model.Stock;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.Input;
import org.junit.jupiter.api.Test;
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
    assertThat(shown).extracting(Alternative::key).doesNotHaveDuplicates();
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
    // Small emitters that only young plants have come on top of the system that is compared.
    for (ZoneResult zone : plan.watering().zones()) {
      for (Outlet outlet : zone.design().allOutlets()) {
        if (!outlet.openIn(3)) {
          TypicalPrice typical = CATALOGUE.prices().get(outlet.emitter().key());
          rest -= typical.amount() / typical.packSize() * stock.typicalTimes().orElse(1);
        }
      }
    }
    assertThat(planned(plan).cost().pipe()).isCloseTo(pipe, within(1e-6));
    assertThat(planned(plan).cost().fittings()).isCloseTo(rest, within(1e-6));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void eachHasItsFigures(Plan plan) {
    for (Alternative a : plan.watering().alternatives()) {
      assertThat(value(plan, a, "cost")).isEqualTo(a.cost().total());
      assertThat(value(plan, a, "uniformity")).isEqualTo(a.emissionUniformity());
      assertThat(value(plan, a, "work")).isEqualTo(a.cost().workS());
      assertThat(value(plan, a, "wasted-water")).isEqualTo(a.cost().wastedM3());
      assertThat(value(plan, a, "minutes")).isEqualTo(a.peakRunS());
      for (String what : List.of("pipe", "fittings")) {
        double sum =
            plan.figures().get(a.figureId(what)).working().inputs().stream()
                .mapToDouble(Input::value)
                .sum();
        assertThat(sum).as(what).isCloseTo(value(plan, a, what), within(1e-6));
      }
    }
  }

  private static double value(Plan plan, Alternative way, String what) {
    return plan.figures().get(way.figureId(what)).value();
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

  private static Plan demo(String... lines) throws IOException {
    Path examples = Path.of("../examples");
    String text = Files.readString(examples.resolve("demo.yaml"));
    assertThat(text).contains("  propose: true\n");
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null)
            .read(
                text.replace("  propose: true\n", "  propose: true\n" + String.join("", lines)),
                "demo.yaml",
                examples),
        CATALOGUE);
  }

  @Test
  void theOwnerCanChooseAnother() throws IOException {
    for (Alternative way : demo().watering().alternatives()) {
      Plan plan = demo("  choose: " + way.key() + "\n");

      assertThat(planned(plan).key()).isEqualTo(way.key());
      assertThat(planned(plan).cost()).isEqualTo(way.cost());
      assertThat(plan.findings())
          .extracting(Finding::code)
          .doesNotContain("irrigation.no-such-way");
    }
  }

  @Test
  void aChoiceThatThereIsNotIsSaidAndTheCheapestIsPlanned() throws IOException {
    Plan plan = demo("  choose: by-bucket\n");

    assertThat(planned(plan).key()).isEqualTo(planned(demo()).key());
    assertThat(plan.findings())
        .filteredOn(f -> f.code().equals("irrigation.no-such-way"))
        .singleElement()
        .satisfies(f -> assertThat(f.severity()).isEqualTo(Finding.Severity.SHORTFALL))
        .satisfies(f -> assertThat(f.message()).contains(planned(plan).key()));
  }

  /** What is said of a way adds up: the parts are the whole, and their signs are as said. */
  @ParameterizedTest
  @MethodSource("plans")
  void theReasonsHoldTheDifferences(Plan plan) {
    Alternative cheapest = plan.watering().alternatives().get(0);
    for (Alternative way : plan.watering().alternatives()) {
      if (way == cheapest || !way.keepsRules()) {
        continue;
      }
      double more = way.cost().total() - cheapest.cost().total();
      assertThat(more).isNotNegative();
      if (more >= 0.5) {
        assertThat(way.why().message()).contains("it costs {1} more than the cheapest");
        assertThat(way.why().quantities().get(1).value()).isCloseTo(more, within(1e-9));
      }
      double water = way.cost().water() - cheapest.cost().water();
      assertThat(way.why().message().contains("less for water")).isEqualTo(water <= -0.5);
      assertThat(way.why().message().contains("more for water")).isEqualTo(water >= 0.5);
    }
  }
}
