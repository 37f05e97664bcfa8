package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Pipe;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.trench.Burial;
import org.grovewright.trench.GroundMap;
import org.grovewright.trench.LaidMain;
import org.grovewright.trench.MainWays;
import org.grovewright.trench.Trench;
import org.grovewright.trench.TrenchCosts;
import org.grovewright.trench.TrenchMaker;
import org.grovewright.trench.TrenchRules;
import org.grovewright.trench.WayFinder;

/** The ways and the trench of the mains, for all designs of one grove's system. */
final class MainTrench {
  private final Burial burial;
  private final TrenchRules rules;
  private final MainWays ways;
  private final TrenchMaker maker;
  private final Point supply;
  private final LaidMain laid;
  private final double pipePerM;
  private final Map<List<Trench.Run>, Trench> made = new HashMap<>();
  private final Map<Branch, Double> branches = new HashMap<>();

  /** A main to a feed beside those of zones. */
  private record Branch(List<List<Point>> zones, List<Point> feeds) {}

  MainTrench(Grove grove, Catalogue catalogue, Costs costs, Terrain terrain) {
    rules = TrenchRules.of(catalogue);
    burial = Burial.of(grove, catalogue);
    supply = grove.supply().at();
    pipePerM =
        catalogue.pipes().values().stream()
            .filter(p -> p.use() == Pipe.Use.MAIN)
            .mapToDouble(p -> costs.unitPrice(p.key()))
            .min()
            .orElse(0);
    double tape =
        priceOf(TrenchGoods.TAPE, catalogue, costs)
            / catalogue.constant("irrigation.tape-roll").value();
    double sleeve =
        priceOf(TrenchGoods.SLEEVE, catalogue, costs)
            / catalogue.constant("irrigation.sleeve-piece").value();
    TrenchCosts.Prices prices = new TrenchCosts.Prices(pipePerM, tape, sleeve);
    GroundMap map = GroundMap.of(grove, catalogue, rules);
    laid = LaidMain.of(grove);
    List<Point> drawn = new ArrayList<>(List.of(supply));
    if (laid.isEmpty()) {
      drawn.addAll(grove.watering().mainRoute());
    }
    ways =
        new MainWays(
            new WayFinder(
                map, new TrenchCosts(catalogue, rules, burial, prices, costs.labourPerS())),
            drawn,
            laid);
    maker = new TrenchMaker(map, catalogue, rules, burial, terrain);
  }

  private static double priceOf(String part, Catalogue catalogue, Costs costs) {
    return catalogue.parts().containsKey(part) ? costs.unitPrice(part) : 0;
  }

  Burial burial() {
    return burial;
  }

  TrenchRules rules() {
    return rules;
  }

  /** For each zone the legs of its main, the last of each leg at the feed of a lateral. */
  List<List<List<Point>>> legs(List<ZoneWish> zones) {
    return ways.lay(feeds(zones)).legs();
  }

  private static List<List<Point>> feeds(List<ZoneWish> zones) {
    return zones.stream().map(MainTrench::feeds).toList();
  }

  private static List<Point> feeds(ZoneWish zone) {
    return zone.laterals().stream().map(l -> l.row().line().get(0)).toList();
  }

  /**
   * Money for the main to the first lateral of one more zone beside those of others: its pipe, and
   * the trench that is not open for the others, as work is paid.
   */
  double moneyBeside(List<ZoneWish> others, ZoneWish zone) {
    Branch branch = new Branch(feeds(others), feeds(zone).subList(0, 1));
    Double money = branches.get(branch);
    if (money == null) {
      MainWays.Branch laid = ways.beside(branch.zones(), branch.feeds().get(0));
      double pipe = laid.lengthM() * pipePerM;
      money = pipe + laid.trench();
      branches.put(branch, money);
    }
    return money;
  }

  /** The trench that is still to be dug for solved zones. */
  Trench of(List<ZoneResult> zones) {
    List<Trench.Run> runs = new ArrayList<>();
    for (ZoneResult zone : zones) {
      for (List<List<Point>> parts : laid.missing(zone.design().main())) {
        for (List<Point> part : parts) {
          runs.add(new Trench.Run(zone.design().id(), zone.design().mainPipe(), part));
        }
      }
    }
    return made.computeIfAbsent(runs, all -> maker.make(all, supply));
  }
}
