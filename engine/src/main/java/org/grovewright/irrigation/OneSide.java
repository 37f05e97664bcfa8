package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Watering.Run;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Says for which trees tubing along one side of the row is not enough. */
final class OneSide {
  private final DesignSite with;

  OneSide(DesignSite with) {
    this.with = with;
  }

  /**
   * Main plants, by index, with the share of the ground under their crown that is wet, where it is
   * less than one side may leave.
   *
   * @param lines the lines of a lateral along one side
   */
  Map<Integer, Double> halfDry(List<Line> lines) {
    Map<Integer, List<Outlet>> byPlant = new LinkedHashMap<>();
    for (Line line : lines) {
      for (Outlet o : line.outlets()) {
        byPlant.computeIfAbsent(o.plant(), p -> new ArrayList<>()).add(o);
      }
    }
    Map<Integer, Double> shares = new LinkedHashMap<>();
    byPlant.forEach(
        (plant, outlets) -> {
          if (with.zoning().isMain(plant)) {
            double share =
                WettedGround.share(
                    with.grove().plantings().get(plant).at(), with.crownRadiusM()[plant], outlets);
            if (share < with.rules().wettedShare()) {
              shares.put(plant, share);
            }
          }
        });
    return shares;
  }

  /** Remarks on laterals that the owner drew along one side of trees. */
  List<Finding> remarks(List<ZoneResult> zones) {
    List<Finding> remarks = new ArrayList<>();
    for (ZoneResult zone : zones) {
      for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
        if (lateral.run() != Run.DEAD_END) {
          continue;
        }
        Map<Integer, Double> shares = halfDry(lateral.lines());
        shares.entrySet().stream()
            .min(Map.Entry.comparingByValue())
            .ifPresent(
                driest ->
                    remarks.add(
                        Finding.of(
                            "irrigation.one-side",
                            Severity.NOTE,
                            lateral.id(),
                            "This line runs along one side of its trees, so their roots on the"
                                + " other side stay dry: of the ground under "
                                + with.grove().plantings().get(driest.getKey()).id()
                                + " when it is grown it wets {0}, and from one side {1} is the"
                                + " least. Write run: loop or run: two sided.",
                            new Quantity(driest.getValue(), Kind.SHARE),
                            new Quantity(with.rules().wettedShare(), Kind.SHARE))));
      }
    }
    return remarks;
  }
}
