package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.demand.LaterWork;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Working;

/** What is to be done at the emitters at the start of each later year, in a gardener's words. */
final class EmitterChanges {
  private EmitterChanges() {}

  static List<LaterWork> of(List<ZoneResult> zones, Grove grove) {
    List<LaterWork> work = new ArrayList<>();
    for (int year = 2; year <= WateringSystem.DESIGN_YEAR; year++) {
      for (ZoneResult zone : zones) {
        String id = "care.emitters." + FigureBook.slug(zone.design().id()) + ".year-" + year;
        String added = added(zone.design().allOutlets(), year, grove);
        if (added.isEmpty()) {
          continue;
        }
        work.add(
            new LaterWork(
                id,
                year,
                "Add emitters for the grown plants",
                "Add the emitters that the plan lists for the new year, and pull the small ones"
                    + " whose holes they take. Then set the timer from the cards of the new year,"
                    + " which count on them.",
                List.of(),
                Working.COMMON_PRACTICE));
      }
    }
    return work;
  }

  private static String added(List<Outlet> outlets, int year, Grove grove) {
    Map<String, Map<String, Integer>> byPlant = new LinkedHashMap<>();
    for (Outlet outlet : outlets) {
      if (outlet.fromYear() == year) {
        byPlant
            .computeIfAbsent(plant(outlet, grove), k -> new LinkedHashMap<>())
            .merge(outlet.emitter().name(), 1, Integer::sum);
      }
    }
    Map<String, List<String>> plantsByWhat = new LinkedHashMap<>();
    byPlant.forEach(
        (plant, emitters) -> {
          List<String> what = new ArrayList<>();
          emitters.forEach((name, count) -> what.add(count + " \u00d7 " + name));
          plantsByWhat
              .computeIfAbsent(String.join(" and ", what), k -> new ArrayList<>())
              .add(plant);
        });
    StringBuilder text = new StringBuilder();
    plantsByWhat.forEach(
        (what, plants) ->
            text.append(" Add ")
                .append(what)
                .append(plants.size() > 1 ? " at each of " : " at ")
                .append(String.join(", ", plants))
                .append('.'));
    return text.toString();
  }

  private static String plant(Outlet outlet, Grove grove) {
    return grove.plantings().get(outlet.plant()).id();
  }
}
