package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Supply.SupplyKind;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/**
 * Which device to advise against water that runs back into the drinking water, by heights.
 *
 * <p>A vacuum breaker only lets air in. Where water behind it stands nearly as high as itself, that
 * water pushes back and is let through; so it must stand above the highest pipe and emitter by a
 * clearance. Where it would not, a reduced pressure assembly is advised, which does not depend on
 * height. A vacuum breaker that has no spring must not stay under pressure either, so one stands
 * behind each valve; an assembly stands once before all valves. The local code decides in every
 * case.
 */
final class BackflowAdvice {
  private static final String SPILLS =
      " A reduced pressure assembly spills water at times, so stand it above the ground where it"
          + " cannot be flooded.";

  private final Grove grove;
  private final Catalogue catalogue;
  private final SupplyModel supply;
  private final Terrain terrain;
  private final HeadParts parts;
  private final List<ZoneResult> zones;

  /**
   * Height of the outlet above where a vacuum breaker must stand at least, metres; not a number for
   * a tank of its own. Kept, for all ground under the pipes is looked at for it.
   */
  private final double spareM;

  /**
   * Advice for a system.
   *
   * @param zones its zones; none where its mains are not known yet
   */
  BackflowAdvice(
      Grove grove,
      Catalogue catalogue,
      SupplyModel supply,
      Terrain terrain,
      HeadParts parts,
      List<ZoneResult> zones) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.supply = supply;
    this.terrain = terrain;
    this.parts = parts;
    this.zones = zones;
    this.spareM =
        isTank()
            ? Double.NaN
            : supply.elevationM() - highestM() - metres("irrigation.vacuum-breaker-clearance");
  }

  private boolean isTank() {
    return grove.supply().kind() == SupplyKind.GRAVITY_TANK;
  }

  /** The device; none for a tank of its own. */
  Optional<Part> device() {
    if (isTank()) {
      return Optional.empty();
    }
    return breakerDoes() ? parts.vacuumBreaker(zones.size()) : parts.part("part.backflow-reduced");
  }

  /** Number of devices: one before all valves, or one behind each. */
  int count() {
    return breakerDoes() ? zones.size() : 1;
  }

  private boolean breakerDoes() {
    return spareM >= 0 && !valvesBehindMain();
  }

  /** Whether the valves stand where water leaves a laid main, so that it stays under pressure. */
  private boolean valvesBehindMain() {
    return grove.watering().mainLaid() && zones.size() > 1;
  }

  /** Height of the highest place that water is led to, metres above the site's zero. */
  private double highestM() {
    List<List<Point>> led = new ArrayList<>();
    led.add(List.of(grove.supply().at()));
    led.add(grove.watering().mainRoute());
    grove.plantings().forEach(plant -> led.add(List.of(plant.at())));
    grove.rows().forEach(row -> led.add(row.line()));
    for (ZoneResult zone : zones) {
      led.addAll(zone.design().main());
      zone.design().laterals().forEach(l -> l.lines().forEach(line -> led.add(line.path())));
    }
    return led.stream()
        .filter(way -> !way.isEmpty())
        .mapToDouble(terrain::highestOver)
        .max()
        .orElseThrow();
  }

  private double metres(String constant) {
    return catalogue.constant(constant).value();
  }

  private static Quantity length(double metres) {
    return new Quantity(metres, Kind.LENGTH);
  }

  /** The remark on the device. */
  Finding remark() {
    Optional<Part> device = device();
    if (device.isEmpty()) {
      return Finding.of(
          "irrigation.backflow-tank",
          Severity.NOTE,
          "supply",
          "A tank of its own needs no backflow device, but if it is ever topped up from the mains,"
              + " your local code decides what must stand between them.");
    }
    String planned =
        device.get().name() + " is planned to keep garden water out of the drinking water";
    String code = " Your local code decides which device is needed and who may fit it.";
    double clearance = metres("irrigation.vacuum-breaker-clearance");
    if (spareM >= 0 && valvesBehindMain()) {
      return Finding.of(
          "irrigation.backflow",
          Severity.NOTE,
          "supply",
          planned
              + ". A vacuum breaker without a spring would not do, because it must not stay under"
              + " pressure for more than 12 hours at a time and the valves stand behind the main"
              + " that lies there."
              + SPILLS
              + code);
    }
    if (breakerDoes()) {
      return Finding.of(
          "irrigation.backflow",
          Severity.NOTE,
          "supply",
          planned
              + ". It must stand at least {0} above the highest pipe and emitter behind it; the"
              + " outlet of your supply is {1} above them. It must not stay under pressure for more"
              + " than 12 hours at a time, so one stands behind each valve, {2} in all."
              + code,
          length(clearance),
          length(spareM + clearance),
          new Quantity(count(), Kind.COUNT));
    }
    double ground = terrain.heightAt(grove.supply().at());
    double standing = metres("irrigation.pressure-breaker-clearance");
    double above = highestM() + standing - ground;
    boolean reachable = above <= metres("irrigation.pressure-breaker-highest");
    return Finding.of(
        "irrigation.backflow",
        Severity.NOTE,
        "supply",
        planned
            + ", because it works wherever plants stand. A vacuum breaker would not do at the"
            + " outlet of your supply: it must stand at least {0} above the highest pipe and"
            + " emitter behind it. "
            + (reachable
                ? "Where your code allows it, a pressure vacuum breaker does too, if it stands {1}"
                    + " above the highest of them, which is {2} above the ground at the supply."
                : "A pressure vacuum breaker would have to stand {1} above the highest of them,"
                    + " which is {2} above the ground at the supply and too high to be fitted.")
            + SPILLS
            + code,
        length(clearance),
        length(standing),
        length(above));
  }
}
