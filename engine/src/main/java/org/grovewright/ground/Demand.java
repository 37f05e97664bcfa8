package org.grovewright.ground;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.layout.Crown;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;

/** States the goods and work behind the figures. */
final class Demand {
  private final Catalogue catalogue;
  private final FigureBook book;

  Demand(Catalogue catalogue, FigureBook book) {
    this.catalogue = catalogue;
    this.book = book;
  }

  List<Requirement> goods(
      Optional<SoilMix> mix,
      List<Amendment> amendments,
      Optional<MulchPlan> mulch,
      Optional<Amendment> fertiliser,
      List<Crown> toPlant) {
    List<Requirement> goods = new ArrayList<>();
    Map<String, String> kinds = new LinkedHashMap<>();
    toPlant.forEach(crown -> kinds.put(crown.species().key(), crown.species().name()));
    kinds.forEach(
        (key, name) ->
            need(goods, key, "ground.total.plants." + FigureBook.slug(key), "plants: " + name));
    mix.ifPresent(
        row -> need(goods, row.key(), "ground.total.mix-bought", "backfill of planting holes"));
    for (Amendment amendment : amendments) {
      need(
          goods,
          amendment.key(),
          Totals.amendmentId(amendment.key()),
          "blended into the backfill of planting holes");
    }
    mulch.ifPresent(plan -> need(goods, plan.mulchKey(), Mulching.DELIVERED, "first mulching"));
    fertiliser.ifPresent(
        row -> need(goods, row.key(), "ground.total.fertiliser-year-1", "feeding in year 1"));
    part(goods, "stake", "ground.total.stakes", "staking trees");
    part(goods, "tie", "ground.total.stakes", "tying trees to their stakes");
    part(goods, "label", "ground.total.plants", "labels");
    return goods;
  }

  private void part(List<Requirement> goods, String role, String figureId, String purpose) {
    catalogue.parts().values().stream()
        .filter(part -> part.role().equals(role))
        .findFirst()
        .map(Part::key)
        .ifPresent(key -> need(goods, key, figureId, purpose));
  }

  /** Adds a requirement where the figure is there and not nothing. */
  private void need(List<Requirement> goods, String key, String figureId, String purpose) {
    Optional<Figure> figure = book.find(figureId).filter(found -> found.value() > 0);
    figure.ifPresent(
        found ->
            goods.add(
                new Requirement(key, found.kind(), found.value(), purpose, figureId, List.of())));
  }

  List<WorkAmount> work(boolean blended) {
    List<WorkAmount> work = new ArrayList<>();
    if (book.get("ground.total.plants").value() > 0) {
      work.add(new WorkAmount("call-services", "", 1, ""));
    }
    amount(work, "mark-out", "ground.total.plants");
    amount(work, "clear-ground", "ground.total.mulch-area");
    amount(work, "dig-hole", "ground.total.hole-volume");
    if (blended) {
      amount(work, "mix-amendments", "ground.total.backfill");
    }
    amount(work, "barrow-mix", "ground.total.mix-bought");
    for (Totals.Role role : Totals.Role.values()) {
      amount(work, role.task, "ground.total." + role.id);
    }
    amount(work, "stake-tree", "ground.total.staked");
    amount(work, "label-record", "ground.total.plants");
    amount(work, "spread-mulch", Mulching.DELIVERED);
    return work;
  }

  private void amount(List<WorkAmount> work, String task, String figureId) {
    book.find(figureId)
        .filter(figure -> figure.value() > 0)
        .ifPresent(figure -> work.add(new WorkAmount(task, "", figure.value(), figureId)));
  }
}
