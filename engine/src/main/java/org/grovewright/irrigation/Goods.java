package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.grovewright.model.Supply.SupplyKind;
import org.grovewright.model.Watering.Run;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;
import org.locationtech.jts.geom.Geometry;

/**
 * What must be bought and done for a watering system.
 *
 * @param trenchM length of trench, metres; mains that share a way share a trench
 * @param requirements goods
 * @param work work
 * @param findings remarks on the way of the mains and on devices
 */
record Goods(
    double trenchM, List<Requirement> requirements, List<WorkAmount> work, List<Finding> findings) {

  /** Counts a solved system. */
  static Goods of(
      List<ZoneResult> zones,
      Grove grove,
      Catalogue catalogue,
      ZoneNetwork.Site site,
      Rulebook rules,
      FigureBook book) {
    return zones.isEmpty()
        ? new Goods(0, List.of(), List.of(), List.of())
        : new Counter(zones, grove, catalogue, site, rules, book).count();
  }

  private static final class Counter {
    private static final double CORNER_RAD = Math.PI / 4;

    private final List<ZoneResult> zones;
    private final Grove grove;
    private final ZoneNetwork.Site site;
    private final Rulebook rules;
    private final FigureBook book;
    private final HeadParts parts;
    private final double pinSpacingM;
    private final double rigidPieceM;
    private final double ventRiseM;
    private final GoodsList goods = new GoodsList();
    private final List<WorkAmount> work = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private int cementJoints;

    Counter(
        List<ZoneResult> zones,
        Grove grove,
        Catalogue catalogue,
        ZoneNetwork.Site site,
        Rulebook rules,
        FigureBook book) {
      this.zones = zones;
      this.grove = grove;
      this.site = site;
      this.rules = rules;
      this.book = book;
      this.parts = new HeadParts(catalogue);
      this.pinSpacingM = catalogue.constant("irrigation.pin-spacing").value();
      this.rigidPieceM = catalogue.constant("irrigation.rigid-piece").value();
      this.ventRiseM = catalogue.constant("irrigation.vent-rise").value();
    }

    Goods count() {
      Geometry ways = mainWays();
      double trench = ways.getLength();
      book.enter(
          "irrigation.trench-length",
          "Length of trench for the mains",
          trench,
          Kind.LENGTH,
          Working.of("length of all ways of mains, shared ways once", "measured on the plan"));
      head();
      for (ZoneResult zone : zones) {
        zone(zone);
      }
      workOnMains(trench);
      remarkOnWays(ways);
      return new Goods(trench, goods.requirements(book), work, findings);
    }

    private Geometry mainWays() {
      List<Geometry> legs = new ArrayList<>();
      for (ZoneResult zone : zones) {
        for (List<Point> leg : zone.design().main()) {
          if (Paths.length(leg) > 0) {
            legs.add(Shapes.of(new Shape.Line(leg)));
          }
        }
      }
      return Shapes.union(legs);
    }

    private void head() {
      SupplyKind kind = grove.supply().kind();
      grove
          .supply()
          .pipe()
          .ifPresent(
              p -> {
                if (grove.watering().propose() && kind == SupplyKind.GRAVITY_TANK) {
                  goods.length(p.pipeKey(), p.lengthM(), "supply pipe");
                }
              });
      boolean above = SiteParts.plantsAbove(grove, site.supply(), site.terrain());
      Optional<Part> backflow = parts.backflow(kind, above);
      backflow.ifPresent(p -> goods.pieces(p.key(), 1, "head of the system"));
      findings.add(
          Finding.of(
              backflow.isPresent() ? "irrigation.backflow" : "irrigation.backflow-tank",
              Severity.NOTE,
              "supply",
              backflow.isPresent()
                  ? backflow.get().name()
                      + " is planned to keep garden water out of the drinking water"
                      + (above ? ", because plants stand higher than the outlet." : ".")
                      + " Your local code decides which device is needed and who may fit it."
                  : "A tank of its own needs no backflow device, but if it is ever topped up from"
                      + " the mains, your local code decides what must stand between them."));
      for (Part timer : parts.timers(kind, zones.size())) {
        goods.pieces(timer.key(), 1, "head of the system");
      }
      ZoneResult largest =
          zones.stream().max(Comparator.comparingDouble(ZoneResult::flowM3PerS)).orElseThrow();
      goods.pieces(largest.design().filter().key(), 1, "head of the system");
      for (String role : List.of("gauge", "gauge-tee", "thread-tape", "punch")) {
        parts
            .fitting(role, largest.design().mainPipe())
            .ifPresent(p -> goods.pieces(p.key(), 1, "head of the system"));
      }
      work.add(new WorkAmount("assemble-head", "", zones.size(), ""));
    }

    private void zone(ZoneResult result) {
      ZoneDesign zone = result.design();
      zone.regulator().ifPresent(r -> goods.pieces(r.key(), 1, zone.id()));
      main(zone);
      int lines = 0;
      for (ZoneDesign.LateralDesign lateral : zone.laterals()) {
        lateral(zone, lateral);
        lines += lateral.lines().size();
      }
      for (ZoneResult.OutletResult o : result.outlets()) {
        goods.pieces(o.outlet().emitter().key(), 1, o.outlet().id());
        if (o.outlet().feederM() > 0) {
          goods.length(site.feeder().key(), o.outlet().feederM(), o.outlet().id());
        }
      }
      if (rise(zone) > ventRiseM) {
        fitting("air-vent", zone.mainPipe(), 1, zone.id() + ", highest point");
      }
      work.add(new WorkAmount("flush", zone.id(), 1, ""));
      work.add(new WorkAmount("leak-test", zone.id(), 1, ""));
      work.add(new WorkAmount("flush-lateral", zone.id(), lines, ""));
      work.add(new WorkAmount("fit-emitter", zone.id(), result.outlets().size(), emitters(zone)));
      int cans = Math.min(result.outlets().size(), rules.catchCans());
      work.add(new WorkAmount("catch-can-check", zone.id(), cans, ""));
      work.add(new WorkAmount("set-timer", zone.id(), 1, ""));
    }

    private static String emitters(ZoneDesign zone) {
      return SystemFigures.zoneId(zone.id()) + "emitters";
    }

    private double rise(ZoneDesign zone) {
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (Outlet outlet : zone.outlets()) {
        double height = site.terrain().heightAt(outlet.at());
        least = Math.min(least, height);
        most = Math.max(most, height);
      }
      return most - least;
    }

    private void main(ZoneDesign zone) {
      Pipe pipe = zone.mainPipe();
      int joints = 2;
      int last = zone.main().size() - 1;
      for (int i = 0; i <= last; i++) {
        List<Point> leg = zone.main().get(i);
        double length = Paths.length(leg);
        if (length == 0) {
          continue;
        }
        String where = zone.id() + ", main to " + zone.laterals().get(i).id();
        goods.length(pipe.key(), length, where);
        int bends = corners(leg);
        fitting("elbow", pipe, bends, where);
        fitting(i < last ? "tee" : "elbow", pipe, 1, where);
        joints += 2 * bends + (i < last ? 3 : 2);
        if (pipe.joint() == Pipe.Joint.SOLVENT_CEMENT) {
          int couplings = (int) Math.floor(length / rigidPieceM);
          // The couplings themselves are bought with the cutting plan, which knows the joints.
          joints += 2 * couplings;
        }
      }
      fitting("adaptor", pipe, 1, zone.id() + ", head");
      if (pipe.joint() == Pipe.Joint.SOLVENT_CEMENT) {
        cementJoints += joints;
      }
    }

    private void lateral(ZoneDesign zone, ZoneDesign.LateralDesign lateral) {
      Pipe tubing = lateral.tubing();
      String where = zone.id() + ", " + lateral.id();
      if (parts.fitting("take-off", zone.mainPipe()).isPresent()) {
        fitting("take-off", zone.mainPipe(), 1, where);
      }
      fitting("start", tubing, 1, where);
      double length = 0;
      for (Line line : lateral.lines()) {
        goods.length(tubing.key(), line.lengthM(), zone.id() + ", " + line.id());
        length += line.lengthM();
        fitting("elbow", tubing, corners(line.path()), where);
      }
      if (lateral.run() == Run.DEAD_END) {
        fitting("end-flush", tubing, 1, where);
      } else if (lateral.run() == Run.TWO_SIDED) {
        fitting("tee", tubing, 1, where);
        fitting("end-flush", tubing, 2, where);
      } else {
        // A loop is flushed through a tee at its far end.
        fitting("tee", tubing, 2, where);
        fitting("end-flush", tubing, 1, where);
      }
      int pins = (int) Math.ceil(length / pinSpacingM);
      fitting("hold-down", tubing, pins, where);
      work.add(new WorkAmount("lay-lateral", lateral.id(), length, ""));
      work.add(new WorkAmount("pin-tubing", lateral.id(), pins, ""));
    }

    private void workOnMains(double trench) {
      double mains = 0;
      for (ZoneResult zone : zones) {
        for (List<Point> leg : zone.design().main()) {
          mains += Paths.length(leg);
        }
      }
      if (mains <= 0) {
        return;
      }
      work.add(new WorkAmount("dig-trench", "", trench, "irrigation.trench-length"));
      work.add(new WorkAmount("lay-main", "", mains, "irrigation.trench-length"));
      work.add(new WorkAmount("backfill-trench", "", trench, "irrigation.trench-length"));
      if (cementJoints > 0) {
        work.add(new WorkAmount("cement-joint", "", cementJoints, ""));
        Pipe pipe = zones.get(0).design().mainPipe();
        fitting("cement", pipe, 1, cementJoints + " joints");
        fitting("primer", pipe, 1, cementJoints + " joints");
      }
    }

    private void fitting(String role, Pipe pipe, int count, String where) {
      if (count == 0) {
        return;
      }
      Optional<Part> part = parts.fitting(role, pipe);
      if (part.isPresent()) {
        goods.pieces(part.get().key(), count, where);
      } else {
        findings.add(
            Finding.of(
                "irrigation.no-fitting",
                Severity.NOTE,
                pipe.key(),
                "The catalogue has no " + role + " for " + pipe.name() + "; add it to your list."));
      }
    }

    private static int corners(List<Point> path) {
      int corners = 0;
      for (int i = 1; i < path.size() - 1; i++) {
        double in = bearing(path.get(i - 1), path.get(i));
        double out = bearing(path.get(i), path.get(i + 1));
        double turn = Math.abs(Math.IEEEremainder(out - in, 2 * Math.PI));
        if (turn > CORNER_RAD) {
          corners++;
        }
      }
      return corners;
    }

    private static double bearing(Point a, Point b) {
      return Math.atan2(b.y() - a.y(), b.x() - a.x());
    }

    private void remarkOnWays(Geometry ways) {
      for (Fixture fixture : grove.site().fixtures()) {
        boolean inTheWay =
            fixture.kind() == FixtureKind.BUILDING
                || fixture.kind() == FixtureKind.SEPTIC_FIELD
                || fixture.kind() == FixtureKind.PAVING
                || fixture.kind() == FixtureKind.TANK;
        boolean service = fixture.kind() == FixtureKind.BURIED_SERVICE;
        if (!inTheWay && !service) {
          continue;
        }
        Geometry shape = Shapes.of(fixture.shape());
        double near = service ? rules.serviceClearM() : 0;
        if (ways.distance(shape) > near
            || !service && ways.intersection(shape).getLength() < 0.01) {
          continue;
        }
        findings.add(
            Finding.of(
                service ? "irrigation.trench-near-service" : "irrigation.main-crosses",
                service ? Severity.NOTE : Severity.SHORTFALL,
                fixture.id(),
                service
                    ? "The trench comes near this buried service. Have it marked before you dig,"
                        + " and dig by hand there."
                    : "The main runs through it. Lead it round by giving bends in the route."));
      }
    }
  }
}
