package org.grovewright.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.model.Grove;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
import org.grovewright.work.Recurrence.Frequency;

/** The upkeep of the watering: looking, flushing, cleaning, setting the timer, draining. */
final class SystemCare {
  /** Water freezes in tubing and valves below this, degrees Celsius. */
  private static final double FREEZING = 0;

  private final Grove grove;
  private final Catalogue catalogue;
  private final LocalDate from;
  private final LocalDate until;
  private final SortedSet<Integer> open = new TreeSet<>();

  SystemCare(Grove grove, Catalogue catalogue, LocalDate from, LocalDate until) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.from = from;
    this.until = until;
    for (int month = 1; month <= 12; month++) {
      if (ColdNights.lowest(grove.climate(), month, catalogue) >= FREEZING) {
        open.add(month);
      }
    }
  }

  List<CareEvent> events() {
    List<CareEvent> events = new ArrayList<>();
    if (open.isEmpty()) {
      // Where every month may freeze there is no season to plan by; the tubing is drained by hand.
      open.addAll(List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12));
    }
    Constant young = catalogue.constant("care.close-watch");
    LocalDate settled = from.plusDays(days(young));
    weekly(events, "inspect-first", from, settled.minusDays(1), "care.inspect-first-every");
    weekly(events, "inspect-later", settled, until, "care.inspect-later-every");
    weekly(events, "flush-first", from, settled.minusDays(1), "care.flush-first-every");
    weekly(events, "flush-later", settled, until, "care.flush-later-every");
    weekly(events, "filter", from, until, "care.filter-every");
    timer(events);
    allowedDays(events);
    yearly(
        events,
        "catch-can",
        CareEvent.Kind.WATERING,
        "Check emitters with measuring cans",
        "Catch the flow of a sample of emitters in each zone for a measured time and compare it"
            + " with the plan. Clean or change those that give much less than the others.",
        List.of());
    yearly(
        events,
        "backflow",
        CareEvent.Kind.WATERING,
        "Test the backflow preventer",
        "Have the backflow preventer tested as your local code asks, in many places by a licensed"
            + " tester.",
        List.of("backflow"));
    drain(events);
    return events;
  }

  private static long days(Constant constant) {
    return Math.round(constant.value() / 86_400);
  }

  private void weekly(
      List<CareEvent> events, String id, LocalDate start, LocalDate end, String constant) {
    Constant every = catalogue.constant(constant);
    int weeks = (int) Math.max(1, Math.round(every.value() / (7 * 86_400)));
    LocalDate last = end.isAfter(until) ? until : end;
    Recurrence all = new Recurrence(Frequency.WEEKLY, weeks, open, last);
    LocalDate first = start.plusWeeks(weeks);
    if (all.dates(first).isEmpty()) {
      return;
    }
    // A rule must start on a day that it names.
    LocalDate due = all.dates(first).get(0);
    String what = id.substring(0, id.contains("-") ? id.indexOf('-') : id.length());
    events.add(
        new CareEvent(
            "care." + id,
            what.equals("inspect") ? CareEvent.Kind.INSPECTION : CareEvent.Kind.WATERING,
            due,
            Optional.of(all),
            switch (what) {
              case "inspect" -> "Walk the rows";
              case "flush" -> "Flush the laterals";
              default -> "Clean the filter";
            },
            switch (what) {
              case "inspect" ->
                  "With the water on, walk every row: look for leaks, blocked or missing emitters,"
                      + " tubing out of place, dry or soaked soil, and plants that wilt. Due every"
                      + " {0}.";
              case "flush" ->
                  "Open the ends of a few laterals at a time, let them run until the water is"
                      + " clear, and close them. If that takes more than a minute or two, flush"
                      + " more often. Due every {0}.";
              default ->
                  "Shut the water, let the pressure off, take the screen or discs out and rinse"
                      + " them. Clean sooner when the flow falls. Due every {0}.";
            },
            List.of(new Quantity(weeks * 7 * 86_400.0, Kind.DAYS)),
            List.of(),
            every.source()));
  }

  private void timer(List<CareEvent> events) {
    Recurrence monthly = new Recurrence(Frequency.MONTHLY, 1, open, until);
    LocalDate first = from.getDayOfMonth() == 1 ? from : from.plusMonths(1).withDayOfMonth(1);
    List<LocalDate> dates = monthly.dates(first);
    if (!dates.isEmpty()) {
      events.add(
          new CareEvent(
              "care.timer",
              CareEvent.Kind.WATERING,
              dates.get(0),
              Optional.of(monthly),
              "Set the timer for the month",
              "Set every zone to the run time and days that the plan gives for this month and this"
                  + " year of growth.",
              List.of(),
              List.of("electricity"),
              Working.COMMON_PRACTICE));
    }
  }

  /** The days on which water may run, where a rule names them. */
  private void allowedDays(List<CareEvent> events) {
    WateringDays days = grove.supply().allowedDays();
    if (days.any()) {
      return;
    }
    Recurrence again = Recurrence.on(days, open, until);
    List<LocalDate> dates = again.dates(from);
    if (!dates.isEmpty()) {
      events.add(
          new CareEvent(
              "care.watering-days",
              CareEvent.Kind.WATERING,
              dates.get(0),
              Optional.of(again),
              "Water may run today",
              "This is one of the days on which watering is allowed. The timer runs as its card of"
                  + " the month says; see that it did, and look for plants that did not last since"
                  + " the day before.",
              List.of(),
              List.of(),
              "description: supply.days"));
    }
  }

  private void yearly(
      List<CareEvent> events,
      String id,
      CareEvent.Kind kind,
      String title,
      String message,
      List<String> cautions) {
    LocalDate first = from.plusYears(1);
    Recurrence yearly = new Recurrence(Frequency.YEARLY, 1, new TreeSet<>(), until);
    if (first.isAfter(until)) {
      return;
    }
    events.add(
        new CareEvent(
            "care." + id,
            kind,
            first,
            Optional.of(yearly),
            title,
            message,
            List.of(),
            cautions,
            Working.COMMON_PRACTICE));
  }

  /** Draining before the first month with frost and opening after the last, where there are any. */
  private void drain(List<CareEvent> events) {
    for (int month = 1; month <= 12; month++) {
      int before = (month + 10) % 12 + 1;
      if (open.contains(before) == open.contains(month)) {
        continue;
      }
      boolean drain = open.contains(before);
      LocalDate first = from.withDayOfMonth(1).withMonth(month);
      first = first.isBefore(from) ? first.plusYears(1) : first;
      if (first.isAfter(until)) {
        continue;
      }
      double lowest = ColdNights.lowest(grove.climate(), drain ? month : before, catalogue);
      events.add(
          new CareEvent(
              "care." + (drain ? "drain" : "open") + ".month-" + (month < 10 ? "0" : "") + month,
              CareEvent.Kind.COLD,
              first,
              Optional.of(new Recurrence(Frequency.YEARLY, 1, new TreeSet<>(), until)),
              drain ? "Drain the watering before frost" : "Open the watering after frost",
              drain
                  ? "Nights of {0} are to be expected. Shut the supply, open the ends of all"
                      + " laterals and drain filter, regulator, valves, backflow preventer and"
                      + " timer, or take them in. Water evergreens by hand in dry spells."
                  : "Refit what was taken in, flush main and laterals, look for leaks and set the"
                      + " timer. Nights down to {0} were to be expected until now.",
              List.of(new Quantity(lowest, Kind.TEMPERATURE)),
              drain ? List.of("backflow") : List.of("pressure", "backflow"),
              Working.COMMON_PRACTICE));
    }
  }
}
