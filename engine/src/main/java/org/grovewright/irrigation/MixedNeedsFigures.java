package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Enters what staging the emitters brings, under {@code irrigation.mixed-needs.ZONE}. */
final class MixedNeedsFigures {
  private MixedNeedsFigures() {}

  static void enter(List<MixedNeeds> zones, Grove grove, Rulebook rules, FigureBook book) {
    for (MixedNeeds zone : zones) {
      String id = MixedNeeds.figureId(zone.zone());
      enter(
          id + "before.",
          " with the same emitters in all years",
          zone.before(),
          grove,
          rules,
          book);
      enter(id + "after.", " with emitters added as plants grow", zone.after(), grove, rules, book);
    }
  }

  private static void enter(
      String id,
      String how,
      MixedNeeds.Effect effect,
      Grove grove,
      Rulebook rules,
      FigureBook book) {
    List<Input> parts = new ArrayList<>();
    for (double water : effect.waterM3()) {
      int year = parts.size() + 1;
      String part = id + "water.year-" + year;
      book.enter(
          part,
          "Water of a year" + how,
          water,
          Kind.WATER_VOLUME,
          Working.of(
              "sum over the months of days x t x sum(q), t = the greatest of V / (q e) of the"
                  + " zone's plants",
              "need over flow; flows of emitters at the pressure to be expected, minutes not"
                  + " rounded",
              new Input("efficiency e", rules.efficiency(), Kind.SHARE, "catalogue: constants")));
      parts.add(new Input("year " + year, water, Kind.WATER_VOLUME, part));
    }
    book.enter(
        id + "water",
        "Water of the first years" + how,
        effect.totalM3(),
        Kind.WATER_VOLUME,
        new Working("the sum of the years", parts, Working.COMMON_PRACTICE));
    book.enter(
        id + "worst",
        "Share of its need that the most overwatered plant gets in its thirstiest month" + how,
        effect.worstShare(),
        Kind.SHARE,
        Working.of(
            "q t e / V of the plant that gets most over its need, t set by the neediest plant",
            "need over flow",
            new Input(
                "least excess that counts",
                rules.leastExcessM3PerS(),
                Kind.DAILY_WATER,
                "catalogue: constants")));
  }
}
