package org.grovewright.irrigation;

import java.time.LocalDate;
import java.time.YearMonth;
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
  private static final String[] SEASONS = {"winter", "spring", "summer", "autumn"};

  private EmitterChanges() {}

  static List<LaterWork> of(List<ZoneResult> zones, Grove grove) {
    List<LaterWork> work = new ArrayList<>();
    for (int year = 2; year <= WateringSystem.DESIGN_YEAR; year++) {
      for (ZoneResult zone : zones) {
        String zoneId = zone.design().id();
        List<EmitterChange> changes = EmitterChange.before(List.of(zone), grove, year);
        boolean added = changes.stream().anyMatch(change -> !change.add().isEmpty());
        if (!added) {
          continue;
        }
        LocalDate begins = grove.start().plusYears(year - 1L);
        work.add(
            new LaterWork(
                "care.emitters." + FigureBook.slug(zoneId) + ".year-" + year,
                year,
                "Add emitters for the grown plants",
                "In "
                    + season(begins, grove.site().southern())
                    + ", as year "
                    + year
                    + " of the plan begins in "
                    + YearMonth.from(begins)
                    + ", change these emitters of zone "
                    + ZoneDesign.called(zoneId)
                    + "."
                    + sentences(changes)
                    + " Then set the timer from the cards of the new year, which count on them.",
                List.of(),
                Working.COMMON_PRACTICE));
      }
    }
    return work;
  }

  /** Three months each, winter from December in the north and from June in the south. */
  private static String season(LocalDate date, boolean southern) {
    int quarter = date.getMonthValue() % 12 / 3;
    return SEASONS[(quarter + (southern ? 2 : 0)) % 4];
  }

  /** One sentence for all plants that are changed alike. */
  private static String sentences(List<EmitterChange> changes) {
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
    StringBuilder text = new StringBuilder();
    alike.forEach(
        (what, plants) ->
            text.append(plants.size() > 1 ? " At each of " : " At ")
                .append(String.join(", ", plants))
                .append(' ')
                .append(what)
                .append('.'));
    return text.toString();
  }

  private static String counted(Map<String, Integer> emitters) {
    List<String> parts = new ArrayList<>();
    emitters.forEach((name, count) -> parts.add(count + " \u00d7 " + name));
    return String.join(" and ", parts);
  }
}
