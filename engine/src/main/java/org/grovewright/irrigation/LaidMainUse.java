package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Pipe;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Point;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.trench.LaidMain;

/**
 * How zones use a main that lies there already. All share its one pipe, one zone at a time, so
 * their valves stand where water leaves it.
 *
 * @param outlets number of valves
 * @param apart whether several zones leave it, and not all at one place
 */
record LaidMainUse(int outlets, boolean apart) {
  /** Valves nearer to each other than this can be outlets of one timer, metres. */
  private static final double ONE_PLACE_M = 1;

  /** A wider main is worth a word where it leaves less than this share of the narrower's fault. */
  private static final double HELPS = 0.8;

  static LaidMainUse of(List<ZoneResult> zones, LaidMain laid) {
    if (laid.isEmpty() || zones.size() < 2) {
      return new LaidMainUse(zones.size(), false);
    }
    int outlets = 0;
    List<Point> all = new ArrayList<>();
    for (ZoneResult zone : zones) {
      List<Point> places = leaving(zone.design(), laid);
      outlets += places.size();
      all.addAll(places);
    }
    boolean apart = all.stream().anyMatch(p -> p.distanceTo(all.get(0)) > ONE_PLACE_M);
    return new LaidMainUse(outlets, apart);
  }

  /** Places at which water of a zone leaves the laid main. */
  private static List<Point> leaving(ZoneDesign zone, LaidMain laid) {
    List<Point> places = new ArrayList<>();
    List<List<List<Point>>> missing = laid.missing(zone.main());
    for (int i = 0; i < missing.size(); i++) {
      for (List<Point> part : missing.get(i)) {
        if (laid.reaches(part.get(0))) {
          add(places, part.get(0));
        }
      }
      List<Point> leg = zone.main().get(i);
      Point feed = leg.get(leg.size() - 1);
      if (laid.reaches(feed)) {
        add(places, feed);
      }
    }
    return places;
  }

  private static void add(List<Point> places, Point place) {
    if (places.stream().noneMatch(other -> other.distanceTo(place) < ONE_PLACE_M)) {
      places.add(place);
    }
  }

  /** What to see to before a laid main is used, and zones for which it is too narrow. */
  static List<Finding> remarks(List<ZoneResult> zones, DesignSite with) {
    LaidMain laid = with.network().laidMain();
    if (laid.isEmpty() || zones.isEmpty()) {
      return List.of();
    }
    List<Finding> remarks = new ArrayList<>();
    remarks.add(
        Finding.of(
            "irrigation.main-laid",
            Severity.NOTE,
            "watering",
            "The main is said to lie there already as far as you drew it, so neither that pipe nor"
                + " its fittings are to be bought and no trench is to be dug for it. Before you"
                + " join to it, see that its size is the one planned with and how deep it lies,"
                + " flush it, and look for leaks with its end closed."));
    if (zones.size() > 1) {
      remarks.add(
          Finding.of(
              "irrigation.main-laid-shared",
              Severity.NOTE,
              "watering",
              of(zones, laid).apart()
                  ? "{0} zones share the main that lies there, one at a time, and leave it at"
                      + " different places. So a timer with its valve stands at each place where"
                      + " water leaves that main, {1} in all, and none at the supply."
                  : "{0} zones share the main that lies there, one at a time. So the timer with its"
                      + " {1} valves stands where their pipes leave that main, and not at the"
                      + " supply.",
              new Quantity(zones.size(), Kind.COUNT),
              new Quantity(of(zones, laid).outlets(), Kind.COUNT)));
    }
    zones.forEach(zone -> tooNarrow(zone, with).ifPresent(remarks::add));
    return remarks;
  }

  /** The narrowest wider main that keeps every rule where the laid one does not, or helps most. */
  private static Optional<Finding> tooNarrow(ZoneResult zone, DesignSite with) {
    double shortness = zone.shortness(with.rules());
    if (shortness <= 1e-9) {
      return Optional.empty();
    }
    List<Pipe> wider =
        with.catalogue().pipes().values().stream()
            .filter(p -> p.use() == Pipe.Use.MAIN)
            .filter(p -> p.market().serves(with.grove().preferences().units()))
            .filter(p -> p.insideDiameterM() > zone.design().mainPipe().insideDiameterM())
            .sorted(Comparator.comparingDouble(Pipe::insideDiameterM).thenComparing(Pipe::key))
            .toList();
    Optional<ZoneResult> best = Optional.empty();
    for (Pipe pipe : wider) {
      ZoneResult other = ZoneResult.solve(zone.design().with(pipe), with.network());
      double left = other.shortness(with.rules());
      double before = best.map(b -> b.shortness(with.rules())).orElse(shortness);
      if (left < before * HELPS) {
        best = Optional.of(other);
      }
      if (left <= 1e-9) {
        break;
      }
    }
    return best.map(other -> tooNarrow(zone, other, with));
  }

  private static Finding tooNarrow(ZoneResult zone, ZoneResult other, DesignSite with) {
    return Finding.of(
        "irrigation.main-laid-narrow",
        Severity.SHORTFALL,
        zone.design().id(),
        "The main that lies there is too narrow for this zone: with it the least pressure at an"
            + " emitter is {0}, with "
            + other.design().mainPipe().name()
            + " it would be {1}"
            + (other.meets(with.rules())
                ? ", and every rule would be kept."
                : ", though not every rule would be kept.")
            + " Lay the wider pipe, or water fewer plants at a time.",
        new Quantity(zone.minPressurePa(), Kind.PRESSURE),
        new Quantity(other.minPressurePa(), Kind.PRESSURE));
  }
}
