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
   * @param tooMuch share of the need in any month that counts as far too much
   * @param least excess that is worth a remark, m3/s
   * @param remedies what would help a plant that gets far too much
   */
  static List<Finding> of(
      Grove grove,
      List<PlantSupply> supplies,
      double enough,
      double tooMuch,
      double least,
      Remedies remedies) {
    Map<Integer, PlantSupply> worst = new LinkedHashMap<>();
    Map<Integer, PlantSupply> wettest = new LinkedHashMap<>();
    for (PlantSupply s : supplies) {
      if (s.needsM3PerS() <= 0) {
        continue;
      }
      worst.merge(s.plant(), s, (a, b) -> b.share() < a.share() ? b : a);
      wettest.merge(s.plant(), s, (a, b) -> excess(b) > excess(a) ? b : a);
    }
    List<Finding> findings = new ArrayList<>();
    for (PlantSupply s : worst.values()) {
      if (s.share() < enough) {
        findings.add(
            Finding.of(
                "timer.short",
                Severity.SHORTFALL,
                grove.plantings().get(s.plant()).id(),
                grove.supply().allowedDays().any()
                    ? "In month {0} of year {1} this plant needs {2} and gets {3}: the allowed"
                        + " hours or the water that may be drawn do not reach. Allow more hours,"
                        + " store water, or plant less."
                    : "In month {0} of year {1} this plant needs {2} and gets {3}: the allowed"
                        + " days, the hours or the water that may be drawn do not reach, or its"
                        + " soil cannot hold so much at a time. Mulch it, store water for the days"
                        + " between, or plant less.",
                new Quantity(s.month(), Kind.COUNT),
                new Quantity(s.year(), Kind.COUNT),
                new Quantity(s.needsM3PerS(), Kind.DAILY_WATER),
                new Quantity(s.getsM3PerS(), Kind.DAILY_WATER)));
      }
    }
    // One remark a species and zone: a dozen herbs between the trees share one cause.
    Map<String, List<PlantSupply>> drowned = new LinkedHashMap<>();
    for (PlantSupply s : wettest.values()) {
      if (s.share() > tooMuch && excess(s) > least) {
        String species = grove.plantings().get(s.plant()).speciesKey();
        drowned.computeIfAbsent(s.zone() + "/" + species, k -> new ArrayList<>()).add(s);
      }
    }
    for (List<PlantSupply> alike : drowned.values()) {
      PlantSupply first = alike.get(0);
      Remedies.Remedy remedy = remedies.of(first);
      String names =
          alike.stream()
              .map(s -> grove.plantings().get(s.plant()).id())
              .collect(Collectors.joining(", "));
      findings.add(
          Finding.of(
              "timer.too-much",
              Severity.NOTE,
              names,
              "In month {0} of year {1} the plant needs {2} but gets {3}, because it shares its"
                  + " minutes with plants that are thirstier then. "
                  + remedy.words(),
              new Quantity(first.month(), Kind.COUNT),
              new Quantity(first.year(), Kind.COUNT),
              new Quantity(first.needsM3PerS(), Kind.DAILY_WATER),
              new Quantity(first.getsM3PerS(), Kind.DAILY_WATER),
              new Quantity(
                  remedy.amount(), remedy.ownValve() ? Kind.WATER_VOLUME : Kind.DAILY_WATER),
              new Quantity(remedy.awayM(), Kind.LENGTH)));
    }
    return findings;
  }

  private static double excess(PlantSupply s) {
    return s.getsM3PerS() - s.needsM3PerS();
  }
}
