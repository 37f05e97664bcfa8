package org.grovewright.irrigation;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;

/**
 * The timer, month by month, for the first three years.
 *
 * @param settings what the timer is set to, by year, month and zone
 * @param supplies what each plant gets against what it needs, by year, month, zone and plant
 * @param findings where the programme falls short
 */
public record Programme(
    List<TimerSetting> settings, List<PlantSupply> supplies, List<Finding> findings) {
  /** Years that are planned. */
  public static final int YEARS = 3;

  /** Copies the lists. */
  public Programme {
    settings = List.copyOf(settings);
    supplies = List.copyOf(supplies);
    findings = List.copyOf(findings);
  }

  /**
   * Water of one plant in one month.
   *
   * @param plant index of the plant in the grove's plantings
   * @param zone its zone
   * @param year year of the plan, from 1
   * @param month month, 1 to 12
   * @param needsM3PerS what it needs, m3/s as a mean over the day
   * @param getsM3PerS what the timer gives it, less what is lost on the way, m3/s
   */
  public record PlantSupply(
      int plant, String zone, int year, int month, double needsM3PerS, double getsM3PerS) {
    /** Share of the need that is met; 1 where nothing is needed. */
    public double share() {
      return needsM3PerS <= 0 ? 1 : getsM3PerS / needsM3PerS;
    }
  }

  /** Start of the ids of a zone's timer figures in a month, with the last dot. */
  public static String timerId(String zone, int year, int month) {
    return "timer."
        + FigureBook.slug(zone)
        + ".year-"
        + year
        + (month < 10 ? ".month-0" : ".month-")
        + month
        + ".";
  }

  /** The plant of a zone that gets the least share of its need in a month, if any needs water. */
  public Optional<PlantSupply> shortest(String zone, int year, int month) {
    return supplies.stream()
        .filter(s -> s.zone().equals(zone) && s.year() == year && s.month() == month)
        .filter(supply -> supply.needsM3PerS() > 0)
        .min(Comparator.comparingDouble(PlantSupply::share));
  }

  /** The programme of a solved system, with its figures entered under {@code timer}. */
  public static Programme of(
      Grove grove, Catalogue catalogue, WateringSystem system, WaterNeeds needs, FigureBook book) {
    return new ProgrammeMaker(grove, catalogue, system, needs, book).make();
  }
}
