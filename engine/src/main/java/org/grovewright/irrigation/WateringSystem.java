package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.growth.Growth;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;

/**
 * The watering system: its supply, its zones as they run, what must be bought and done for it.
 *
 * @param supply the supply
 * @param zones the zones, each solved
 * @param trenchM length of trench for the mains, metres
 * @param requirements goods
 * @param work work
 * @param alternatives ways to water the grove that were compared, the planned one among them,
 *     cheapest first; empty where no proposal is wanted
 * @param findings remarks and shortfalls
 */
public record WateringSystem(
    SupplyModel supply,
    List<ZoneResult> zones,
    double trenchM,
    List<Requirement> requirements,
    List<WorkAmount> work,
    List<Alternative> alternatives,
    List<Finding> findings) {
  /** Year of the plan whose peak month the emitters are counted for. */
  static final int DESIGN_YEAR = 3;

  /** Copies the lists. */
  public WateringSystem {
    zones = List.copyOf(zones);
    requirements = List.copyOf(requirements);
    work = List.copyOf(work);
    alternatives = List.copyOf(alternatives);
    findings = List.copyOf(findings);
  }

  /**
   * Designs and solves the system of a grove.
   *
   * <p>Figures are entered under {@code supply}, {@code hydraulics} and {@code irrigation}.
   */
  public static WateringSystem of(
      Grove grove, Catalogue catalogue, WaterNeeds needs, Terrain terrain, FigureBook book) {
    List<Finding> findings = new ArrayList<>();
    SupplyModel supply = SupplyModel.of(grove, catalogue, terrain, book);
    findings.addAll(supply.findings());
    DesignSite with = siteOf(grove, catalogue, needs, terrain, supply, findings);
    Rulebook rules = with.rules();
    Alternatives ways = Alternatives.of(with);
    List<ZoneResult> zones = ways.planned().zones();
    Goods goods = ways.planned().goods();
    findings.addAll(Designer.remarks(zones, grove, rules));
    findings.addAll(new OneSide(with).remarks(zones));
    SystemFigures.enter(zones, grove, rules, book);
    List<Requirement> requirements = goods.enter(book);
    List<Alternative> shown =
        grove.watering().propose() && !zones.isEmpty() ? ways.shown(book) : List.of();
    findings.addAll(ways.remarks());
    findings.addAll(goods.findings());
    return new WateringSystem(
        supply, zones, goods.trenchM(), requirements, goods.work(), shown, findings);
  }

  /** What all designs of the grove's system share; remarks on plants out of reach are added. */
  static DesignSite siteOf(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      Terrain terrain,
      SupplyModel supply,
      List<Finding> findings) {
    Rulebook rules = Rulebook.of(catalogue);
    double[] peak =
        needs.plants().stream().mapToDouble(p -> p.peakOf(DESIGN_YEAR).need().value()).toArray();
    Costs costs = new Costs(grove, catalogue, needs);
    return new DesignSite(
        grove,
        catalogue,
        peak,
        crowns(grove, catalogue, costs),
        SiteParts.of(grove, catalogue, supply, terrain),
        rules,
        costs,
        new Zoning(grove, catalogue, rules, findings));
  }

  /** Radius of each crown at the end of the system's life, metres. */
  private static double[] crowns(Grove grove, Catalogue catalogue, Costs costs) {
    return grove.plantings().stream()
        .mapToDouble(
            p ->
                Growth.of(
                            p,
                            catalogue.species().get(p.speciesKey()),
                            grove.start(),
                            catalogue.constants())
                        .spreadM(costs.lifeYears())
                    / 2)
        .toArray();
  }

  /** Id of the figure of a plant's flow. */
  public static String plantFlowId(String zone, String plantId) {
    return "hydraulics.zone."
        + FigureBook.slug(zone)
        + ".plant."
        + FigureBook.slug(plantId)
        + ".flow";
  }
}
