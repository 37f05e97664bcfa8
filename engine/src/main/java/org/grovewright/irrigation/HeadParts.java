package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.model.Supply.SupplyKind;

/**
 * Chooses the devices at the head of the system and looks up fittings.
 *
 * <p>Backflow: where any plant stands higher than the outlet, water can be pushed back and not only
 * sucked back, and a vacuum breaker no longer protects; then a reduced-pressure device is advised.
 * The local code decides in every case.
 */
final class HeadParts {
  private final Catalogue catalogue;

  HeadParts(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** The backflow device to advise; none for a tank of its own. */
  Optional<Part> backflow(SupplyKind supply, boolean plantsAboveOutlet) {
    if (supply == SupplyKind.GRAVITY_TANK) {
      return Optional.empty();
    }
    return part(plantsAboveOutlet ? "part.backflow-reduced" : "part.backflow-hose");
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
    if (zones <= 4) {
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

  /** The part that fills a role on a pipe; one made for the pipe goes before one for any. */
  Optional<Part> fitting(String role, Pipe pipe) {
    Optional<Part> any = Optional.empty();
    for (Part part : catalogue.parts().values()) {
      if (!part.role().equals(role)) {
        continue;
      }
      if (part.fits().equals(pipe.key())) {
        return Optional.of(part);
      }
      if (part.fits().isEmpty() && any.isEmpty()) {
        any = Optional.of(part);
      }
    }
    return any;
  }

  /** Loss coefficient of the part that fills a role on a pipe; 0 where the catalogue has none. */
  double lossOf(String role, Pipe pipe) {
    return fitting(role, pipe).map(Part::lossCoefficient).orElse(0.0);
  }

  Optional<Part> part(String key) {
    return Optional.ofNullable(catalogue.parts().get(key));
  }
}
