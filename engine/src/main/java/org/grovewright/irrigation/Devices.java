package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Regulator;
import org.grovewright.demand.Requirement;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Says of each device on the list of goods why it is there. */
final class Devices {
  private final Catalogue catalogue;
  private final Costs costs;
  private final ZoneNetwork.Site site;
  private final List<ZoneResult> zones;
  private final List<Device> devices = new ArrayList<>();

  private Devices(DesignSite with, List<ZoneResult> zones) {
    this.catalogue = with.catalogue();
    this.costs = with.costs();
    this.site = with.network();
    this.zones = zones;
  }

  /**
   * The devices among the goods of a system, in the order in which water comes to them.
   *
   * @param filter remarks on the filter
   */
  static List<Device> of(
      List<ZoneResult> zones, List<Requirement> goods, List<Finding> filter, DesignSite with) {
    if (zones.isEmpty()) {
      return List.of();
    }
    Devices devices = new Devices(with, zones);
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Requirement r : goods) {
      if (r.kind() == Kind.COUNT) {
        counts.merge(r.itemKey(), (int) Math.round(r.quantity()), Integer::sum);
      }
    }
    devices.parts(
        counts,
        "backflow",
        "It keeps water that has lain in the garden out of the drinking water. The class of device"
            + " is advice: your local code decides which is needed and who may fit and test it.");
    devices.parts(
        counts,
        "timer",
        "It opens each valve at the hours of the timer cards, one output a zone, and no two zones"
            + " at once. Leave work on mains electricity to an electrician.");
    devices.parts(
        counts,
        "zone-valve",
        "One valve a zone is worked by the timer. They run on low voltage; leave work on mains"
            + " electricity to an electrician.");
    devices.filter(counts, filter);
    devices.regulators(counts);
    devices.parts(
        counts,
        "air-vent",
        "When the valve shuts, water runs on to the lowest emitters. Without air let in at the"
            + " highest point the others would suck in dirt. Stand it above the ground and keep it"
            + " clean.");
    devices.parts(
        counts,
        "end-flush",
        "What passes the filter gathers at the far end of a lateral. Open the end and let it run"
            + " clear after building and twice a year; stand aside, for it spurts.");
    for (String gauge : List.of("gauge", "gauge-low")) {
      devices.parts(
          counts,
          gauge,
          "A gauge shows whether the pressure is what the plan says, and when the filter must be"
              + " cleaned.");
    }
    return List.copyOf(devices.devices);
  }

  private void parts(Map<String, Integer> counts, String role, String why) {
    counts.forEach(
        (key, count) -> {
          Part part = catalogue.parts().get(key);
          if (part != null && part.role().equals(role)) {
            add(key, part.name(), count, why);
          }
        });
  }

  private void filter(Map<String, Integer> counts, List<Finding> remarks) {
    Filter filter = zones.get(0).design().filter();
    double flow = FilterCheck.largestFlow(zones);
    double allowed =
        zones.stream()
            .flatMap(zone -> zone.design().allOutlets().stream())
            .mapToDouble(outlet -> outlet.emitter().filterOpeningM())
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    if (filter.openingM() > allowed + 1e-9) {
      add(
          filter.key(),
          filter.name(),
          counts.getOrDefault(filter.key(), 1),
          "Its openings are {0}, but the emitters ask for {1} or less and may clog behind it:"
              + " choose a finer one. Shut the water off and let the pressure out before you open"
              + " it.",
          new Quantity(filter.openingM(), Kind.BORE),
          new Quantity(allowed, Kind.BORE));
      return;
    }
    if (!remarks.isEmpty()) {
      Finding first = remarks.get(0);
      add(
          filter.key(),
          filter.name(),
          counts.getOrDefault(filter.key(), 1),
          first.message() + " Shut the water off and let the pressure out before you open it.",
          first.quantities().toArray(Quantity[]::new));
      return;
    }
    add(
        filter.key(),
        filter.name(),
        counts.getOrDefault(filter.key(), 1),
        "Its openings of {0} are no larger than the emitters allow, and its screen of {1} passes"
            + " the {2} of the largest zone for a loss of {3} when clean. Shut the water off and let"
            + " the pressure out before you open it.",
        new Quantity(filter.openingM(), Kind.BORE),
        new Quantity(filter.screenAreaM2(), Kind.SCREEN_AREA),
        new Quantity(flow, Kind.FLOW),
        new Quantity(filter.lossPa(flow), Kind.PRESSURE));
  }

  private void regulators(Map<String, Integer> counts) {
    for (ZoneResult zone : zones) {
      Optional<Regulator> regulator = zone.design().regulator();
      if (regulator.isPresent()
          && devices.stream().noneMatch(d -> d.itemKey().equals(regulator.get().key()))) {
        add(
            regulator.get().key(),
            regulator.get().name(),
            counts.getOrDefault(regulator.get().key(), 1),
            (zones.stream().anyMatch(this::pressedTooHard)
                    ? "At rest the supply would press harder on the emitters than they bear."
                    : "Your description asks for it; the emitters would bear the supply at rest"
                        + " without it.")
                + " It holds {0}"
                + " behind it, and works for flows from {1} to {2}."
                + " Fit it the way its arrow points, behind the filter.",
            new Quantity(regulator.get().setPressurePa(), Kind.PRESSURE),
            new Quantity(regulator.get().minFlowM3PerS(), Kind.FLOW),
            new Quantity(regulator.get().maxFlowM3PerS(), Kind.FLOW));
      }
    }
  }

  /** Whether the emitters of a zone could not bear the supply at rest. */
  private boolean pressedTooHard(ZoneResult zone) {
    double top = site.supply().curve().staticHead() + site.supply().elevationM();
    return zone.design().allOutlets().stream()
        .anyMatch(
            outlet ->
                (top - site.terrain().heightAt(outlet.at())) * SupplyModel.PASCALS_PER_METRE
                    > outlet.emitter().maxPressurePa());
  }

  private void add(String key, String name, int count, String why, Quantity... quantities) {
    Finding finding = Finding.of("irrigation.device", Severity.NOTE, key, why, quantities);
    devices.add(new Device(key, name, count, costs.unitPrice(key), finding));
  }
}
