package org.grovewright.sheets;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.grovewright.catalogue.Caution;
import org.grovewright.plan.Plan;
import org.grovewright.work.CareCalendar;
import org.grovewright.work.CareEvent;
import org.grovewright.work.Recurrence;

/** Care through the year: twelve months at a glance, then what each kind of care asks for. */
final class CareSection {
  private static final int MONTHS = 12;

  private final Plan plan;
  private final Workings workings;
  private final ReaderUnits units;

  CareSection(Plan plan, Workings workings, ReaderUnits units) {
    this.plan = plan;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    CareCalendar care = plan.care();
    List<Block> blocks = new ArrayList<>();
    if (care.events().isEmpty()) {
      blocks.add(Block.Paragraph.of("No care falls due within the years planned."));
      return blocks;
    }
    blocks.add(
        Block.Paragraph.of(
            "The first twelve months after the grove is set up. Care goes on until "
                + Words.shortDate(care.until())
                + "; what comes back is listed below with its days."));
    blocks.add(year(care));
    Map<CareEvent.Kind, List<CareEvent>> byKind = new TreeMap<>();
    care.events()
        .forEach(event -> byKind.computeIfAbsent(event.kind(), k -> new ArrayList<>()).add(event));
    byKind.forEach((kind, events) -> blocks.add(new Block.Fold(title(kind), false, about(events))));
    return blocks;
  }

  private Block year(CareCalendar care) {
    List<List<Cell>> rows = new ArrayList<>();
    YearMonth first = YearMonth.from(care.from());
    for (int i = 0; i < MONTHS; i++) {
      YearMonth month = first.plusMonths(i);
      Map<String, List<Integer>> days = new LinkedHashMap<>();
      for (CareEvent event : care.events()) {
        for (LocalDate date : event.dates()) {
          if (YearMonth.from(date).equals(month)) {
            days.computeIfAbsent(event.title(), t -> new ArrayList<>()).add(date.getDayOfMonth());
          }
        }
      }
      List<String> jobs = new ArrayList<>();
      days.forEach((job, on) -> jobs.add(say(job) + " (" + onDays(on) + ")"));
      String feeding = "care.feeding." + month;
      rows.add(
          List.of(
              Cell.of(Words.month(month.getMonthValue()) + " " + month.getYear()),
              Cell.of(jobs.isEmpty() ? "nothing planned" : String.join("; ", jobs)),
              workings.cell(feeding)));
    }
    return new Block.Table(
        "Care in the first twelve months",
        List.of(
            Block.Column.words("Month"),
            Block.Column.words("What to do, and on which days"),
            Block.Column.numbers("Fertiliser")),
        rows);
  }

  private String say(String english) {
    return units.language().say(english);
  }

  private String onDays(List<Integer> days) {
    return Words.and(
        days.stream().distinct().sorted().map(String::valueOf).toList(), units.language());
  }

  private List<Block> about(List<CareEvent> events) {
    List<Block> blocks = new ArrayList<>();
    List<Block.Remark> remarks = new ArrayList<>();
    Set<String> cautions = new LinkedHashSet<>();
    for (CareEvent event : events) {
      remarks.add(
          new Block.Remark(
              say(event.title()) + ", " + say(when(event)),
              Words.message(event.message(), event.quantities(), units)));
      cautions.addAll(event.cautions());
    }
    for (String key : cautions) {
      Caution caution = plan.catalogue().cautions().get(key);
      blocks.add(new Block.Caution("", caution.title(), caution.text()));
    }
    blocks.add(new Block.Remarks(false, remarks));
    return blocks;
  }

  private static String when(CareEvent event) {
    String first = Words.shortDate(event.date());
    return event
        .recurrence()
        .map(
            again ->
                (again.days().any()
                        ? every(again.interval(), again.frequency())
                        : Words.on(again.days()))
                    + " from "
                    + first
                    + (again.months().isEmpty() || again.months().size() == MONTHS
                        ? ""
                        : ", in " + Words.and(again.months().stream().map(Words::month).toList())))
        .orElse(first);
  }

  private static String every(int interval, Recurrence.Frequency frequency) {
    String unit =
        switch (frequency) {
          case DAILY -> "day";
          case WEEKLY -> "week";
          case MONTHLY -> "month";
          case YEARLY -> "year";
        };
    return interval == 1 ? "every " + unit : "every " + interval + " " + unit + "s";
  }

  private static String title(CareEvent.Kind kind) {
    return switch (kind) {
      case FEEDING -> "Feeding";
      case INSPECTION -> "Looking after the rows";
      case WATERING -> "Looking after the watering";
      case MULCH -> "Mulch";
      case MEASURING -> "Measuring";
      case SUPPORT -> "Stakes and ties";
      case COLD -> "Cold";
    };
  }
}
