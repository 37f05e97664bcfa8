package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.irrigation.LateralProfile;
import org.grovewright.irrigation.LateralProfile.Stop;
import org.grovewright.irrigation.ZoneNetwork;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.quantity.Kind;

/** Finds lines of tubing and places on them. */
final class Tubing {
  private Tubing() {}

  /** One line of tubing with its zone. */
  record Run(ZoneResult zone, LateralProfile profile) {
    /** The pipe of the network between a stop and the one before it. */
    Link.Pipe piece(int stop) {
      Network network = zone.network().network();
      String id = ZoneNetwork.pieceId(profile.line(), stop);
      return (Link.Pipe) network.links().get(network.linkIndex(id));
    }

    double lengthM() {
      List<Stop> stops = profile.stops();
      return stops.get(stops.size() - 1).alongM();
    }
  }

  /**
   * A place on a run.
   *
   * @param run the run
   * @param stop number of the stop behind the place, from 1; its piece holds the place
   * @param share how far along that piece the place is, above 0 and below 1
   * @param alongM distance from the feed, metres
   */
  record Spot(Run run, int stop, double share, double alongM) {}

  /** All runs of tubing of zones, in the order of the zones. */
  static List<Run> runs(List<ZoneResult> zones) {
    List<Run> runs = new ArrayList<>();
    for (ZoneResult zone : zones) {
      for (LateralProfile profile : LateralProfile.of(zone)) {
        runs.add(new Run(zone, profile));
      }
    }
    return runs;
  }

  /**
   * The runs along a row; those of the row with the longest tubing if none is named.
   *
   * @throws IllegalArgumentException if no tubing runs along a row of that name
   */
  static List<Run> along(Optional<String> rowId, List<ZoneResult> zones) {
    List<Run> runs = runs(zones);
    if (runs.isEmpty()) {
      throw new IllegalArgumentException("This grove has no watering system.");
    }
    Run longest = runs.stream().max(Comparator.comparingDouble(Run::lengthM)).orElseThrow();
    String row = rowId.orElse(longest.profile().rowId());
    List<Run> found = runs.stream().filter(r -> same(r.profile().rowId(), row)).toList();
    if (found.isEmpty()) {
      List<String> known = runs.stream().map(r -> r.profile().rowId()).distinct().toList();
      throw new IllegalArgumentException(
          "No tubing runs along a row " + row + "; there is " + String.join(", ", known) + ".");
    }
    return found;
  }

  static boolean same(String a, String b) {
    return a.toLowerCase(Locale.ROOT).equals(b.toLowerCase(Locale.ROOT));
  }

  /**
   * The spot that a place names.
   *
   * @throws IllegalArgumentException if there is no such place
   */
  static Spot spot(Mishap.Place place, List<ZoneResult> zones) {
    Run run = along(place.rowId(), zones).get(0);
    OptionalDouble wanted = place.alongM();
    double along = wanted.orElse(run.lengthM() / 2);
    if (!(along >= 0 && along <= run.lengthM())) {
      throw new NoSuchPlaceException(
          Told.of(
              "The tubing along row "
                  + run.profile().rowId()
                  + " is {0} long, so no place in it is {1} from its start.",
              run.lengthM(),
              Kind.LENGTH,
              along,
              Kind.LENGTH));
    }
    List<Stop> stops = run.profile().stops();
    int stop = 1;
    while (stop < stops.size() - 1 && stops.get(stop).alongM() < along) {
      stop++;
    }
    double from = stops.get(stop - 1).alongM();
    double to = stops.get(stop).alongM();
    double share = to > from ? (along - from) / (to - from) : 0.5;
    return new Spot(run, stop, Math.max(0.001, Math.min(0.999, share)), along);
  }
}
