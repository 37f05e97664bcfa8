package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.hydraulics.Link;
import org.grovewright.irrigation.LateralProfile;
import org.grovewright.irrigation.LateralProfile.Stop;
import org.grovewright.irrigation.Outlet;
import org.grovewright.irrigation.ZoneNetwork;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;

/**
 * A piece of tubing that one would go and look at: from one plant's emitters to the next, or along
 * the emitters of one plant.
 *
 * @param name where it is, in words
 * @param pipeId its longest pipe in the network
 */
record Stretch(String name, String pipeId) {
  /** The stretches of all tubing of a zone. */
  static List<Stretch> of(ZoneResult zone, Grove grove) {
    List<Stretch> stretches = new ArrayList<>();
    for (LateralProfile profile : LateralProfile.of(zone)) {
      String last = "";
      double longest = 0;
      List<Stop> stops = profile.stops();
      for (int stop = 1; stop < stops.size(); stop++) {
        String name = name(profile, stops.get(stop - 1), stops.get(stop), grove);
        double length = stops.get(stop).alongM() - stops.get(stop - 1).alongM();
        String pipe = ZoneNetwork.pieceId(profile.line(), stop);
        if (!name.equals(last)) {
          stretches.add(new Stretch(name, pipe));
          longest = length;
        } else if (length > longest) {
          stretches.set(stretches.size() - 1, new Stretch(name, pipe));
          longest = length;
        }
        last = name;
      }
    }
    // the main of the zone, leg by leg
    for (int leg = 1; leg <= zone.design().main().size(); leg++) {
      String id = "main-" + leg;
      if (zone.network().network().hasLink(id) && link(zone, id) instanceof Link.Pipe) {
        stretches.add(
            new Stretch(
                "the main before row " + zone.design().laterals().get(leg - 1).rowId(), id));
      }
    }
    return stretches;
  }

  private static Link link(ZoneResult zone, String id) {
    return zone.network().network().links().get(zone.network().network().linkIndex(id));
  }

  private static String name(LateralProfile profile, Stop from, Stop to, Grove grove) {
    String before = plantAt(profile, from, grove);
    String behind = plantAt(profile, to, grove);
    String line = profile.line().id();
    String row =
        "row "
            + profile.rowId()
            + (line.endsWith("-left") ? ", left side" : "")
            + (line.endsWith("-right") ? ", right side" : "");
    if (before.equals(behind)) {
      return "the tubing at " + before + " (" + row + ")";
    }
    return "the tubing between " + before + " and " + behind + " (" + row + ")";
  }

  private static String plantAt(LateralProfile profile, Stop stop, Grove grove) {
    for (Outlet outlet : profile.line().outlets()) {
      if (Math.abs(outlet.alongM() - stop.alongM()) < 0.002) {
        return grove.plantings().get(outlet.plant()).id();
      }
    }
    return "the feed";
  }
}
