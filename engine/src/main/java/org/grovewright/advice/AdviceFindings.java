package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** What an advice assumes and where it falls short. */
final class AdviceFindings {
  private final LocalDate first;
  private final LocalDate date;

  /**
   * Remarks on an advice.
   *
   * @param first first of the days that were looked at
   * @param date the day of the advice
   */
  AdviceFindings(LocalDate first, LocalDate date) {
    this.first = first;
    this.date = date;
  }

  /** The remarks on a zone. */
  List<Finding> zone(ZoneAdvice zone) {
    List<Finding> findings = new ArrayList<>();
    if (!zone.assumed().days().isEmpty()) {
      findings.add(assumed(zone));
    }
    if (zone.wantedMinutes() > zone.minutes() + zone.runs()) {
      findings.add(noRoom(zone));
    }
    return findings;
  }

  private Finding assumed(ZoneAdvice zone) {
    int count = zone.assumed().days().size();
    LocalDate last = zone.assumed().days().get(count - 1);
    List<Quantity> quantities = new ArrayList<>();
    quantities.add(new Quantity(count, Kind.COUNT));
    String text =
        "The log does not tell of every watering of zone "
            + ZoneDesign.called(zone.zone())
            + ": {0} since "
            + first
            + (count == 1 ? " is" : " are")
            + " taken to have run as the timer card says, the last on "
            + last
            + ".";
    Optional<Figure> ifShut = zone.assumed().ifShut();
    if (ifShut.isPresent()) {
      quantities.add(new Quantity(ifShut.get().value(), Kind.RUN_TIME));
      text += " Had none of them run in the past seven days, it would want {1} today.";
    }
    text += " Note what was different, and the advice will be right again.";
    return new Finding("advice.assumed-waterings", Severity.NOTE, zone.zone(), text, quantities);
  }

  private Finding noRoom(ZoneAdvice zone) {
    String why =
        switch (zone.held()) {
          case NOT_ALLOWED -> "Today is not among the days on which watering is allowed.";
          case HOURS -> "The allowed hours of a day have no room for more.";
          case DAY_LIMIT -> "The limit of a day leaves no more.";
          case WEEK_LIMIT ->
              "The limit of a week leaves no more, by what was drawn today and on the six days"
                  + " before.";
          case CARD, FREE ->
              "More than twice the longest watering of its timer card would drown its other"
                  + " plants.";
        };
    return Finding.of(
        "advice.no-room",
        Severity.SHORTFALL,
        zone.zone(),
        "Zone "
            + ZoneDesign.called(zone.zone())
            + " wants {0} of watering today and can have {1}. "
            + why
            + " Ask again on "
            + zone.next().askAgain().orElse(date.plusDays(1))
            + ", and see first to the plants that are too dry.",
        new Quantity(zone.times().wanted().value(), Kind.RUN_TIME),
        new Quantity(zone.times().time().value(), Kind.RUN_TIME));
  }

  /** A remark on notes of days to come, if there are any. */
  Optional<Finding> later(WaterLog log) {
    long later =
        log.runs().stream().filter(run -> run.date().isAfter(date)).count()
            + log.gaugeM().tailMap(date, false).size();
    return later == 0
        ? Optional.empty()
        : Optional.of(
            Finding.of(
                "advice.later-notes",
                Severity.NOTE,
                "",
                "Notes of the log on days after " + date + " are not counted: {0}.",
                new Quantity(later, Kind.COUNT)));
  }
}
