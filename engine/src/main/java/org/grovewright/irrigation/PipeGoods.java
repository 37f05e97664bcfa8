package org.grovewright.irrigation;

import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Point;
import org.grovewright.model.Watering.Run;
import org.grovewright.trench.LaidMain;

/**
 * Counts pipe with its fittings and the work that depends on the pipe, into lists of goods and
 * work. The main and each lateral are counted apart, so that the choice of sizes can price each
 * alone.
 */
final class PipeGoods {
  private static final double CORNER_RAD = Math.PI / 4;

  /** Places nearer than this are one, metres. */
  private static final double SAME_M = 1e-3;

  private final HeadParts parts;
  private final LaidMain laid;
  private final Terrain terrain;
  private final Rulebook rules;
  private final GoodsList goods;
  private final List<WorkAmount> work;
  private final List<Finding> findings;
  private int cementJoints;

  PipeGoods(
      ZoneNetwork.Site site,
      Rulebook rules,
      GoodsList goods,
      List<WorkAmount> work,
      List<Finding> findings) {
    this.parts = site.parts();
    this.laid = site.laidMain();
    this.terrain = site.terrain();
    this.rules = rules;
    this.goods = goods;
    this.work = work;
    this.findings = findings;
  }

  /** Joints to be cemented so far. */
  int cementJoints() {
    return cementJoints;
  }

  /** The main with its fittings; of what lies there already only the joints to it. */
  void main(ZoneDesign zone) {
    Pipe pipe = zone.mainPipe();
    int joints = laid.isEmpty() ? 2 : 0;
    List<List<List<Point>>> missing = laid.missing(zone.main());
    for (int i = 0; i < missing.size(); i++) {
      String where = zone.id() + ", main to " + zone.laterals().get(i).id();
      for (List<Point> part : missing.get(i)) {
        double length = terrain.lengthOver(part);
        goods.length(pipe.key(), length, where);
        int bends = corners(part);
        fitting("elbow", pipe, bends, where);
        boolean on = goesOn(part, missing, i);
        fitting(on ? "tee" : "elbow", pipe, 1, where);
        joints += 2 * bends + (on ? 3 : 2);
        if (laid.reaches(part.get(0))) {
          boolean end = laid.endsAt(part.get(0));
          fitting(end ? "coupling" : "tee", pipe, 1, where + ", at the laid main");
          joints += end ? 2 : 3;
        }
        if (pipe.joint() == Pipe.Joint.SOLVENT_CEMENT) {
          int couplings = (int) Math.floor(length / rules.rigidPieceM());
          // The couplings themselves are bought with the cutting plan, which knows the joints.
          joints += 2 * couplings;
        }
      }
    }
    if (laid.isEmpty()) {
      fitting("adaptor", pipe, 1, zone.id() + ", head");
    }
    if (parts.fitting("take-off", pipe).isPresent()) {
      fitting("take-off", pipe, takeOffs(zone), zone.id() + ", one a lateral");
    }
    if (pipe.joint() == Pipe.Joint.SOLVENT_CEMENT) {
      cementJoints += joints;
    }
  }

  /** Whether water runs on from the end of a new part of a leg: into the next leg or laid pipe. */
  private boolean goesOn(List<Point> part, List<List<List<Point>>> missing, int leg) {
    Point end = part.get(part.size() - 1);
    boolean next =
        leg + 1 < missing.size()
            && missing.get(leg + 1).stream().anyMatch(p -> p.get(0).distanceTo(end) < SAME_M);
    return laid.isEmpty() ? leg + 1 < missing.size() : next || laid.reaches(end);
  }

  /** Laterals whose joint to the main is still to be made. */
  private int takeOffs(ZoneDesign zone) {
    int count = 0;
    for (int i = 0; i < zone.laterals().size(); i++) {
      List<Point> leg = zone.main().get(i);
      boolean joined = zone.laterals().get(i).laid() && laid.reaches(leg.get(leg.size() - 1));
      count += joined ? 0 : 1;
    }
    return count;
  }

  /** Tubing with its fittings; nothing for what lies there already. */
  void lateral(String zone, ZoneDesign.LateralDesign lateral) {
    if (lateral.laid()) {
      return;
    }
    Pipe tubing = lateral.tubing();
    String where = zone + ", " + lateral.id();
    fitting("start", tubing, 1, where);
    double length = 0;
    for (Line line : lateral.lines()) {
      double along = terrain.lengthOver(line.path());
      goods.length(tubing.key(), along, zone + ", " + line.id());
      length += along;
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
    int pins = (int) Math.ceil(length / rules.pinSpacingM());
    fitting("hold-down", tubing, pins, where);
    work.add(new WorkAmount("lay-lateral", lateral.id(), length, ""));
    work.add(new WorkAmount("pin-tubing", lateral.id(), pins, ""));
  }

  void fitting(String role, Pipe pipe, int count, String where) {
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
}
