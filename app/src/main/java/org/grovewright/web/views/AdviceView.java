package org.grovewright.web.views;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
import org.grovewright.quantity.Figure;
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
   * @param numbers what the words rest on, each with its working
   */
  public record ZoneLine(
      String zone, String action, String text, String more, List<Number> numbers) {}

  /**
   * A number of the advice with its name.
   *
   * @param label what it is
   * @param value the number
   */
  public record Number(String label, Shown value) {}

  /**
   * A plant to look at.
   *
   * @param plant its id
   * @param text why
   * @param amount the number of that text, with its working
   */
  public record Look(String plant, String text, Number amount) {}

  /** The advice of a day; nothing before the watering is set up and after the years planned. */
  static AdviceView of(Plan plan, LocalDate day, WaterLog log, Voice voice) {
    return made(plan, day, log, new FigureBook())
        .map(
            advice ->
                new AdviceView(
                    advice.zones().stream().map(zone -> line(zone, voice)).toList(),
                    advice.lookAt().stream()
                        .limit(MOST_LOOKS)
                        .map(look -> look(plan, look, voice))
                        .toList(),
                    advice.findings().stream()
                        .map(finding -> voice.remark(plan, finding))
                        .toList()))
        .orElse(NONE);
  }

  /** The figures of the advice of a day, by id. */
  public static Map<String, Figure> figures(Plan plan, LocalDate day, WaterLog log) {
    FigureBook book = new FigureBook();
    Map<String, Figure> figures = new LinkedHashMap<>();
    made(plan, day, log, book)
        .ifPresent(advice -> book.all().forEach(figure -> figures.put(figure.id(), figure)));
    return figures;
  }

  /** The advice of a day, its figures entered in a book; nothing outside the years planned. */
  static Optional<TodayAdvice> made(Plan plan, LocalDate day, WaterLog log, FigureBook book) {
    LocalDate until = plan.grove().start().plusYears(Programme.YEARS);
    if (day.isBefore(plan.care().from()) || !day.isBefore(until)) {
      return Optional.empty();
    }
    return Optional.of(
        TodayAdvice.of(plan, weather(plan.grove().climate(), log, day), log, day, book));
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
          case WAIT -> waits(zone, name, voice);
          case NOTHING_PLANTED -> voice.text("advice.nothing", name);
        };
    String more =
        switch (zone.action()) {
          case WATER ->
              zone.runs() > 1 ? voice.text("advice.runs", zone.runs(), zone.minutesPerRun()) : "";
          case SKIP ->
              zone.next()
                  .wants()
                  .map(next -> voice.text("advice.next", voice.language().dayOfYear(next)))
                  .orElse(voice.text("advice.none"));
          default -> "";
        };
    String action = zone.action().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return new ZoneLine(zone.zone(), action, text, more, numbers(zone, voice));
  }

  private static String waits(ZoneAdvice zone, String name, Voice voice) {
    String key =
        switch (zone.held()) {
          case NOT_ALLOWED -> "advice.wait-allowed";
          case HOURS -> "advice.wait-hours";
          case DAY_LIMIT -> "advice.wait-day";
          case WEEK_LIMIT -> "advice.wait-week";
          case CARD, FREE -> "advice.wait";
        };
    String again = zone.next().askAgain().map(voice.language()::dayOfYear).orElse("");
    return voice.text(key, name, again);
  }

  private static List<Number> numbers(ZoneAdvice zone, Voice voice) {
    List<Figure> figures = new ArrayList<>();
    if (zone.action() == ZoneAdvice.Action.WATER || zone.action() == ZoneAdvice.Action.WAIT) {
      figures.add(zone.times().wanted());
      figures.add(zone.times().time());
    }
    if (zone.action() == ZoneAdvice.Action.WATER) {
      figures.add(zone.volume());
    }
    if (zone.runs() > 1) {
      figures.add(zone.times().perRun());
    }
    zone.next().daysUntil().ifPresent(figures::add);
    if (!zone.assumed().days().isEmpty()) {
      figures.add(zone.assumed().count());
      zone.assumed().ifShut().ifPresent(figures::add);
    }
    return figures.stream().map(figure -> number(figure, voice)).toList();
  }

  private static Number number(Figure figure, Voice voice) {
    return new Number(
        voice.say(figure.label()), new Shown(voice.units().text(figure), figure.id()));
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
        plant.id(),
        voice.text(key, voice.say(species.name()), voice.units().text(look.amount())),
        number(look.amount(), voice));
  }
}
