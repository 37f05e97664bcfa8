package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Names the plants that the programme leaves short, and those it gives far too much. */
final class SupplyRemarks {
  private SupplyRemarks() {}

  /**
   * Remarks on a programme's supplies.
   *
   * @param enough share of the need that counts as enough
   * @param tooMuch share of the need at the peak that counts as far too much
   * @param least excess that is worth a remark, m3/s
   */
  static List<Finding> of(
      Grove grove, List<PlantSupply> supplies, double enough, double tooMuch, double least) {
    Map<Integer, PlantSupply> worst = new LinkedHashMap<>();
    Map<Integer, PlantSupply> peak = new LinkedHashMap<>();
    for (PlantSupply s : supplies) {
      if (s.needsM3PerS() <= 0) {
        continue;
      }
      worst.merge(s.plant(), s, (a, b) -> b.share() < a.share() ? b : a);
      peak.merge(s.plant(), s, (a, b) -> b.needsM3PerS() > a.needsM3PerS() ? b : a);
    }
    List<Finding> findings = new ArrayList<>();
    for (PlantSupply s : worst.values()) {
      if (s.share() < enough) {
        findings.add(
            Finding.of(
                "timer.short",
                Severity.SHORTFALL,
                grove.plantings().get(s.plant()).id(),
                "In month {0} of year {1} this plant needs {2} and gets {3}: the allowed hours or"
                    + " the water that may be drawn do not reach. Allow more hours, store water, or"
                    + " plant less.",
                new Quantity(s.month(), Kind.COUNT),
                new Quantity(s.year(), Kind.COUNT),
                new Quantity(s.needsM3PerS(), Kind.DAILY_WATER),
                new Quantity(s.getsM3PerS(), Kind.DAILY_WATER)));
      }
    }
    // One remark a species and zone: a dozen herbs between the trees share one cause.
    Map<String, List<PlantSupply>> drowned = new LinkedHashMap<>();
    for (PlantSupply s : peak.values()) {
      if (s.share() > tooMuch && s.getsM3PerS() - s.needsM3PerS() > least) {
        String species = grove.plantings().get(s.plant()).speciesKey();
        drowned.computeIfAbsent(s.zone() + "/" + species, k -> new ArrayList<>()).add(s);
      }
    }
    for (List<PlantSupply> alike : drowned.values()) {
      PlantSupply first = alike.get(0);
      String names =
          alike.stream()
              .map(s -> grove.plantings().get(s.plant()).id())
              .collect(Collectors.joining(", "));
      findings.add(
          Finding.of(
              "timer.too-much",
              Severity.NOTE,
              names,
              "At its peak the plant needs {0} but gets {1}, because it shares its minutes with"
                  + " thirstier plants. Give it fewer or smaller emitters.",
              new Quantity(first.needsM3PerS(), Kind.DAILY_WATER),
              new Quantity(first.getsM3PerS(), Kind.DAILY_WATER)));
    }
    return findings;
  }
}
