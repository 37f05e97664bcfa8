package org.grovewright.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.grovewright.advice.TodayAdvice.MeasuredWeather;
import org.grovewright.advice.ZoneAdvice.Action;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

/** The advice of a dry summer where a drought rule lets water run on Tuesday and Saturday only. */
class AllowedDayAdviceTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Set<DayOfWeek> DAYS = Set.of(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY);

  /** Remarks that tell an owner to wait for another day. */
  private static final Set<String> NOT_TODAY = Set.of("advice.not-allowed-today", "advice.no-room");

  private static Plan plan() throws IOException {
    String text =
        Files.readString(Path.of("../examples/us-gravity.yaml"))
            .replace("  tank_volume:", "  days: [Tue, Sat]\n  tank_volume:");
    return Planner.plan(
        new DescriptionReader(CATALOGUE, null).read(text, "grove.yaml", Path.of("")), CATALOGUE);
  }

  private static MeasuredWeather dry(LocalDate until) {
    List<DayWeather> days = new ArrayList<>();
    for (LocalDate day = LocalDate.of(2027, 3, 1); !day.isAfter(until); day = day.plusDays(1)) {
      double warm = Math.sin((day.getDayOfYear() - 105) * 2 * Math.PI / 365);
      days.add(
          new DayWeather(
              day,
              9 + 6 * warm,
              22 + 11 * warm,
              OptionalDouble.of(0.5),
              OptionalDouble.empty(),
              OptionalDouble.of(2),
              OptionalDouble.empty(),
              OptionalDouble.empty(),
              OptionalDouble.of(0)));
    }
    return new MeasuredWeather(days, 2);
  }

  @Test
  void waterIsAdvisedOnAllowedDaysOnlyAndThenForTheDaysUntilTheNext() throws IOException {
    Plan plan = plan();
    List<WaterLog.Run> runs = new ArrayList<>();
    LocalDate from = LocalDate.of(2027, 7, 1);
    int watered = 0;
    int told = 0;
    for (LocalDate day = from; day.isBefore(from.plusDays(21)); day = day.plusDays(1)) {
      TodayAdvice advice =
          TodayAdvice.of(
              plan, dry(day), new WaterLog(runs, new TreeMap<>()), day, new FigureBook());
      boolean allowed = DAYS.contains(day.getDayOfWeek());
      LocalDate next = day;
      do {
        next = next.plusDays(1);
      } while (!DAYS.contains(next.getDayOfWeek()));
      for (Finding finding : advice.findings()) {
        if (!allowed && NOT_TODAY.contains(finding.code())) {
          assertThat(finding.message()).contains(next.toString());
          told++;
        }
      }
      for (ZoneAdvice zone : advice.zones()) {
        if (!allowed) {
          assertThat(zone.action()).isNotEqualTo(Action.WATER);
          assertThat(zone.minutes()).isZero();
        }
        if (allowed && day.isAfter(from.plusDays(3))) {
          // Young plants that wait four days in July want water on every day that allows it.
          assertThat(zone.action()).isEqualTo(Action.WATER);
          watered++;
        }
        runs.add(WaterLog.Run.timed(day, zone.zone(), zone.minutes() * 60.0));
      }
    }
    assertThat(watered).isPositive();
    assertThat(told).isPositive();
  }
}
