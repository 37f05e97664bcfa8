package org.grovewright.work;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.demand.LaterWork;
import org.grovewright.finding.Finding;
import org.grovewright.ground.GroundPlan;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;

/**
 * The care of the grove in the years after it is set up.
 *
 * <p>Figures: {@code care.feeding.<year>-<month>}, the fertiliser of all feedings of a month.
 *
 * @param events what falls due, in order of the first day
 * @param from first day of the care, when the work is done
 * @param until last day of the care planned
 * @param findings remarks
 */
public record CareCalendar(
    List<CareEvent> events, LocalDate from, LocalDate until, List<Finding> findings) {
  /** Copies the lists. */
  public CareCalendar {
    events = List.copyOf(events);
    findings = List.copyOf(findings);
  }

  /**
   * Plans the care.
   *
   * @param grove gives plants, climate and the first day of the plan
   * @param catalogue gives intervals, cold limits and the mulch
   * @param ground gives feedings and mulch
   * @param work says when the grove is set up
   * @param later work of later years that is known now
   * @param figures takes the figures of the care
   */
  public static CareCalendar of(
      Grove grove,
      Catalogue catalogue,
      GroundPlan ground,
      WorkPlan work,
      List<LaterWork> later,
      FigureBook figures) {
    LocalDate done = work.finish().map(LocalDateTime::toLocalDate).orElse(grove.start());
    LocalDate from = setUp(work).orElse(done).plusDays(1);
    long years = Math.round(catalogue.constant("care.years").value());
    LocalDate until = grove.start().plusYears(years).minusDays(1);
    List<CareEvent> events = new ArrayList<>();
    if (!from.isAfter(until)) {
      events.addAll(new SystemCare(grove, catalogue, from, until).events());
      events.addAll(new PlantCare(grove, catalogue, ground, work, from, until).events(figures));
    }
    later.stream()
        .map(l -> event(l, grove))
        .filter(e -> !e.date().isAfter(until))
        .forEach(events::add);
    events.sort(Comparator.comparing(CareEvent::date).thenComparing(CareEvent::id));
    return new CareCalendar(events, from, until, List.of());
  }

  /** On the first of the month in which the year begins, with the timer's new card. */
  private static CareEvent event(LaterWork later, Grove grove) {
    return new CareEvent(
        later.id(),
        CareEvent.Kind.WATERING,
        grove.start().plusYears(later.year() - 1).withDayOfMonth(1),
        Optional.empty(),
        later.title(),
        later.message(),
        later.quantities(),
        List.of(),
        later.source());
  }

  /** When the watering is ready: from then on it is looked after, whatever is planted later. */
  private static Optional<LocalDate> setUp(WorkPlan work) {
    return work.tasks().stream()
        .filter(t -> t.kind().key().equals("set-timer"))
        .flatMap(t -> t.finish().stream())
        .max(Comparator.naturalOrder())
        .map(LocalDateTime::toLocalDate);
  }
}
