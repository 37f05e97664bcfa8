package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Reading.Quantity;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.SupplyCurve;
import org.grovewright.irrigation.LateralProfile.Stop;
import org.grovewright.irrigation.Outlet;
import org.grovewright.irrigation.SupplyModel;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.irrigation.ZoneNetwork;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;

/**
 * A reading with its place found in the network of its zone.
 *
 * @param reading the reading
 * @param zone its zone
 * @param quantity what it is in the network
 * @param id node or emitter it was read at
 * @param closed pipes of the network that were folded shut
 * @param expected what the plan has there with nothing folded, Pa or m3/s
 * @param most the most that the supply could give there, Pa or m3/s
 */
public record PlacedReading(
    FieldReading reading,
    ZoneResult zone,
    Quantity quantity,
    String id,
    Set<String> closed,
    double expected,
    double most) {
  private static final Pattern ON_ROW =
      Pattern.compile("(.+?)[ ,]+(start|end|([0-9.]+) ?m)", Pattern.CASE_INSENSITIVE);

  /** An emitter can give more than its curve says at the highest pressure, by wear. */
  private static final double WORN = 1.5;

  /** Least deviations of readings in m of water and m3/s: a gauge's needle and a hasty can. */
  private static final double LEAST_HEAD_M = 0.1;

  private static final double LEAST_CATCH = 0.05e-3 / 3600;
  private static final double LEAST_METER = 1e-3 / 3600;

  /** Copies the set. */
  public PlacedReading {
    closed = Set.copyOf(closed);
  }

  /** Whether another reading is of the same thing while the same tubing was folded shut. */
  boolean sameAs(PlacedReading other) {
    return zone.design().id().equals(other.zone.design().id())
        && quantity == other.quantity
        && id.equals(other.id)
        && closed.equals(other.closed);
  }

  /**
   * Standard deviation of a reading here.
   *
   * @param value what is read, m of water or m3/s
   * @param noise standard deviation as a share of the reading
   */
  double deviation(double value, double noise) {
    double least =
        switch (reading.kind()) {
          case PRESSURE -> LEAST_HEAD_M;
          case METER -> LEAST_METER;
          case CATCH -> LEAST_CATCH;
        };
    return Math.max(least, noise * Math.abs(value));
  }

  /**
   * Finds the places of readings.
   *
   * @param readings the readings
   * @param grove the grove
   * @param system its watering system
   * @param year year of the plan, from 1, in which they were taken
   * @throws IllegalArgumentException if a zone or place is not there; names line and field
   */
  public static List<PlacedReading> of(
      List<FieldReading> readings, Grove grove, WateringSystem system, int year) {
    List<PlacedReading> placed = new ArrayList<>();
    for (FieldReading reading : readings) {
      placed.add(new Finder(reading, grove, system, year).placed());
    }
    return placed;
  }

  /** Finds the place of one reading. */
  private static final class Finder {
    private final FieldReading reading;
    private final Grove grove;
    private final SupplyModel supply;
    private final List<ZoneResult> zones;
    private final ZoneResult zone;
    private final Network network;

    Finder(FieldReading reading, Grove grove, WateringSystem system, int year) {
      this.reading = reading;
      this.grove = grove;
      this.supply = system.supply();
      this.zones = system.zonesIn(year);
      this.zone = zone();
      this.network = zone.network().network();
    }

    private IllegalArgumentException wrong(String message) {
      return new IllegalArgumentException("line " + reading.line() + ": " + message);
    }

    private ZoneResult zone() {
      if (zones.isEmpty()) {
        throw wrong("this grove has no watering system.");
      }
      List<String> known = zones.stream().map(z -> z.design().id()).toList();
      if (reading.zoneId().isEmpty()) {
        if (zones.size() == 1) {
          return zones.get(0);
        }
        throw wrong("zone is empty; say which zone ran: " + String.join(", ", known) + ".");
      }
      for (ZoneResult zone : zones) {
        String id = zone.design().id();
        if (Tubing.same(id, reading.zoneId()) || Tubing.same(id, "zone-" + reading.zoneId())) {
          return zone;
        }
      }
      throw wrong(
          "there is no zone "
              + ZoneDesign.called(reading.zoneId())
              + "; there is "
              + String.join(", ", known)
              + ".");
    }

    PlacedReading placed() {
      Set<String> closed = new LinkedHashSet<>();
      reading.folded().forEach(place -> closed.addAll(foldedAt(place)));
      Solution solution = zone.solution();
      SupplyCurve curve = supply.curve();
      double metre = 1000 * network.gravity();
      double level = supply.elevationM() + curve.staticHead();
      switch (reading.kind()) {
        case METER -> {
          return new PlacedReading(
              reading,
              zone,
              Quantity.SUPPLIED,
              ZoneNetwork.SUPPLY_NODE,
              closed,
              zone.flowM3PerS(),
              curve.flowAt(0));
        }
        case PRESSURE -> {
          String node = nodeAt(reading.place());
          double ground = network.nodes().get(network.nodeIndex(node)).elevation();
          return new PlacedReading(
              reading,
              zone,
              Quantity.PRESSURE,
              node,
              closed,
              solution.pressure(node) * metre,
              (level - ground) * metre);
        }
        default -> {
          Outlet outlet = outlets(reading.place(), "place").get(0);
          String node = zone.network().outletNodes().get(outlet.id());
          double ground = network.nodes().get(network.nodeIndex(node)).elevation();
          double most =
              network
                  .emitters()
                  .get(network.emitterIndex(outlet.id()))
                  .curve()
                  .flow(Math.max(0, level - ground));
          return new PlacedReading(
              reading,
              zone,
              Quantity.EMITTER,
              outlet.id(),
              closed,
              solution.emitterFlow(outlet.id()),
              WORN * most);
        }
      }
    }

    /** The outlets of a plant in the zone, or the one outlet of that name. */
    private List<Outlet> outlets(String place, String field) {
      List<Outlet> found = new ArrayList<>();
      for (Outlet outlet : zone.design().outlets()) {
        if (Tubing.same(outlet.id(), place)) {
          return List.of(outlet);
        }
        if (Tubing.same(grove.plantings().get(outlet.plant()).id(), place)) {
          found.add(outlet);
        }
      }
      if (found.isEmpty()) {
        throw wrong(
            field
                + (place.isEmpty() ? " is empty" : " \"" + place + "\" is not there")
                + "; write a plant or emitter of "
                + zone.design().id()
                + (field.equals("place") && reading.kind() == FieldReading.Kind.CATCH
                    ? "."
                    : ", or a row with start, end or the metres along its tubing, such as \""
                        + zone.design().laterals().get(0).rowId()
                        + " end\"."));
      }
      return found;
    }

    private List<Tubing.Run> runs() {
      return Tubing.runs(zones).stream().filter(run -> run.zone() == zone).toList();
    }

    private String nodeAt(String place) {
      if (Tubing.same(place, "tap") || Tubing.same(place, "supply")) {
        return ZoneNetwork.SUPPLY_NODE;
      }
      Matcher onRow = ON_ROW.matcher(place);
      if (onRow.matches()) {
        for (Tubing.Run run : runs()) {
          if (names(run, onRow.group(1))) {
            return nearest(run, along(run, onRow)).nodeId();
          }
        }
      }
      return zone.network().outletNodes().get(outlets(place, "place").get(0).id());
    }

    private static boolean names(Tubing.Run run, String name) {
      return Tubing.same(run.profile().rowId(), name)
          || Tubing.same(run.profile().line().id(), name);
    }

    private double along(Tubing.Run run, Matcher onRow) {
      String where = onRow.group(2).toLowerCase(Locale.ROOT);
      if (where.equals("start")) {
        return 0;
      }
      if (where.equals("end")) {
        return run.profile().line().closed() ? run.lengthM() / 2 : run.lengthM();
      }
      double along;
      try {
        along = Double.parseDouble(onRow.group(3));
      } catch (NumberFormatException e) {
        throw wrong("\"" + onRow.group(3) + "\" is no distance.");
      }
      if (along > run.lengthM()) {
        throw wrong(
            String.format(
                Locale.ROOT,
                "the tubing of row %s is only %.1f m long.",
                run.profile().rowId(),
                run.lengthM()));
      }
      return along;
    }

    private static Stop nearest(Tubing.Run run, double along) {
      Stop best = run.profile().stops().get(0);
      for (Stop stop : run.profile().stops()) {
        if (Math.abs(stop.alongM() - along) < Math.abs(best.alongM() - along)) {
          best = stop;
        }
      }
      return best;
    }

    /** The pipes that are shut when the tubing is folded right behind a place, on every line. */
    private Set<String> foldedAt(String place) {
      Set<String> closed = new LinkedHashSet<>();
      Matcher onRow = ON_ROW.matcher(place);
      if (onRow.matches()) {
        for (Tubing.Run run : runs()) {
          if (names(run, onRow.group(1))) {
            fold(run, along(run, onRow), closed);
          }
        }
        if (!closed.isEmpty()) {
          return closed;
        }
      }
      List<Outlet> outlets = outlets(place, "folded");
      for (Tubing.Run run : runs()) {
        run.profile().line().outlets().stream()
            .filter(outlets::contains)
            .mapToDouble(Outlet::alongM)
            .max()
            .ifPresent(along -> fold(run, along, closed));
      }
      if (closed.isEmpty()) {
        throw wrong("there is no tubing behind " + place + " to fold; fold before it instead.");
      }
      return closed;
    }

    private static void fold(Tubing.Run run, double along, Set<String> closed) {
      List<Stop> stops = run.profile().stops();
      for (int stop = 1; stop < stops.size(); stop++) {
        if (stops.get(stop).alongM() > along + 1e-6) {
          closed.add(run.piece(stop).id());
          return;
        }
      }
    }
  }
}
