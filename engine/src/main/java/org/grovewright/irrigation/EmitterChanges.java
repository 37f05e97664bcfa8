package org.grovewright.irrigation;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
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
                    + ". "
                    + String.join(" ", EmitterChange.sentences(changes))
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
}
