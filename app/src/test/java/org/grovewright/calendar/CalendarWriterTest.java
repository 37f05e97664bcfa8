package org.grovewright.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TimeZone;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.RRule;
import org.grovewright.ground.SampleGrove;
import org.grovewright.model.Preferences.Units;
import org.grovewright.model.WateringDays;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.texts.Language;
import org.grovewright.work.CareEvent;
import org.grovewright.work.WorkSession;
import org.junit.jupiter.api.Test;

/** Reads the calendar back with ical4j, which shares no code with the library that writes it. */
class CalendarWriterTest {
  private static final String NAME = "Hügel; \"Probe\", \\ Nord";
  private final SetUpGrove job = new SetUpGrove(frosty());

  private static SampleGrove frosty() {
    SampleGrove sample = SampleGrove.full();
    sample.coldestNight = 2;
    return sample;
  }

  private String text() {
    return text(job);
  }

  private static String text(SetUpGrove job) {
    ReaderUnits units = new ReaderUnits(Units.METRIC, "EUR");
    return new CalendarWriter(
            NAME, job.grove.start(), SetUpGrove.CATALOGUE, units::text, Language.ENGLISH)
        .write(job.work, job.care);
  }

  private static List<VEvent> events(String text) throws Exception {
    Calendar calendar = new CalendarBuilder().build(new StringReader(text));
    assertThat(calendar.validate().hasErrors()).isFalse();
    return calendar.<VEvent>getComponents(Component.VEVENT);
  }

  private static String value(VEvent event, String name) {
    return event.<Property>getProperty(name).orElseThrow().getValue();
  }

  @Test
  void anIndependentReaderFindsEveryEvent() throws Exception {
    List<VEvent> events = events(text());
    List<WorkSession> sessions =
        job.work.days().stream().flatMap(d -> d.sessions().stream()).toList();

    assertThat(sessions).hasSizeGreaterThan(20);
    assertThat(job.care.events()).hasSizeGreaterThan(15);
    assertThat(events).hasSize(sessions.size() + job.care.events().size());
    assertThat(events).extracting(e -> value(e, "UID")).doesNotHaveDuplicates();
    for (VEvent event : events) {
      assertThat(event.validate().hasErrors()).isFalse();
    }
  }

  @Test
  void sessionsAreAtFloatingTimes() throws Exception {
    List<VEvent> events = events(text());
    for (WorkSession session :
        job.work.days().stream().flatMap(d -> d.sessions().stream()).toList()) {
      String uid =
          "work." + session.taskId() + "." + session.part() + "@hugel-probe-nord.grovewright";
      VEvent event =
          events.stream().filter(e -> value(e, "UID").equals(uid)).findFirst().orElseThrow();
      DtStart<Temporal> start = event.<DtStart<Temporal>>getProperty("DTSTART").orElseThrow();
      assertThat(start.getDate()).isEqualTo(session.start()).isInstanceOf(LocalDateTime.class);
      assertThat(LocalDateTime.from(event.getEndDate().orElseThrow().getDate()))
          .isEqualTo(session.end());
    }
  }

  @Test
  void careFallsDueOnTheDaysThePlanSays() throws Exception {
    careFallsDue(job);
  }

  /** By the independent reader's own reckoning of BYDAY and BYMONTHDAY. */
  @Test
  void allowedDaysComeBackOnTheirDays() throws Exception {
    for (WateringDays days :
        List.of(
            WateringDays.on(Set.of(DayOfWeek.TUESDAY, DayOfWeek.SATURDAY)),
            WateringDays.on(WateringDays.Dates.ODD),
            WateringDays.on(WateringDays.Dates.EVEN))) {
      SampleGrove sample = frosty();
      sample.allowedDays = days;
      SetUpGrove held = new SetUpGrove(sample);
      assertThat(held.care.events()).extracting(CareEvent::id).contains("care.watering-days");
      careFallsDue(held);
    }
    assertThat(job.care.events()).extracting(CareEvent::id).doesNotContain("care.watering-days");
  }

  private static void careFallsDue(SetUpGrove job) throws Exception {
    List<VEvent> events = events(text(job));
    for (CareEvent care : job.care.events()) {
      VEvent event =
          events.stream()
              .filter(e -> value(e, "UID").startsWith(care.id() + "@"))
              .findFirst()
              .orElseThrow();
      DtStart<Temporal> start = event.<DtStart<Temporal>>getProperty("DTSTART").orElseThrow();
      assertThat(start.getDate()).isEqualTo(care.date()).isInstanceOf(LocalDate.class);
      if (care.recurrence().isPresent()) {
        RRule<LocalDate> rule = event.<RRule<LocalDate>>getProperty("RRULE").orElseThrow();
        assertThat(rule.getRecur().getDates(care.date(), care.date(), LocalDate.of(2100, 1, 1)))
            .as(care.id())
            .isEqualTo(care.dates());
      }
    }
  }

  @Test
  void wordsComeBackAsTheyWere() throws Exception {
    Calendar calendar = new CalendarBuilder().build(new StringReader(text()));
    assertThat(calendar.<Property>getProperty("X-WR-CALNAME").orElseThrow().getValue())
        .isEqualTo(NAME);
    VEvent dig =
        events(text()).stream()
            .filter(e -> value(e, "UID").startsWith("work.dig-hole.1@"))
            .findFirst()
            .orElseThrow();
    assertThat(value(dig, "DESCRIPTION"))
        .contains("Caution: Buried services. Before any digging")
        .contains(SetUpGrove.CATALOGUE.cautions().get("buried-services").text());
    assertThat(value(dig, "SUMMARY")).startsWith("Dig planting holes");
  }

  @Test
  void linesAreFoldedAsTheStandardAsks() {
    String text = text();
    assertThat(text.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
    assertThat(text.split("\r\n"))
        .allMatch(line -> line.getBytes(StandardCharsets.UTF_8).length <= 75);
    assertThat(text).contains("\r\nDTSTAMP:20260301T000000Z\r\n").doesNotContain("TZID");
  }

  @Test
  void isTheSameInEveryTimeZoneAndLocale() {
    TimeZone zone = TimeZone.getDefault();
    Locale locale = Locale.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
      Locale.setDefault(Locale.ROOT);
      String plain = text();
      for (String other : List.of("America/New_York", "Pacific/Apia", "Asia/Kathmandu")) {
        TimeZone.setDefault(TimeZone.getTimeZone(other));
        Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
        assertThat(text()).isEqualTo(plain);
        Locale.setDefault(Locale.forLanguageTag("tr-TR"));
        assertThat(text()).isEqualTo(plain);
      }
    } finally {
      TimeZone.setDefault(zone);
      Locale.setDefault(locale);
    }
  }
}
