package org.grovewright.calendar;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.demand.WorkAmount;
import org.grovewright.ground.GroundPlan;
import org.grovewright.ground.SampleGrove;
import org.grovewright.model.Crew;
import org.grovewright.model.Grove;
import org.grovewright.model.Site;
import org.grovewright.model.Supply.Hours;
import org.grovewright.quantity.FigureBook;
import org.grovewright.work.CareCalendar;
import org.grovewright.work.WorkPlan;

/** The work and care of the invented sample grove, with the amounts of an invented watering. */
final class SetUpGrove {
  static final Catalogue CATALOGUE = SampleGrove.CATALOGUE;

  final Grove grove;
  final FigureBook figures = new FigureBook();
  final GroundPlan ground;
  final WorkPlan work;
  final CareCalendar care;

  SetUpGrove(SampleGrove sample) {
    grove = withCrew(sample.grove());
    ground = GroundPlan.of(grove, CATALOGUE, figures);
    List<WorkAmount> all = new ArrayList<>(ground.work());
    all.addAll(watering());
    work = WorkPlan.of(all, grove, CATALOGUE, figures);
    care = CareCalendar.of(grove, CATALOGUE, ground, work, List.of(), figures);
  }

  /** Two people on three evenings and a Saturday. */
  private static Grove withCrew(Grove plain) {
    EnumMap<DayOfWeek, Hours> hours = new EnumMap<>(DayOfWeek.class);
    Hours evening = new Hours(LocalTime.of(18, 0), LocalTime.of(20, 0));
    hours.put(DayOfWeek.TUESDAY, evening);
    hours.put(DayOfWeek.WEDNESDAY, evening);
    hours.put(DayOfWeek.THURSDAY, evening);
    hours.put(DayOfWeek.SATURDAY, new Hours(LocalTime.of(8, 0), LocalTime.of(13, 0)));
    Site site = plain.site();
    return new Grove(
        new Site(
            "Hügel; \"Probe\", \\ Nord",
            site.latitudeDeg(),
            site.longitudeDeg(),
            site.elevationM(),
            site.boundary(),
            site.northBearingDeg(),
            site.fixtures(),
            site.spotHeights()),
        plain.soil(),
        plain.climate(),
        plain.supply(),
        plain.rows(),
        plain.plantings(),
        plain.watering(),
        plain.stock(),
        new Crew(2, hours, Set.of(plain.start().plusDays(6))),
        plain.start(),
        plain.preferences());
  }

  private static List<WorkAmount> watering() {
    List<WorkAmount> work = new ArrayList<>();
    work.add(new WorkAmount("collect-materials", "", 1, ""));
    work.add(new WorkAmount("dig-trench", "", 25 * 0.05, ""));
    work.add(new WorkAmount("lay-main", "", 25, ""));
    work.add(new WorkAmount("cement-joint", "", 12, ""));
    work.add(new WorkAmount("backfill-trench", "", 25 * 0.05, ""));
    work.add(new WorkAmount("assemble-head", "", 2, ""));
    for (String zone : List.of("zone 1", "zone 2")) {
      work.add(new WorkAmount("flush", zone, 1, ""));
      work.add(new WorkAmount("leak-test", zone, 1, ""));
      work.add(new WorkAmount("flush-lateral", zone, 2, ""));
      work.add(new WorkAmount("fit-emitter", zone, 27, ""));
      work.add(new WorkAmount("catch-can-check", zone, 9, ""));
      work.add(new WorkAmount("set-timer", zone, 1, ""));
    }
    for (String row : List.of("Row A", "Row B")) {
      work.add(new WorkAmount("lay-lateral", row, 80, ""));
      work.add(new WorkAmount("pin-tubing", row, 60, ""));
    }
    return work;
  }
}
