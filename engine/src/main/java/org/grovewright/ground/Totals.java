package org.grovewright.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.catalogue.Species;
import org.grovewright.layout.Crown;
import org.grovewright.model.Soil;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Adds up the plants and enters the sums. */
final class Totals {
  private final List<PlantGround> plants;
  private final Catalogue catalogue;
  private final FigureBook book;

  Totals(List<PlantGround> plants, Catalogue catalogue, FigureBook book) {
    this.plants = plants;
    this.catalogue = catalogue;
    this.book = book;
  }

  /** Enters the volumes of holes, backfill and soil. */
  void soil(Soil soil, Chosen chosen) {
    sum("hole-volume", "Volume of all holes", p -> p.hole().volumeM3());
    sum("backfill", "Volume to fill about all balls", PlantGround::backfillM3);
    sum("dug-loose", "Heap of soil dug from all holes", PlantGround::dugLooseM3);
    Figure surplus = sum("surplus", "Dug soil left over, loose", PlantGround::surplusLooseM3);
    SoilTexture texture = soil.textureKey().map(key -> catalogue.textures().get(key)).orElse(null);
    Input density =
        texture == null
            ? catalogue.constant("ground.soil-density").as("rho")
            : new Input(
                "rho",
                texture.bulkDensityKgPerM3() + 1000 * texture.fieldCapacity(),
                Kind.DENSITY,
                "catalogue: textures, dry bulk density and water at field capacity");
    Figure mass =
        book.enter(
            "ground.total.surplus-mass",
            "Dug soil left over, by mass when moist",
            surplus.value() / (1 + chosen.swell().value()) * density.value(),
            Kind.MASS,
            Working.of(
                "V / (1 + e) rho",
                "arithmetic",
                Input.from("V", surplus),
                chosen.swell(),
                density));
    Barrows.enter(
        "ground.total.surplus-barrows", "dug soil left over", surplus, mass, catalogue, book);
  }

  /** Enters the bought mix and returns it. */
  BulkLoad mix(Optional<SoilMix> chosen) {
    if (chosen.isEmpty()) {
      return BulkLoad.NONE;
    }
    SoilMix mix = chosen.get();
    sum("mix-placed", mix.name() + " in the backfill, settled", PlantGround::mixPlacedM3);
    Figure bought = sum("mix-bought", mix.name() + " as delivered", PlantGround::mixBoughtM3);
    BulkLoad load = BulkLoad.ofVolume(bought.value(), mix.looseDensityKgPerM3());
    Figure mass =
        book.enter(
            "ground.total.mix-mass",
            mix.name() + " as delivered, by mass",
            load.massKg(),
            Kind.MASS,
            Working.of(
                "V rho",
                mix.source(),
                Input.from("V", bought),
                new Input(
                    "rho",
                    mix.looseDensityKgPerM3(),
                    Kind.DENSITY,
                    "catalogue: mixes, loose density")));
    Barrows.enter("ground.total.mix-barrows", mix.name(), bought, mass, catalogue, book);
    return load;
  }

  /** Enters the amendments and returns their masses, kg by catalogue key. */
  Map<String, Double> amendments(List<Amendment> amendments) {
    Map<String, Double> masses = new LinkedHashMap<>();
    for (Amendment amendment : amendments) {
      Figure total =
          book.enter(
              amendmentId(amendment.key()),
              amendment.name() + " for all holes",
              plants.stream().mapToDouble(p -> p.amendmentsKg().get(amendment.key())).sum(),
              Kind.MASS,
              Dressing.working(amendment, book.get("ground.total.backfill")));
      masses.put(amendment.key(), total.value());
    }
    return masses;
  }

  static String amendmentId(String key) {
    return "ground.total.amendment." + FigureBook.slug(key);
  }

  /** Enters the counts of plants to be planted: all, each species, each role, those to stake. */
  void counts(List<Crown> toPlant) {
    count("plants", "Plants to plant", toPlant.size());
    Map<String, List<Crown>> kinds = new LinkedHashMap<>();
    toPlant.forEach(
        crown -> kinds.computeIfAbsent(crown.species().key(), key -> new ArrayList<>()).add(crown));
    kinds.forEach(
        (key, crowns) ->
            count(
                "plants." + FigureBook.slug(key),
                crowns.get(0).species().name() + " to plant",
                crowns.size()));
    for (Role role : Role.values()) {
      long number = toPlant.stream().filter(role::is).count();
      if (number > 0) {
        count(role.id, role.label, number);
      }
    }
    double least = catalogue.constant("ground.stake-height").value();
    long trees =
        toPlant.stream()
            .filter(Crown::isMain)
            .filter(crown -> crown.species().matureHeightM() >= least)
            .count();
    if (trees > 0) {
      book.enter(
          "ground.total.staked",
          "Trees to stake",
          trees,
          Kind.COUNT,
          Working.of(
              "main plants to plant whose mature height is at least h",
              Working.COMMON_PRACTICE,
              catalogue.constant("ground.stake-height").as("h")));
      book.enter(
          "ground.total.stakes",
          "Stakes, and as many ties",
          trees * catalogue.constant("ground.stakes-per-tree").value(),
          Kind.COUNT,
          Working.of(
              "n s",
              Working.COMMON_PRACTICE,
              Input.from("n", book.get("ground.total.staked")),
              catalogue.constant("ground.stakes-per-tree").as("s")));
    }
  }

  /** Enters the fertiliser of the first year. */
  void fertiliser(Optional<Amendment> fertiliser, List<Feeding> feedings) {
    if (fertiliser.isEmpty()) {
      return;
    }
    double mass =
        feedings.stream()
            .filter(feeding -> feeding.year() == 1)
            .mapToDouble(Feeding::fertiliserKg)
            .sum();
    book.enter(
        "ground.total.fertiliser-year-1",
        fertiliser.get().name() + " for the first year",
        mass,
        Kind.MASS,
        Working.of("sum of all feedings of year 1", "arithmetic"));
  }

  private Figure sum(String what, String label, ToDoubleFunction<PlantGround> part) {
    return book.enter(
        "ground.total." + what,
        label,
        plants.stream().mapToDouble(part).sum(),
        Kind.BULK_VOLUME,
        Working.of(
            "sum over the plants of ground.plant.*." + what,
            "arithmetic",
            new Input("n", plants.size(), Kind.COUNT, "description")));
  }

  private void count(String what, String label, long number) {
    book.enter(
        "ground.total." + what,
        label,
        number,
        Kind.COUNT,
        Working.of("plants of the description that do not stand yet", "description"));
  }

  /** Roles of plants with the id of their count and the task that plants them. */
  enum Role {
    MAIN(Species.Role.MAIN, "main", "Main plants to plant", "plant-tree"),
    COMPANION(Species.Role.COMPANION, "companions", "Companions to plant", "plant-companion"),
    GROUNDCOVER(
        Species.Role.GROUNDCOVER,
        "groundcovers",
        "Ground cover plants to plant",
        "plant-groundcover");

    private final Species.Role role;
    final String id;
    private final String label;
    final String task;

    Role(Species.Role role, String id, String label, String task) {
      this.role = role;
      this.id = id;
      this.label = label;
      this.task = task;
    }

    boolean is(Crown crown) {
      return crown.species().role() == role;
    }
  }
}
