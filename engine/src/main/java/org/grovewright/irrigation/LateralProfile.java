package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.irrigation.ZoneResult.OutletResult;

/**
 * Ground and water pressure along one line of tubing while its zone runs.
 *
 * @param line the line
 * @param rowId the row it serves
 * @param stops places along the tubing in order, the feed first; a closed line ends at its feed
 * @param outlets its outlets, each as it gives, in order along the tubing
 */
public record LateralProfile(
    Line line, String rowId, List<Stop> stops, List<OutletResult> outlets) {
  /** Copies the lists. */
  public LateralProfile {
    stops = List.copyOf(stops);
    outlets = List.copyOf(outlets);
  }

  /**
   * A place along the tubing.
   *
   * @param nodeId id of the network's node there
   * @param alongM distance from the feed along the tubing, metres
   * @param groundM height of the ground above the site's zero, metres
   * @param headM total head of the water above the site's zero, metres
   */
  public record Stop(String nodeId, double alongM, double groundM, double headM) {
    /** Gauge pressure in the tubing, pascals. */
    public double pressurePa() {
      return (headM - groundM) * SupplyModel.PASCALS_PER_METRE;
    }
  }

  /** The lines of a zone that carry water to at least one outlet, in the order of the design. */
  public static List<LateralProfile> of(ZoneResult zone) {
    Network network = zone.network().network();
    Map<String, Link> links = new HashMap<>();
    network.links().forEach(link -> links.put(link.id(), link));
    Map<String, OutletResult> results = new HashMap<>();
    zone.outlets().forEach(result -> results.put(result.outlet().id(), result));
    List<LateralProfile> profiles = new ArrayList<>();
    for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
      for (Line all : lateral.lines()) {
        Line line = all.inYear(zone.design().year());
        List<Stop> stops = stops(zone, line, links);
        if (!stops.isEmpty()) {
          List<OutletResult> outlets =
              line.outlets().stream().map(outlet -> results.get(outlet.id())).toList();
          profiles.add(new LateralProfile(line, lateral.rowId(), stops, outlets));
        }
      }
    }
    return profiles;
  }

  private static List<Stop> stops(ZoneResult zone, Line line, Map<String, Link> links) {
    List<Stop> stops = new ArrayList<>();
    String feed = "";
    for (int piece = 1; ; piece++) {
      if (!(links.get(ZoneNetwork.pieceId(line, piece)) instanceof Link.Pipe pipe)) {
        return stops;
      }
      if (piece == 1) {
        feed = pipe.from();
        stops.add(stop(zone, feed, 0));
      }
      boolean back = pipe.to().equals(feed);
      double along = back ? line.lengthM() : zone.network().alongM().get(pipe.to());
      stops.add(stop(zone, pipe.to(), along));
    }
  }

  private static Stop stop(ZoneResult zone, String node, double along) {
    Network network = zone.network().network();
    double ground = network.nodes().get(network.nodeIndex(node)).elevation();
    return new Stop(node, along, ground, zone.solution().head(node));
  }
}
