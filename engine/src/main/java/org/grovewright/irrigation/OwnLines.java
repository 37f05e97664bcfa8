package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Watering;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Remarks on laterals whose way the owner drew, or which lie there already. */
final class OwnLines {
  private OwnLines() {}

  /**
   * What to see to before laid tubing is used, and which plants a drawn line passes too far off.
   */
  static List<Finding> remarks(List<ZoneResult> zones, Grove grove, Rulebook rules) {
    Set<String> drawn = new HashSet<>();
    List<Watering.Lateral> own = new ArrayList<>(grove.watering().laterals());
    grove.watering().zones().forEach(zone -> own.addAll(zone.laterals()));
    own.stream().filter(l -> !l.route().isEmpty()).forEach(l -> drawn.add(l.rowId()));
    List<Finding> remarks = new ArrayList<>();
    for (ZoneResult zone : zones) {
      for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
        if (lateral.laid()) {
          remarks.add(
              Finding.of(
                  "irrigation.laid",
                  Severity.NOTE,
                  lateral.rowId(),
                  "The tubing of this row is said to lie there already, so neither it nor its"
                      + " fittings are to be bought. Before you fit emitters, see that its size is"
                      + " the one planned with, look for cuts and brittle places, and flush it."));
        }
        if (drawn.contains(lateral.rowId())) {
          remarks.addAll(tooFar(lateral, grove, rules));
        }
      }
    }
    return remarks;
  }

  private static List<Finding> tooFar(
      ZoneDesign.LateralDesign lateral, Grove grove, Rulebook rules) {
    Set<Integer> seen = new HashSet<>();
    List<Finding> remarks = new ArrayList<>();
    for (Line line : lateral.lines()) {
      for (Outlet outlet : line.outlets()) {
        if (outlet.feederM() > rules.maxFeederM() && seen.add(outlet.plant())) {
          remarks.add(
              Finding.of(
                  "irrigation.line-too-far",
                  Severity.SHORTFALL,
                  grove.plantings().get(outlet.plant()).id(),
                  "The line that was drawn for its row passes this plant at {0}; a feeder tube"
                      + " reaches {1} at most. Lead the line nearer to it.",
                  new Quantity(outlet.feederM(), Kind.LENGTH),
                  new Quantity(rules.maxFeederM(), Kind.LENGTH)));
        }
      }
    }
    return remarks;
  }
}
