package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.model.Supply.SupplyKind;

/** Chooses the timers and looks up fittings. */
final class HeadParts {
  /** Zones that a timer on a tap has outlets for. */
  private static final int MOST_AT_TAP = 4;

  private final Catalogue catalogue;

  /** The first part of each role, by the pipe it fits; empty text for parts that fit any. */
  private final Map<String, Map<String, Part>> byRole = new HashMap<>();

  HeadParts(Catalogue catalogue) {
    this.catalogue = catalogue;
    for (Part part : catalogue.parts().values()) {
      byRole.computeIfAbsent(part.role(), role -> new HashMap<>()).putIfAbsent(part.fits(), part);
    }
  }

  /** The timer, and the valves it needs besides its own, for a number of zones. */
  List<Part> timers(SupplyKind supply, int zones) {
    List<Part> parts = new ArrayList<>();
    if (supply == SupplyKind.GRAVITY_TANK) {
      for (int i = 0; i < zones; i++) {
        part("part.timer-low-pressure").ifPresent(parts::add);
      }
      return parts;
    }
    if (zones <= MOST_AT_TAP) {
      part(zones == 1 ? "part.timer-tap-1" : zones == 2 ? "part.timer-tap-2" : "part.timer-tap-4")
          .ifPresent(parts::add);
      return parts;
    }
    part("part.timer-8").ifPresent(parts::add);
    for (int i = 0; i < zones; i++) {
      part("part.valve-electric-25").ifPresent(parts::add);
    }
    return parts;
  }

  /**
   * The vacuum breaker that stands behind each valve: with a hose thread on the outlets of a tap
   * timer, in the pipe behind valves of their own.
   */
  Optional<Part> vacuumBreaker(int zones) {
    return part(zones <= MOST_AT_TAP ? "part.backflow-hose" : "part.backflow-antisiphon");
  }

  /** The part that fills a role on a pipe; one made for the pipe goes before one for any. */
  Optional<Part> fitting(String role, Pipe pipe) {
    Map<String, Part> fit = byRole.getOrDefault(role, Map.of());
    Part made = fit.get(pipe.key());
    return Optional.ofNullable(made == null ? fit.get("") : made);
  }

  /** Loss coefficient of the part that fills a role on a pipe; 0 where the catalogue has none. */
  double lossOf(String role, Pipe pipe) {
    return fitting(role, pipe).map(Part::lossCoefficient).orElse(0.0);
  }

  Optional<Part> part(String key) {
    return Optional.ofNullable(catalogue.parts().get(key));
  }
}
