package org.grovewright.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.GroundChoices;
import org.grovewright.model.Soil;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/**
 * The goods and proportions a plan uses: the owner's choice, or else the catalogue's usual one with
 * a note that says so. The usual mix is the first sold in bulk, the usual mulch the first of its
 * table and the usual fertiliser the first that feeds with all three nutrients.
 *
 * @param mix the soil mix; empty if none goes in
 * @param mixShare share of bought mix in the backfill
 * @param holeWidthRatio width of a main plant's hole over that of its ball
 * @param amendments blended into the backfill
 * @param mulch the mulch; empty if the catalogue has none
 * @param fertiliser the fertiliser; empty if the catalogue has none
 * @param swell by how much dug soil swells
 */
record Chosen(
    Optional<SoilMix> mix,
    Input mixShare,
    Input holeWidthRatio,
    List<Amendment> amendments,
    Optional<Mulch> mulch,
    Optional<Amendment> fertiliser,
    Input swell) {

  static Chosen of(GroundChoices wish, Soil soil, Catalogue catalogue, List<Finding> findings) {
    Input share =
        wish.mixShare().isPresent()
            ? new Input("s", share(wish.mixShare().getAsDouble()), Kind.SHARE, "description")
            : catalogue.constant("ground.mix-share").as("s");
    Optional<SoilMix> mix =
        share.value() == 0
            ? Optional.empty()
            : pick(wish.mixKey(), catalogue.mixes(), "soil mix", row -> row.bulk());
    if (wish.mixKey().isEmpty() || wish.mixShare().isEmpty()) {
      mix.ifPresent(row -> findings.add(mixNote(row, share)));
    }
    List<Amendment> amendments = new ArrayList<>();
    for (String key : wish.amendmentKeys()) {
      Amendment row = pick(Optional.of(key), catalogue.amendments(), "amendment", r -> true).get();
      amendments.add(row);
      if (row.ratePlantingKgPerM3() <= 0) {
        findings.add(
            Finding.of(
                "ground.amendment-without-rate",
                Severity.SHORTFALL,
                row.key(),
                row.name()
                    + " has no rate for planting in the catalogue, so none is counted. Feed it"
                    + " later, or give its label rate in a catalogue of your own."));
      }
    }
    Optional<Mulch> mulch = pick(wish.mulchKey(), catalogue.mulches(), "mulch", row -> true);
    if (wish.mulchKey().isEmpty()) {
      mulch.ifPresent(row -> findings.add(assumed("mulch", row.name())));
    }
    Optional<Amendment> fertiliser =
        pick(
            wish.fertiliserKey(),
            catalogue.amendments(),
            "fertiliser",
            row ->
                row.use() == Amendment.Use.FEEDING
                    && row.nitrogen() > 0
                    && row.phosphate() > 0
                    && row.potash() > 0);
    if (wish.fertiliserKey().isEmpty()) {
      fertiliser.ifPresent(row -> findings.add(assumed("fertiliser", row.name())));
    }
    if (fertiliser.isPresent() && !(fertiliser.get().nitrogen() > 0)) {
      throw new IllegalArgumentException(
          "The fertiliser "
              + fertiliser.get().key()
              + " holds no nitrogen, by which feeding is planned. Choose one that does.");
    }
    Input ratio =
        wish.holeWidthRatio().isPresent()
            ? new Input("w", ratio(wish.holeWidthRatio().getAsDouble()), Kind.NUMBER, "description")
            : catalogue.constant("ground.hole-width-ratio").as("w");
    return new Chosen(mix, share, ratio, amendments, mulch, fertiliser, swell(soil, catalogue));
  }

  private static double share(double given) {
    if (!(given >= 0 && given <= 1)) {
      throw new IllegalArgumentException(
          "The share of bought mix in the backfill is " + given + "; it must lie between 0 and 1.");
    }
    return given;
  }

  private static double ratio(double given) {
    if (!(given >= 1 && given <= 10)) {
      throw new IllegalArgumentException(
          "The hole is given as "
              + given
              + " times as wide as the root ball; it must be 1 to 10 times.");
    }
    return given;
  }

  private static <T> Optional<T> pick(
      Optional<String> key, Map<String, T> table, String what, Predicate<T> usual) {
    if (key.isPresent()) {
      T row = table.get(key.get());
      if (row == null) {
        throw new IllegalArgumentException(
            "The "
                + what
                + " "
                + key.get()
                + " is not in the catalogue; it has "
                + String.join(", ", table.keySet())
                + ".");
      }
      return Optional.of(row);
    }
    return table.values().stream().filter(usual).findFirst();
  }

  private static Finding assumed(String what, String name) {
    return Finding.of(
        "ground." + what + "-assumed",
        Severity.NOTE,
        "",
        "No " + what + " is chosen, so the plan counts with " + name + ".");
  }

  private static Finding mixNote(SoilMix mix, Input share) {
    return Finding.of(
        "ground.mix-assumed",
        Severity.NOTE,
        "",
        "Where nothing else is said, {0} of the backfill is bought mix ("
            + mix.name()
            + ") and the rest the soil dug out. Much advice today is to use dug soil alone; say a"
            + " share of 0 for that.",
        new Quantity(share.value(), Kind.SHARE));
  }

  private static Input swell(Soil soil, Catalogue catalogue) {
    return soil.textureKey()
        .map(key -> catalogue.textures().get(key))
        .map(row -> new Input("e", row.swell(), Kind.SHARE, "catalogue: textures, " + row.key()))
        .orElseGet(() -> catalogue.constant("ground.swell").as("e"));
  }
}
