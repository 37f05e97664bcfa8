package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.demand.LaterWork;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.growth.Growth;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.trench.Trench;
import org.grovewright.water.WaterNeeds;

/**
 * The watering system: its supply, its zones as they run, what must be bought and done for it.
 *
 * @param supply the supply
 * @param zones the zones, each solved with the emitters of the last year planned
 * @param zonesByYear the zones of each year, solved with the emitters that are open in it
 * @param mixedNeeds for each zone, what staging its emitters over the years brings
 * @param trench trench of the mains
 * @param requirements goods
 * @param work work
 * @param alternatives ways to water the grove that were compared, the planned one among them,
 *     cheapest first; empty where no proposal is wanted
 * @param devices devices at the head and along the pipes, each with its reason
 * @param laterWork work of later years: emitters to add or to close
 * @param findings remarks and shortfalls
 */
public record WateringSystem(
    SupplyModel supply,
    List<ZoneResult> zones,
    List<List<ZoneResult>> zonesByYear,
    List<MixedNeeds> mixedNeeds,
    Trench trench,
    List<Requirement> requirements,
    List<WorkAmount> work,
    List<Alternative> alternatives,
    List<Device> devices,
    List<LaterWork> laterWork,
    List<Finding> findings) {
  /** Year of the plan whose peak month the system is laid out for; emitters grow up to it. */
  static final int DESIGN_YEAR = 3;

  /** Copies the lists. */
  public WateringSystem {
    zones = List.copyOf(zones);
    zonesByYear = zonesByYear.stream().map(List::copyOf).toList();
    mixedNeeds = List.copyOf(mixedNeeds);
    laterWork = List.copyOf(laterWork);
    requirements = List.copyOf(requirements);
    work = List.copyOf(work);
    alternatives = List.copyOf(alternatives);
    devices = List.copyOf(devices);
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
    DesignSite.Designed designed =
        siteOf(grove, catalogue, needs, terrain, supply, new KnownDesigns(), findings).designed();
    DesignSite with = designed.with();
    Rulebook rules = with.rules();
    Alternatives ways = designed.ways();
    List<MixedNeeds> mixed = new ArrayList<>();
    List<ZoneResult> zones = staged(ways.planned(), with, needs, mixed);
    List<List<ZoneResult>> byYear = byYear(zones, with.network());
    Goods goods = Goods.of(zones, with);
    findings.addAll(remarks(byYear, grove, rules));
    findings.addAll(new OneSide(with).remarks(zones));
    findings.addAll(OwnLines.remarks(zones, grove, rules));
    findings.addAll(LaidMainUse.remarks(zones, with));
    List<Finding> filter = new FilterCheck(supply, rules).remarks(byYear);
    findings.addAll(filter);
    SystemFigures.enter(byYear, grove, rules, book);
    FilterFigures.enter(zones, rules, book);
    MixedNeedsFigures.enter(mixed, grove, rules, book);
    List<Requirement> requirements = goods.enter(book, with);
    List<Alternative> shown =
        grove.watering().propose() && !zones.isEmpty() ? ways.shown(book) : List.of();
    findings.addAll(ways.remarks());
    findings.addAll(goods.findings());
    findings.addAll(TrenchRemarks.of(zones, goods.trench(), with));
    return new WateringSystem(
        supply,
        zones,
        byYear,
        mixed,
        goods.trench(),
        requirements,
        goods.work(),
        shown,
        Devices.of(zones, requirements, filter, with),
        EmitterChanges.of(zones, grove),
        findings);
  }

  /**
   * The goods of the system that {@link #of} would plan, and nothing else of it.
   *
   * @param needs needs of the plants, which do not depend on where they stand
   * @param known what is known from groves that differ in nothing but where plants stand
   */
  public static List<Requirement> requirementsOf(
      Grove grove, Catalogue catalogue, WaterNeeds needs, Terrain terrain, KnownDesigns known) {
    FigureBook aside = new FigureBook();
    SupplyModel supply = SupplyModel.of(grove, catalogue, terrain, aside);
    DesignSite.Designed designed =
        siteOf(grove, catalogue, needs, terrain, supply, known, new ArrayList<>()).designed();
    DesignSite with = designed.with();
    List<ZoneResult> zones = staged(designed.ways().planned(), with, needs, new ArrayList<>());
    return Goods.of(zones, with).enter(aside, with);
  }

  /** Zones with their emitters staged over the years; adds what that brings. */
  private static List<ZoneResult> staged(
      Candidate planned, DesignSite with, WaterNeeds needs, List<MixedNeeds> mixed) {
    EmitterStaging staging = new EmitterStaging(with, planned, monthly(needs));
    List<ZoneResult> zones = new ArrayList<>();
    for (ZoneResult zone : planned.zones()) {
      EmitterStaging.Staged staged = staging.of(zone);
      zones.add(ZoneResult.of(staged.design(), zone.network(), zone.solution()));
      staged.mixedNeeds().ifPresent(mixed::add);
    }
    return zones;
  }

  /** What all designs of the grove's system share; remarks on plants out of reach are added. */
  static DesignSite siteOf(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      Terrain terrain,
      SupplyModel supply,
      KnownDesigns known,
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
        new Zoning(grove, catalogue, rules, findings),
        new MainTrench(grove, catalogue, costs, terrain),
        known);
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

  /** Need of each plant by year and month, m3/s. */
  private static double[][][] monthly(WaterNeeds needs) {
    double[][][] monthly = new double[needs.plants().size()][DESIGN_YEAR][12];
    for (int p = 0; p < monthly.length; p++) {
      for (int year = 1; year <= DESIGN_YEAR; year++) {
        for (int month = 1; month <= 12; month++) {
          monthly[p][year - 1][month - 1] = needs.plants().get(p).at(year, month).need().value();
        }
      }
    }
    return monthly;
  }

  /** The zones as they run in each year; a zone whose emitters stay is solved once. */
  private static List<List<ZoneResult>> byYear(List<ZoneResult> zones, ZoneNetwork.Site site) {
    List<List<ZoneResult>> byYear = new ArrayList<>();
    List<ZoneResult> next = zones;
    byYear.add(zones);
    for (int year = DESIGN_YEAR - 1; year >= 1; year--) {
      List<ZoneResult> solved = new ArrayList<>();
      for (ZoneResult later : next) {
        ZoneDesign design = later.design().inYear(year);
        boolean same = design.outlets().equals(later.design().outlets());
        solved.add(same ? later : ZoneResult.solve(design, site));
      }
      byYear.add(0, solved);
      next = solved;
    }
    return byYear;
  }

  /** Remarks on zones in any year, each once. */
  private static List<Finding> remarks(List<List<ZoneResult>> byYear, Grove grove, Rulebook rules) {
    Map<String, Finding> remarks = new LinkedHashMap<>();
    for (int year = DESIGN_YEAR; year >= 1; year--) {
      for (Finding finding : Designer.remarks(byYear.get(year - 1), grove, rules)) {
        remarks.putIfAbsent(finding.code() + " " + finding.subject(), finding);
      }
    }
    return List.copyOf(remarks.values());
  }

  /** The zones as they run in a year of the plan, from 1; later years are like the last. */
  public List<ZoneResult> zonesIn(int year) {
    return zonesByYear.get(Math.min(year, zonesByYear.size()) - 1);
  }

  /** Id of the figure of a plant's flow in the last year planned. */
  public static String plantFlowId(String zone, String plantId) {
    return plantFlowId(zone, plantId, DESIGN_YEAR);
  }

  /** Id of the figure of a plant's flow in a year of the plan. */
  public static String plantFlowId(String zone, String plantId, int year) {
    return SystemFigures.zoneId(zone, year) + "plant." + FigureBook.slug(plantId) + ".flow";
  }

  /** Id of the figure of what a zone draws in a year of the plan. */
  public static String zoneFlowId(String zone, int year) {
    return SystemFigures.zoneId(zone, year) + "flow";
  }
}
