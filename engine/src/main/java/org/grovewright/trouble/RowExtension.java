package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.hydraulics.EmitterGroup;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.irrigation.LateralProfile.Stop;
import org.grovewright.irrigation.Outlet;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Kind;
import org.grovewright.trouble.Tubing.Run;

/**
 * More trees at the end of a row: the tubing is drawn on from the last tree, or the far bend of a
 * loop is moved out, and each new tree gets emitters like those of the last one.
 *
 * <p>The ground is taken to go on as it ran between the last two trees, and the trees to stand as
 * far apart.
 */
final class RowExtension {
  private static final double USUAL_GAP_M = 4;

  private final List<Run> runs;
  private final int count;
  private final Planting last;
  private final int lastIndex;
  private final double gapM;
  private final Network.Builder builder;
  private final Map<String, List<String>> added = new LinkedHashMap<>();

  RowExtension(Grove grove, List<Run> runs, int count) {
    if (count < 1) {
      throw new IllegalArgumentException("The number of added trees must be 1 or more.");
    }
    this.runs = runs;
    this.count = count;
    List<Integer> inRow = plantsByDistance(grove);
    this.lastIndex = inRow.get(inRow.size() - 1);
    this.last = grove.plantings().get(lastIndex);
    this.gapM = gap(grove, inRow);
    this.builder = zone().network().network().toBuilder();
    for (Run run : runs) {
      extend(run);
    }
  }

  private ZoneResult zone() {
    return runs.get(0).zone();
  }

  /** Plants of the row by how far they stand from the feed; ids of the likes of the last only. */
  private List<Integer> plantsByDistance(Grove grove) {
    var feed = runs.get(0).profile().line().path().get(0);
    List<Integer> plants = new ArrayList<>();
    int most = 0;
    for (Run run : runs) {
      for (Outlet outlet : run.profile().line().outlets()) {
        if (!plants.contains(outlet.plant())) {
          plants.add(outlet.plant());
        }
      }
    }
    for (int plant : plants) {
      most = Math.max(most, emittersOf(plant));
    }
    int enough = most;
    // the trees have the most emitters; companions between them fewer
    List<Integer> trees =
        new ArrayList<>(plants.stream().filter(p -> 2 * emittersOf(p) >= enough).toList());
    trees.sort(
        java.util.Comparator.comparingDouble(p -> grove.plantings().get(p).at().distanceTo(feed)));
    return trees;
  }

  private int emittersOf(int plant) {
    int number = 0;
    for (Run run : runs) {
      for (Outlet outlet : run.profile().line().outlets()) {
        number += outlet.plant() == plant ? 1 : 0;
      }
    }
    return number;
  }

  private double gap(Grove grove, List<Integer> inRow) {
    if (inRow.size() < 2) {
      return USUAL_GAP_M;
    }
    Planting before = grove.plantings().get(inRow.get(inRow.size() - 2));
    return Math.max(0.5, last.at().distanceTo(before.at()));
  }

  private void extend(Run run) {
    List<Stop> stops = run.profile().stops();
    int end = farEnd(run);
    Stop from = stops.get(end);
    double slope = slope(stops, end);
    Link.Pipe piece = run.piece(Math.max(1, end));
    String at = from.nodeId();
    for (int k = 1; k <= count; k++) {
      String plant = "new-" + k;
      String node = plant + " on " + run.profile().line().id();
      builder.junction(node, from.groundM() + slope * k * gapM);
      builder.link(
          Link.Pipe.of("pipe to " + node, at, node, gapM, piece.diameter(), piece.roughness()));
      at = node;
      emitters(run, plant, node);
    }
    if (run.profile().line().closed() && end + 1 < stops.size()) {
      Link.Pipe back = run.piece(end + 1);
      builder.replace(
          new Link.Pipe(
              back.id(),
              at,
              back.to(),
              back.length() + count * gapM,
              back.diameter(),
              back.roughness(),
              back.minorLoss(),
              back.checkValve(),
              back.closed()));
    }
  }

  /** Number of the stop farthest from the feed: the last, or the one before the bend of a loop. */
  private int farEnd(Run run) {
    List<Stop> stops = run.profile().stops();
    if (!run.profile().line().closed()) {
      return stops.size() - 1;
    }
    double middle = run.lengthM() / 2;
    int end = 0;
    while (end + 1 < stops.size() && stops.get(end + 1).alongM() <= middle) {
      end++;
    }
    return end;
  }

  private double slope(List<Stop> stops, int end) {
    Stop to = stops.get(end);
    for (int i = end - 1; i >= 0; i--) {
      if (to.alongM() - stops.get(i).alongM() >= gapM || i == 0) {
        double run = to.alongM() - stops.get(i).alongM();
        return run > 0 ? (to.groundM() - stops.get(i).groundM()) / run : 0;
      }
    }
    return 0;
  }

  private void emitters(Run run, String plant, String node) {
    Network network = zone().network().network();
    for (Outlet outlet : run.profile().line().outlets()) {
      if (outlet.plant() == lastIndex) {
        EmitterGroup like = network.emitters().get(network.emitterIndex(outlet.id()));
        List<String> ids = added.computeIfAbsent(plant, p -> new ArrayList<>());
        String id = plant + "." + (ids.size() + 1);
        ids.add(id);
        builder.emitter(id, node, like.curve(), 1);
      }
    }
  }

  Network network() {
    return builder.build();
  }

  /** Emitters of each added tree. */
  Map<String, List<String>> addedEmitters() {
    return added;
  }

  /** Index of the plant whose emitters and need the added trees have. */
  int templatePlant() {
    return lastIndex;
  }

  Told title() {
    return Told.of(
        count
            + (count == 1 ? " more tree" : " more trees")
            + " like "
            + last.id()
            + " at the end of row "
            + runs.get(0).profile().rowId()
            + ", {0} apart.",
        gapM,
        Kind.LENGTH);
  }

  List<Told> remarks() {
    return List.of(
        Told.of(
            "The ground is taken to go on as it runs before the last tree; the timer is left as it"
                + " is."));
  }
}
