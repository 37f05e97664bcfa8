package org.grovewright.web.views;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.grovewright.advice.WaterLog;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;
import org.grovewright.work.CareEvent;
import org.grovewright.work.WorkDay;
import org.grovewright.work.WorkSession;
import org.grovewright.work.WorkTask;

/**
 * What do I do today, or this weekend?
 *
 * @param date the day asked for, ISO 8601
 * @param days that day and the days after it, to the end of the next weekend
 * @param lately care that fell due in the week before
 * @param advice whether to water on that day
 * @param timer what the timer should be set to now, empty before the watering is set up
 * @param wateringFrom first day of the watering, where that is still to come; else empty
 * @param nextWork the next day of work after the days shown; else empty
 * @param finish the last day of work, where that is still to come; else empty
 */
public record TodayPage(
    String date,
    List<Day> days,
    List<Care> lately,
    AdviceView advice,
    List<Timer> timer,
    String wateringFrom,
    String nextWork,
    String finish) {
  /** Days shown: from any weekday on these hold a whole weekend. */
  private static final int DAYS = 8;

  private static final int LATELY = 7;

  /**
   * One day.
   *
   * @param date the day, ISO 8601
   * @param title the day in words
   * @param weekend whether it is a Saturday or Sunday
   * @param jobs work planned
   * @param care care that falls due
   * @param waterings zones that water on it
   * @param cautions cautions of its jobs and care, each once
   */
  public record Day(
      String date,
      String title,
      boolean weekend,
      List<Job> jobs,
      List<Care> care,
      List<Timer> waterings,
      List<CautionText> cautions) {}

  /**
   * One stretch of work.
   *
   * @param from time it starts
   * @param to time it ends
   * @param name what is done
   * @param place where, empty for the whole grove
   * @param people who works, in words
   * @param part which part of a long job it is and on which segments of the trench it is done,
   *     empty for others
   * @param work work of one person
   */
  public record Job(
      String from, String to, String name, String place, String people, String part, Shown work) {}

  /**
   * Care that falls due.
   *
   * @param id its id
   * @param kind its kind, lower case
   * @param date the day, ISO 8601
   * @param day the day in words
   * @param title a few words
   * @param text what to do
   */
  public record Care(String id, String kind, String date, String day, String title, String text) {}

  /**
   * A zone's timer.
   *
   * @param zone id of the zone
   * @param name what it is called
   * @param every how often it waters
   * @param starts when it starts
   * @param minutes how long it runs
   */
  public record Timer(String zone, String name, Shown every, String starts, Shown minutes) {}

  /**
   * The page of a plan on a day.
   *
   * @param log what the journal says of rain and watering
   */
  public static TodayPage of(Plan plan, LocalDate today, WaterLog log, Voice voice) {
    List<Day> days = new ArrayList<>();
    for (int i = 0; i < DAYS; i++) {
      days.add(day(plan, today.plusDays(i), voice));
    }
    LocalDate last = today.plusDays(DAYS - 1L);
    LocalDate watering = plan.care().from();
    boolean waits = today.isBefore(watering);
    return new TodayPage(
        today.toString(),
        days,
        care(plan, today.minusDays(LATELY), today.minusDays(1), voice),
        AdviceView.of(plan, today, log, voice),
        waits ? List.of() : timers(plan, today, voice),
        waits ? voice.language().date(watering) : "",
        plan.work().days().stream()
            .map(WorkDay::date)
            .filter(date -> date.isAfter(last))
            .findFirst()
            .map(date -> voice.language().date(date))
            .orElse(""),
        plan.work()
            .finish()
            .map(end -> end.toLocalDate())
            .filter(end -> !end.isBefore(today))
            .map(end -> voice.language().date(end))
            .orElse(""));
  }

  private static Day day(Plan plan, LocalDate date, Voice voice) {
    List<Job> jobs = new ArrayList<>();
    List<String> cautions = new ArrayList<>();
    plan.work().days().stream()
        .filter(day -> day.date().equals(date))
        .flatMap(day -> day.sessions().stream())
        .forEach(
            session -> {
              WorkTask task = plan.work().find(session.taskId()).orElseThrow();
              jobs.add(job(plan, session, task, voice));
              cautions.addAll(task.kind().cautions());
            });
    due(plan, date).forEach(event -> cautions.addAll(event.cautions()));
    return new Day(
        date.toString(),
        voice.language().dayOfYear(date),
        date.getDayOfWeek().getValue() >= 6,
        jobs,
        care(plan, date, date, voice),
        date.isBefore(plan.care().from()) ? List.of() : waterings(plan, date, voice),
        CautionText.of(cautions, plan.catalogue(), voice));
  }

  private static Job job(Plan plan, WorkSession session, WorkTask task, Voice voice) {
    return new Job(
        voice.language().time(session.start().toLocalTime()),
        voice.language().time(session.end().toLocalTime()),
        voice.say(task.kind().name()),
        voice.subject(plan, task.subject()),
        voice.language().count("today.people", session.people()),
        part(session, task, voice),
        voice.shown(
            plan, "work." + task.id() + ".person-time", task.personSeconds(), Kind.WORK_TIME));
  }

  /** Which part of a long job it is, and on which segments of the trench it is done. */
  private static String part(WorkSession session, WorkTask task, Voice voice) {
    List<String> words = new ArrayList<>();
    if (session.parts() > 1) {
      words.add(voice.text("today.part", session.part(), session.parts()));
    }
    if (!task.segments().isEmpty()) {
      words.add(voice.text("today.segments", task.segments()));
    }
    return String.join(", ", words);
  }

  private static List<CareEvent> due(Plan plan, LocalDate date) {
    return plan.care().events().stream().filter(event -> event.dates().contains(date)).toList();
  }

  private static List<Care> care(Plan plan, LocalDate from, LocalDate to, Voice voice) {
    List<Care> care = new ArrayList<>();
    for (LocalDate date = from; !date.isAfter(to); date = date.plusDays(1)) {
      for (CareEvent event : due(plan, date)) {
        care.add(
            new Care(
                event.id(),
                event.kind().name().toLowerCase(Locale.ROOT),
                date.toString(),
                voice.language().dayOfYear(date),
                voice.say(event.title()),
                voice.say(event.message(), event.quantities())));
      }
    }
    return care;
  }

  private static List<Timer> timers(Plan plan, LocalDate date, Voice voice) {
    return settings(plan, date).stream().map(setting -> timer(plan, setting, voice)).toList();
  }

  /** The zones that water on a day; their cycles count from the start of the plan. */
  private static List<Timer> waterings(Plan plan, LocalDate date, Voice voice) {
    LocalDate first = plan.grove().start();
    return settings(plan, date).stream()
        .filter(setting -> setting.rhythm().waters(date, first))
        .map(setting -> timer(plan, setting, voice))
        .toList();
  }

  private static List<TimerSetting> settings(Plan plan, LocalDate date) {
    PlanMonth when = PlanMonth.of(date, plan.grove());
    return plan.watering().zones().stream()
        .map(zone -> WaterPage.setting(plan, zone.design().id(), when))
        .flatMap(Optional::stream)
        .toList();
  }

  private static Timer timer(Plan plan, TimerSetting setting, Voice voice) {
    return new Timer(
        setting.zone(),
        voice.zone(setting.zone()),
        WaterPage.every(plan, setting, voice),
        WaterPage.starts(setting, voice),
        WaterPage.minutes(plan, setting, voice));
  }
}
