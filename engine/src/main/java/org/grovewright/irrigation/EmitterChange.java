package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.grovewright.model.Grove;

/**
 * What is done at the emitters of one plant before the timer is set for a year of the plan.
 *
 * @param plantId the plant
 * @param zone its zone
 * @param add numbers of the emitters to fit, by name
 * @param close numbers of the emitters to pull or plug, by name
 */
public record EmitterChange(
    String plantId, String zone, Map<String, Integer> add, Map<String, Integer> close) {
  /** Copies the numbers. */
  public EmitterChange {
    add = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(add));
    close = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(close));
  }

  /**
   * The changes of some zones at the start of a year, in the order of the plants; none in year 1.
   */
  public static List<EmitterChange> before(List<ZoneResult> zones, Grove grove, int year) {
    List<EmitterChange> changes = new ArrayList<>();
    if (year <= 1) {
      return changes;
    }
    for (ZoneResult zone : zones) {
      Map<Integer, Map<String, Integer>> add = new TreeMap<>();
      Map<Integer, Map<String, Integer>> close = new TreeMap<>();
      for (Outlet outlet : zone.design().allOutlets()) {
        boolean now = outlet.openIn(year);
        if (now != outlet.openIn(year - 1)) {
          (now ? add : close)
              .computeIfAbsent(outlet.plant(), p -> new LinkedHashMap<>())
              .merge(outlet.emitter().name(), 1, Integer::sum);
        }
      }
      for (int plant = 0; plant < grove.plantings().size(); plant++) {
        if (add.containsKey(plant) || close.containsKey(plant)) {
          changes.add(
              new EmitterChange(
                  grove.plantings().get(plant).id(),
                  zone.design().id(),
                  add.getOrDefault(plant, Map.of()),
                  close.getOrDefault(plant, Map.of())));
        }
      }
    }
    return changes;
  }

  /**
   * What is done, one sentence for all plants that are changed alike. The plants stand before the
   * emitters, for an emitter's name may hold the word that would part them: "2 L/h at 2 m of
   * water".
   */
  public static List<String> sentences(List<EmitterChange> changes) {
    Map<String, List<String>> alike = new LinkedHashMap<>();
    for (EmitterChange change : changes) {
      List<String> what = new ArrayList<>();
      if (!change.add().isEmpty()) {
        what.add("add " + counted(change.add()));
      }
      if (!change.close().isEmpty()) {
        what.add("take out " + counted(change.close()));
      }
      alike
          .computeIfAbsent(String.join(" and ", what), k -> new ArrayList<>())
          .add(change.plantId());
    }
    List<String> sentences = new ArrayList<>();
    alike.forEach(
        (what, plants) ->
            sentences.add(
                (plants.size() > 1 ? "At each of " : "At ")
                    + String.join(", ", plants)
                    + " "
                    + what
                    + "."));
    return sentences;
  }

  private static String counted(Map<String, Integer> emitters) {
    List<String> parts = new ArrayList<>();
    emitters.forEach((name, count) -> parts.add(count + " \u00d7 " + name));
    return String.join(" and ", parts);
  }
}
