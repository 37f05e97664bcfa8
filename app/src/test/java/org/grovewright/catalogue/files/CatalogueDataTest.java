package org.grovewright.catalogue.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Clearance;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Species;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.model.FixtureKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The bundled tables as a whole: complete, sourced, and physically possible. */
class CatalogueDataTest {
  private static final CatalogueFiles FILES = CatalogueFiles.load();
  private static final Catalogue CATALOGUE = FILES.catalogue();

  @Test
  void everyRowNamesItsSource() {
    for (String table : Tables.all().keySet()) {
      FILES
          .rows(table)
          .forEach((key, row) -> assertThat(row.text("source")).as(table + " " + key).isNotBlank());
    }
  }

  @Test
  void everyTableHasRows() {
    assertThat(Tables.all().keySet()).allSatisfy(t -> assertThat(FILES.rows(t)).isNotEmpty());
    assertThat(CATALOGUE.textures()).hasSize(12);
    assertThat(CATALOGUE.clearances())
        .extracting(Clearance::kind)
        .containsExactlyInAnyOrder(FixtureKind.values());
  }

  @Test
  void listsPlantsOfEveryGroup() {
    assertThat(CATALOGUE.species()).hasSizeGreaterThanOrEqualTo(48);
    for (Species.Group group : Species.Group.values()) {
      assertThat(CATALOGUE.species().values())
          .filteredOn(species -> species.group() == group)
          .as(group.name())
          .hasSizeGreaterThanOrEqualTo(4);
    }
  }

  @Test
  void everyItemHasAPriceInOneCurrency() {
    for (String table : CrossCheck.ITEMS) {
      assertThat(CATALOGUE.prices().keySet()).as(table).containsAll(FILES.rows(table).keySet());
    }
    assertThat(CATALOGUE.prices().values()).allMatch(price -> price.currency().equals("USD"));
  }

  @Test
  void everyTextureHoldsItsWaterInItsPores() {
    // Porosity from bulk density with mineral grains of 2650 kg/m3; common practice, no source.
    for (var soil : CATALOGUE.textures().values()) {
      double porosity = 1 - soil.bulkDensityKgPerM3() / 2650;
      assertThat(soil.fieldCapacity())
          .as(soil.key())
          .isGreaterThan(soil.wiltingPoint())
          .isLessThan(porosity);
    }
  }

  @Test
  void noPipeIsRatedAboveWhatItsWallCanHold() {
    for (Pipe pipe : CATALOGUE.pipes().values()) {
      double wall = (pipe.outsideDiameterM() - pipe.insideDiameterM()) / 2;
      // Ring stress of a thick wall as in ISO 161 and ASTM D2241, P = 2 S t / (D - t); from memory.
      double limit = 2 * designStressPa(pipe) * wall / (pipe.outsideDiameterM() - wall);
      assertThat(pipe.pressureRatingPa()).as(pipe.key()).isLessThanOrEqualTo(limit * 1.03);
    }
  }

  /** Long-term design stress of the material at 20 to 23 degrees Celsius; from memory. */
  private static double designStressPa(Pipe pipe) {
    if (pipe.standard().startsWith("ASTM D1785") || pipe.standard().startsWith("ASTM D2241")) {
      return 2000 * 6894.757; // PVC 1120
    }
    if (pipe.standard().startsWith("ASTM D2239")) {
      return 800 * 6894.757; // PE 3408
    }
    if (pipe.key().startsWith("pipe.pe100-")) {
      return 8.0e6;
    }
    if (pipe.key().startsWith("pipe.pe80-")) {
      return 6.3e6;
    }
    return 3.2e6; // PE 40, the softest grade that is rated
  }

  @Test
  void everyPipeSizeCanBeJoinedTurnedAndClosed() {
    for (Pipe pipe : CATALOGUE.pipes().values()) {
      List<String> roles =
          CATALOGUE.parts().values().stream()
              .filter(part -> part.fits().equals(pipe.key()))
              .map(Part::role)
              .toList();
      assertThat(roles).as(pipe.key()).contains("coupling");
      if (pipe.use() == Pipe.Use.LATERAL) {
        assertThat(roles)
            .as(pipe.key())
            .contains("tee", "elbow", "end-flush", "hold-down", "start");
      }
      if (pipe.use() == Pipe.Use.MAIN && pipe.joint() != Pipe.Joint.THREADED) {
        assertThat(roles)
            .as(pipe.key())
            .contains("tee", "elbow", "end-flush", "adaptor", "valve", "take-off");
      }
    }
  }

  @Test
  void thereIsAPartForEveryRoleOfTheHead() {
    assertThat(CATALOGUE.parts().values())
        .extracting(Part::role)
        .contains(
            "timer",
            "backflow",
            "air-vent",
            "gauge",
            "zone-valve",
            "cement",
            "primer",
            "thread-tape",
            "goof-plug",
            "valve-box",
            "spigot",
            "punch",
            "stake",
            "tie",
            "label");
  }

