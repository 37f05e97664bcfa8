package org.grovewright.advice;

import java.time.LocalDate;
import java.util.List;
import org.grovewright.finding.Finding;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;

/**
 * Whether to water today, zone by zone.
 *
 * @param date today
 * @param zones the zones in the order of the plan
 * @param plants the plants that stand, in the order of the description
 * @param lookAt plants to look at, the most pressing first
 * @param findings what was assumed, and what falls short
 */
public record TodayAdvice(
    LocalDate date,
    List<ZoneAdvice> zones,
    List<PlantState> plants,
    List<LookAt> lookAt,
    List<Finding> findings) {
  /** Copies the lists. */
  public TodayAdvice {
    zones = List.copyOf(zones);
    plants = List.copyOf(plants);
    lookAt = List.copyOf(lookAt);
    findings = List.copyOf(findings);
  }

  /**
   * Weather as it was measured, and the forecast as far as there is one.
   *
   * @param days days in order; of some days nothing may be known
   * @param windHeightM height of the wind measurements above ground, metres
   */
  public record MeasuredWeather(List<DayWeather> days, double windHeightM) {
    /** Copies the days. */
    public MeasuredWeather {
      days = List.copyOf(days);
    }
  }

  /**
   * The advice of a day. Every number of it is a figure with its working: {@code
   * advice.plant.PLANT.missing}, {@code .limit}, {@code .total} and {@code .dryness}, and {@code
   * .by-hand}, {@code .dry-days} or {@code .days-without} of a plant to look at; {@code
   * advice.zone.ZONE.wanted}, {@code .time}, {@code .runs}, {@code .per-run}, {@code .volume},
   * {@code .next}, {@code .assumed} and {@code .if-shut}; {@code advice.room.time}, {@code .day}
   * and {@code .week}.
   *
   * <p>A zone is watered on the last day on which none of its plants begins to suffer: when the
   * readily available water of one of them would be used up by this evening (FAO-56 chapter 8) and
   * at least half of it is missing already. It runs until every plant that would follow before the
   * timer's next usual turn is full again, with the leaching share of salty water on top, as far as
   * the allowed hours and the limits of a day and of any seven days leave room.
   *
   * @param plan the plan whose plants, system and timer are taken
   * @param weather the weather until today, or beyond it where a forecast is known
   * @param log what was noted of watering and rain
   * @param date today
   * @throws IllegalArgumentException if the weather is empty, out of order or begins after today
   */
  public static TodayAdvice of(
      Plan plan, MeasuredWeather weather, WaterLog log, LocalDate date, FigureBook book) {
    return new AdviceMaker(plan, weather, log, date, book).make();
  }
}
