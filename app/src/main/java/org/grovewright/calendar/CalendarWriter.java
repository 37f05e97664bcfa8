package org.grovewright.calendar;

import biweekly.ICalDataType;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.Transparency;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Caution;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.texts.Language;
import org.grovewright.work.CareCalendar;
import org.grovewright.work.CareEvent;
import org.grovewright.work.Recurrence;
import org.grovewright.work.WorkPlan;
import org.grovewright.work.WorkSession;
import org.grovewright.work.WorkTask;

/** Writes the calendar of one plan. */
public final class CalendarWriter {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss", Locale.ROOT);

  private final String siteName;
  private final LocalDate stamp;
  private final Catalogue catalogue;
  private final Function<Quantity, String> units;
  private final Language language;

  /**
   * Prepares a calendar.
   *
   * @param siteName name of the land, which is part of every event's id
   * @param stamp day the plan starts; it stands for the time of writing, so that the same plan
   *     always gives the same file
   * @param catalogue gives the cautions
   * @param units writes a quantity in the reader's units
   * @param language language of the reader
   */
  public CalendarWriter(
      String siteName,
      LocalDate stamp,
      Catalogue catalogue,
      Function<Quantity, String> units,
      Language language) {
    this.siteName = siteName;
    this.stamp = stamp;
    this.catalogue = catalogue;
    this.units = units;
    this.language = language;
  }

  /** The file's text, with the line ends of the standard (carriage return and line feed). */
  public String write(WorkPlan work, CareCalendar care) {
    ICalendar calendar = new ICalendar();
    calendar.setProductId("-//Grovewright//Plan//" + language.tag().toUpperCase(Locale.ROOT));
    calendar.addExperimentalProperty("X-WR-CALNAME", siteName);
    for (WorkTask task : work.tasks()) {
      for (WorkSession session : task.sessions()) {
        calendar.addEvent(session(task, session));
      }
    }
    for (CareEvent event : care.events()) {
      calendar.addEvent(care(event));
    }
    StringWriter text = new StringWriter();
    try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
      writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
      writer.write(calendar);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return LineFolding.fold(text.toString());
  }

  private VEvent session(WorkTask task, WorkSession session) {
    VEvent event = event("work." + task.id() + "." + session.part());
    time(event, "DTSTART", session.start());
    time(event, "DTEND", session.end());
    String where = task.subject().isEmpty() ? "" : ", " + language.say(task.subject());
    String part =
        session.parts() > 1 ? language.text("calendar.part", session.part(), session.parts()) : "";
    event.setSummary(language.say(task.kind().name()) + where + part);
    event.addCategories(language.text("calendar.work"));
    StringBuilder text = new StringBuilder();
    text.append(
        session.people() == 1
            ? language.text("calendar.for-one", session.minutes())
            : language.text("calendar.for-many", session.people(), session.minutes()));
    if (!task.segments().isEmpty()) {
      text.append('\n').append(language.text("calendar.segments", task.segments()));
    }
    amount(task).ifPresent(a -> text.append('\n').append(language.text("calendar.in-all", a)));
    event.setDescription(text + cautions(task.kind().cautions()));
    return event;
  }

  private Optional<String> amount(WorkTask task) {
    Kind kind =
        switch (task.kind().measure()) {
          case LENGTH -> Kind.LENGTH;
          case AREA -> Kind.AREA;
          case VOLUME -> Kind.BULK_VOLUME;
          case PIECE -> Kind.COUNT;
          case ONCE -> null;
        };
    return kind == null
        ? Optional.empty()
        : Optional.of(units.apply(new Quantity(task.amount(), kind)));
  }

  private VEvent care(CareEvent care) {
    VEvent event = event(care.id());
    day(event, "DTSTART", care.date());
    day(event, "DTEND", care.date().plusDays(1));
    care.recurrence()
        .ifPresent(r -> event.addExperimentalProperty("RRULE", ICalDataType.RECUR, rule(r)));
    event.setSummary(language.say(care.title()));
    event.addCategories(
        language.text("calendar.care"),
        language.text("calendar.kind." + care.kind().name().toLowerCase(Locale.ROOT)));
    event.setTransparency(Transparency.transparent());
    event.setDescription(message(care) + cautions(care.cautions()));
    return event;
  }

  private String message(CareEvent care) {
    String text = language.say(care.message());
    List<Quantity> quantities = care.quantities();
    // From the last on: a plant's own name may hold braces, a written quantity does not.
    for (int i = quantities.size() - 1; i >= 0; i--) {
      text = text.replace("{" + i + "}", units.apply(quantities.get(i)));
    }
    return text;
  }

  private String cautions(List<String> keys) {
    StringBuilder text = new StringBuilder();
    for (String key : keys) {
      Caution caution = catalogue.cautions().get(key);
      if (caution != null) {
        text.append("\n\n")
            .append(
                language.text(
                    "calendar.caution",
                    language.say(caution.title()),
                    language.say(caution.text())));
      }
    }
    return text.toString();
  }

  private VEvent event(String id) {
    VEvent event = new VEvent();
    event.setUid(id + "@" + FigureBook.slug(siteName) + ".grovewright");
    event.setDateTimeStamp(Date.from(stamp.atStartOfDay(ZoneOffset.UTC).toInstant()));
    return event;
  }

  /*
   * Start and end go in as text: the library's own dates are instants, and an instant cannot hold
   * a local time that some time zone leaves out when its clocks go forward.
   */
  private static void time(VEvent event, String name, LocalDateTime time) {
    event.addExperimentalProperty(name, TIME.format(time));
  }

  private static void day(VEvent event, String name, LocalDate day) {
    event.addExperimentalProperty(name, ICalDataType.DATE, DAY.format(day));
  }

  private static String days(WateringDays days) {
    if (days.any()) {
      return "";
    }
    return days.byWeek()
        ? ";BYDAY="
            + days.weekdays().stream()
                .map(day -> day.name().substring(0, 2))
                .collect(Collectors.joining(","))
        : ";BYMONTHDAY="
            + IntStream.rangeClosed(1, 31)
                .filter(day -> day % 2 == (days.dates() == WateringDays.Dates.ODD ? 1 : 0))
                .mapToObj(Integer::toString)
                .collect(Collectors.joining(","));
  }

  private static String rule(Recurrence recurrence) {
    String months =
        recurrence.months().isEmpty() || recurrence.months().size() == 12
            ? ""
            : ";BYMONTH="
                + recurrence.months().stream()
                    .map(m -> Integer.toString(m))
                    .collect(Collectors.joining(","));
    String interval = recurrence.interval() == 1 ? "" : ";INTERVAL=" + recurrence.interval();
    return "FREQ="
        + recurrence.frequency()
        + interval
        + months
        + days(recurrence.days())
        + ";UNTIL="
        + DAY.format(recurrence.until());
  }
}
