package org.grovewright.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.buying.ShoppingList;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Caution;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.ground.GroundPlan;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.layout.LayoutCheck;
import org.grovewright.layout.LayoutReport;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.storage.TankYears;
import org.grovewright.water.WaterNeeds;
import org.grovewright.work.CareCalendar;
import org.grovewright.work.WorkPlan;

/** Makes a plan: asks each subject in turn and hands on what the next one needs. */
public final class Planner {
  private Planner() {}

  /**
   * Plans a grove.
   *
   * @param grove the description; every catalogue key in it must be in the catalogue
   * @param catalogue the tables of the trade
   * @return the plan, which may fall short but is always complete
   */
  public static Plan plan(Grove grove, Catalogue catalogue) {
    FigureBook book = new FigureBook();
    Terrain terrain = Terrain.of(grove.site());
    LayoutReport layout = LayoutCheck.of(grove, catalogue, book);
    GroundPlan ground = GroundPlan.of(grove, catalogue, book);
    WaterNeeds water = WaterNeeds.of(grove, catalogue, book);
    WateringSystem watering = WateringSystem.of(grove, catalogue, water, terrain, book);
    Programme programme = Programme.of(grove, catalogue, watering, water, book);
    Optional<TankYears> storage = TankYears.of(grove, catalogue, water, watering, programme, book);

    List<Requirement> goods = new ArrayList<>(ground.requirements());
    goods.addAll(watering.requirements());
    ShoppingList shopping = ShoppingList.of(goods, grove, catalogue, book);

    List<WorkAmount> amounts = new ArrayList<>(ground.work());
    amounts.addAll(watering.work());
    amounts.add(new WorkAmount("collect-materials", "", 1, ""));
    WorkPlan work = WorkPlan.of(amounts, grove, catalogue, book);
    CareCalendar care = CareCalendar.of(grove, catalogue, ground, work, watering.laterWork(), book);

    List<Finding> findings = new ArrayList<>();
    findings.addAll(layout.findings());
    findings.addAll(ground.findings());
    findings.addAll(water.findings());
    findings.addAll(watering.findings());
    findings.addAll(programme.findings());
    storage.ifPresent(tank -> findings.addAll(tank.findings()));
    findings.addAll(shopping.findings());
    findings.addAll(work.findings());
    findings.addAll(care.findings());
    // A stable sort: within a severity the order of the subjects stays.
    findings.sort(Comparator.comparing(Finding::severity).reversed());

    Map<String, Figure> figures = new LinkedHashMap<>();
    book.all().forEach(figure -> figures.put(figure.id(), figure));
    return new Plan(
        grove,
        catalogue,
        layout,
        ground,
        water,
        watering,
        programme,
        storage,
        shopping,
        work,
        care,
        cautions(grove, catalogue, amounts, goods),
        findings,
        figures);
  }

  private static Map<String, Caution> cautions(
      Grove grove, Catalogue catalogue, List<WorkAmount> work, List<Requirement> goods) {
    Map<String, Caution> cautions = new LinkedHashMap<>();
    for (WorkAmount amount : work) {
      TaskRate task = catalogue.tasks().get(amount.taskKey());
      task.cautions().forEach(key -> add(cautions, key, catalogue));
    }
    for (Planting plant : grove.plantings()) {
      catalogue
          .species()
          .get(plant.speciesKey())
          .caution()
          .ifPresent(key -> add(cautions, key, catalogue));
    }
    for (Requirement requirement : goods) {
      Amendment amendment = catalogue.amendments().get(requirement.itemKey());
      if (amendment != null) {
        amendment.caution().ifPresent(key -> add(cautions, key, catalogue));
      }
    }
    return cautions;
  }

  private static void add(Map<String, Caution> cautions, String key, Catalogue catalogue) {
    Caution caution = catalogue.cautions().get(key);
    if (caution != null) {
      cautions.putIfAbsent(key, caution);
    }
  }
}
