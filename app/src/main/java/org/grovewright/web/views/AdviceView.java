package org.grovewright.web.views;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.advice.LookAt;
import org.grovewright.advice.TodayAdvice;
import org.grovewright.advice.TodayAdvice.MeasuredWeather;
import org.grovewright.advice.WaterLog;
import org.grovewright.advice.ZoneAdvice;
import org.grovewright.catalogue.Species;
import org.grovewright.irrigation.Programme;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Climate.MonthNormal;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;

/**
 * Whether to water today, from the usual weather of the time of year or what was measured, and from
 * the journal's notes of rain and watering.
 *
 * @param zones what to do with each zone
 * @param lookAt plants to look at, the most pressing first
 * @param remarks what was assumed
 */
public record AdviceView(List<ZoneLine> zones, List<Look> lookAt, List<Remark> remarks) {
  /** A rain gauge that was not read for so long is not counted on, days. */
  private static final int GAUGE_DAYS = 60;

  private static final int MOST_LOOKS = 6;

  /** No advice. */
  static final AdviceView NONE = new AdviceView(List.of(), List.of(), List.of());

  /**
   * One zone.
   *
   * @param zone its id
   * @param action water, skip, wait or nothing-planted
   * @param text what to do
   * @param more when it wants water next, or how the minutes are divided; may be empty
   */
  public record ZoneLine(String zone, String action, String text, String more) {}

  /**
   * A plant to look at.
   *
   * @param plant its id
   * @param text why
   */
  public record Look(String plant, String text) {}

  /** The advice of a day; nothing before the watering is set up and after the years planned. */
  static AdviceView of(Plan plan, LocalDate day, WaterLog log, Voice voice) {
    LocalDate until = plan.grove().start().plusYears(Programme.YEARS);
    if (day.isBefore(plan.care().from()) || !day.isBefore(until)) {
      return NONE;
    }
    TodayAdvice advice =
        TodayAdvice.of(plan, weather(plan.grove().climate(), log, day), log, day, new FigureBook());
    return new AdviceView(
        advice.zones().stream().map(zone -> line(zone, voice)).toList(),
        advice.lookAt().stream().limit(MOST_LOOKS).map(look -> look(plan, look, voice)).toList(),
        advice.findings().stream().map(finding -> voice.remark(plan, finding)).toList());
  }

  /**
   * Measured days as far as the description has them. Where it has none, the past is taken to have
   * been as usual, up to the first note of the rain gauge: who notes rain is believed to note all
   * of it.
   */
  private static MeasuredWeather weather(Climate climate, WaterLog log, LocalDate day) {
    List<DayWeather> known = new ArrayList<>();
    climate.daily().stream().filter(one -> !one.date().isAfter(day)).forEach(known::add);
    if (known.isEmpty()) {
      LocalDate yesterday = day.minusDays(1);
      LocalDate gauged = log.gaugeM().ceilingKey(day.minusDays(GAUGE_DAYS));
      MonthNormal month = climate.normals().get(day.getMonthValue() - 1);
      OptionalDouble none = OptionalDouble.empty();
      known.add(
          new DayWeather(
              gauged == null || gauged.isAfter(yesterday) ? yesterday : gauged,
              month.tminC(),
              month.tmaxC(),
              none,
              none,
              none,
              none,
              none,
              none));
    }
    return new MeasuredWeather(known, climate.windHeightM());
  }

  private static ZoneLine line(ZoneAdvice zone, Voice voice) {
    String name = voice.zone(zone.zone());
    String text =
        switch (zone.action()) {
          case WATER -> voice.text("advice.water", name, zone.minutes());
          case SKIP -> voice.text("advice.skip", name);
          case WAIT -> voice.text("advice.wait", name);
          case NOTHING_PLANTED -> voice.text("advice.nothing", name);
        };
    String more =
        switch (zone.action()) {
          case WATER ->
              zone.runs() > 1 ? voice.text("advice.runs", zone.runs(), zone.minutesPerRun()) : "";
          case SKIP ->
              zone.nextDay()
                  .map(next -> voice.text("advice.next", voice.language().dayOfYear(next)))
                  .orElse(voice.text("advice.none"));
          default -> "";
        };
    String action = zone.action().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    return new ZoneLine(zone.zone(), action, text, more);
  }

  private static Look look(Plan plan, LookAt look, Voice voice) {
    Planting plant =
        plan.grove().plantings().stream()
            .filter(p -> p.id().equals(look.plantId()))
            .findFirst()
            .orElseThrow();
    Species species = plan.catalogue().species().get(plant.speciesKey());
    String key =
        switch (look.reason()) {
          case THIRSTY -> "advice.thirsty";
          case BY_HAND -> "advice.by-hand";
          case NEWLY_SET -> "advice.newly-set";
        };
    return new Look(
        plant.id(), voice.text(key, voice.say(species.name()), voice.units().text(look.amount())));
  }
}
