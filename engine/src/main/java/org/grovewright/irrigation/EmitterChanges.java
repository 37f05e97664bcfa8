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
        String pulled = pulled(zone.design().allOutlets(), year, grove);
        work.add(
            new LaterWork(
                id,
                year,
                "Add emitters for the grown plants",
                "At the start of year "
                    + year
                    + " in "
                    + zone.design().id()
                    + ":"
                    + pulled
                    + added
                    + " Put them where holes are free and outside those that are there, below the"
                    + " edge of the crown."
                    + " Then set the timer from the cards of year "
                    + year
                    + ", which count on it.",
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

  private static String pulled(List<Outlet> outlets, int year, Grove grove) {
    List<String> plants =
        outlets.stream()
            .filter(outlet -> outlet.closesAfter(year - 1))
            .map(outlet -> plant(outlet, grove))
            .distinct()
            .toList();
    return plants.isEmpty()
        ? ""
        : " Pull the small emitters at "
            + String.join(", ", plants)
            + "; the new ones go into their holes.";
  }

  private static String plant(Outlet outlet, Grove grove) {
    return grove.plantings().get(outlet.plant()).id();
  }
}