  @Test
  void someEmittersWorkAtTheHeadOfATank() {
    // Half a metre of water is 4.9 kPa.
    assertThat(CATALOGUE.emitters().values())
        .filteredOn(emitter -> emitter.minPressurePa() <= 4900)
        .hasSizeGreaterThanOrEqualTo(3)
        .allMatch(emitter -> !emitter.compensating());
  }

  @Test
  void exponentsAreThoseOfTheirFlow() {
    for (EmitterType emitter : CATALOGUE.emitters().values()) {
      if (emitter.compensating()) {
        assertThat(emitter.exponent()).as(emitter.key()).isLessThanOrEqualTo(0.1);
      } else {
        // An orifice or turbulent path has 0.5, a long smooth path up to 1; common hydraulics.
        assertThat(emitter.exponent()).as(emitter.key()).isBetween(0.45, 1.0);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "call-services, dig-trench",
    "call-services, dig-hole",
    "dig-trench, leak-test",
    "lay-main, leak-test",
    "cement-joint, leak-test",
    "cement-joint, flush",
    "leak-test, backfill-trench",
    "dig-hole, plant-tree",
    "barrow-mix, plant-tree",
    "plant-tree, fit-emitter",
    "fit-emitter, catch-can-check",
    "fit-emitter, spread-mulch",
  })
  void tasksComeInTheOrderOfTheTrade(String first, String then) {
    assertThat(before(CATALOGUE.tasks(), then)).contains(first);
  }

  @Test
  void mulchComesAfterAllThatTouchesTheGround() {
    Set<String> before = before(CATALOGUE.tasks(), "spread-mulch");
    assertThat(CATALOGUE.tasks().keySet())
        .filteredOn(task -> !before.contains(task))
        .containsExactlyInAnyOrder("spread-mulch", "set-timer");
  }

  /** A task names every task before it, not only the last, since a plan may lack those between. */
  @Test
  void everyTaskKeepsItsPlaceWhenAnOptionalOneBeforeItIsNotNeeded() {
    for (TaskRate task : CATALOGUE.tasks().values()) {
      for (String skipped : List.of("strip-turf", "clear-ground", "cement-joint", "stake-tree")) {
        if (task.after().contains(skipped)) {
          assertThat(task.after())
              .as(task.key() + " without " + skipped)
              .containsAnyElementsOf(CATALOGUE.tasks().get(skipped).after());
        }
      }
    }
  }

  private static Set<String> before(Map<String, TaskRate> tasks, String task) {
    Set<String> seen = new HashSet<>();
    Deque<String> open = new ArrayDeque<>(tasks.get(task).after());
    while (!open.isEmpty()) {
      String next = open.pop();
      if (seen.add(next)) {
        open.addAll(tasks.get(next).after());
      }
    }
    return seen;
  }

  @ParameterizedTest
  @CsvSource({
    "dig-trench, buried-services",
    "dig-trench, trench",
    "dig-hole, buried-services",
    "cement-joint, solvent-cement",
    "assemble-head, backflow",
    "assemble-head, electricity",
    "stake-tree, driving-stakes",
    "stake-tree, buried-services",
    "leak-test, pressure",
    "spread-mulch, dust",
    "plant-tree, lifting",
  })
  void dangerousWorkCarriesItsCaution(String task, String caution) {
    assertThat(CATALOGUE.tasks().get(task).cautions()).contains(caution);
  }

  @Test
  void everyAmendmentCarriesACaution() {
    assertThat(CATALOGUE.amendments().values()).allMatch(a -> a.caution().isPresent());
  }

  @Test
  void everyCautionOnAPlantIsUsed() {
    Set<String> used = new HashSet<>();
    CATALOGUE.species().values().forEach(species -> species.caution().ifPresent(used::add));
    assertThat(used)
        .containsAll(
            CATALOGUE.cautions().keySet().stream()
                .filter(key -> key.startsWith("plant."))
                .toList());
  }

  @Test
  void cementCuresForADay() {
    assertThat(CATALOGUE.tasks().get("cement-joint").waitSeconds()).isEqualTo(86_400);
  }

  @Test
  void keysOfItemsTellTheirTable() {
    Map<String, String> prefixes =
        Map.of(
            "pipes",
            "pipe.",
            "emitters",
            "emitter.",
            "filters",
            "filter.",
            "regulators",
            "reg.",
            "mixes",
            "mix.",
            "amendments",
            "amend.",
            "mulches",
            "mulch.",
            "parts",
            "part.");
    prefixes.forEach(
        (table, prefix) ->
            assertThat(FILES.rows(table).keySet()).allMatch(key -> key.startsWith(prefix)));
    assertThat(FILES.rows("species").keySet())
        .contains("avocado", "apple", "olive")
        .noneMatch(key -> key.contains("."));
  }
}
