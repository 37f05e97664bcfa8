package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.layout.Crown;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.locationtech.jts.algorithm.MinimumDiameter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * What a trench meets: things it may not come near, ground that costs more, services, and the edge
 * of the land.
 */
public final class GroundMap {
  /** Paving and gravel wider than this are taken to bear vehicles where nobody said, metres. */
  static final double DRIVE_WIDTH_M = 2.5;

  /**
   * Corners of ways lie this far outside what they go round, so that they touch nothing, metres.
   */
  static final double BESIDE_M = 1e-3;

  /** Ways may lie on the edge of the land, metres. */
  private static final double EDGE_M = 0.01;

  private final double serviceClearM;
  private final List<Region> blocked;
  private final List<Region> land;
  private final List<Patch> shunned = new ArrayList<>();
  private final List<Patch> grounds = new ArrayList<>();
  private final List<Service> services = new ArrayList<>();
  private final List<Point> corners = new ArrayList<>();

  /**
   * Ground of one kind.
   *
   * @param id the thing it belongs to
   */
  record Patch(TrenchGround.Kind kind, boolean vehicles, String id, Region region) {}

  /** A buried line. */
  record Service(Fixture fixture, List<Point> line) {}

  /**
   * A disc that trenches keep out of.
   *
   * @param radiusM its radius, metres
   */
  public record Disc(Point centre, double radiusM) {}

  /**
   * The ground of a grove.
   *
   * @param standing root zones of plants that stand already
   * @param planned places that trees will be planted at
   */
  public GroundMap(
      List<Fixture> fixtures,
      List<Point> boundary,
      List<Disc> standing,
      List<Disc> planned,
      TrenchRules rules) {
    serviceClearM = rules.serviceClearM();
    List<Geometry> bands = new ArrayList<>();
    for (Fixture fixture : fixtures) {
      if (blocks(fixture.kind())) {
        bands.add(about(fixture.shape(), rules.clearM()));
      }
      ground(fixture, rules);
    }
    planned.forEach(disc -> bands.add(polygon(disc.centre(), disc.radiusM(), 6)));
    for (Disc roots : standing) {
      patch(TrenchGround.Kind.ROOTS, false, "", polygon(roots.centre(), roots.radiusM(), 16));
    }
    Geometry all = Shapes.union(bands);
    blocked = Region.of(all);
    cornersOf(wider(all, BESIDE_M));
    Geometry outline = Shapes.outline(boundary);
    land = Region.of(outline.isEmpty() ? outline : wider(outline, EDGE_M));
    if (!outline.isEmpty()) {
      cornersOf(outline.buffer(-BESIDE_M));
    }
  }

  /** The ground of a grove as it is when its trench is dug. */
  public static GroundMap of(Grove grove, Catalogue catalogue, TrenchRules rules) {
    List<Disc> standing = new ArrayList<>();
    List<Disc> planned = new ArrayList<>();
    for (Planting planting : grove.plantings()) {
      if (catalogue.species().get(planting.speciesKey()).role() != Species.Role.MAIN) {
        continue;
      }
      if (planting.plantedOn().isBefore(grove.start())) {
        double crown = Crown.of(planting, grove, catalogue).radiusM(0);
        standing.add(new Disc(planting.at(), Math.max(rules.plantClearM(), crown)));
      } else {
        planned.add(new Disc(planting.at(), rules.plantClearM()));
      }
    }
    return new GroundMap(
        grove.site().fixtures(), grove.site().boundary(), standing, planned, rules);
  }

  /** Whether a trench goes round a thing of this kind if it can. */
  public static boolean blocks(FixtureKind kind) {
    return switch (kind) {
      case BUILDING, WALL, TANK, WELL, SEPTIC_FIELD, EXISTING_TREE -> true;
      case FENCE, PAVING, GRAVEL, LAWN, BURIED_SERVICE -> false;
    };
  }

  private void ground(Fixture fixture, TrenchRules rules) {
    switch (fixture.kind()) {
      case PAVING -> surface(fixture, TrenchGround.Kind.PAVING, rules.clearM());
      case GRAVEL -> surface(fixture, TrenchGround.Kind.GRAVEL, 0);
      case LAWN -> surface(fixture, TrenchGround.Kind.LAWN, 0);
      case EXISTING_TREE -> {
        double radius =
            fixture.shape() instanceof Shape.Round trunk
                ? Math.min(rules.rootWidestM(), rules.rootTimes() * 2 * trunk.radiusM())
                : rules.rootWidestM() / 4;
        Geometry zone =
            fixture.shape() instanceof Shape.Round trunk
                ? polygon(trunk.centre(), Math.max(radius, trunk.radiusM()), 24)
                : wider(Shapes.of(fixture.shape()), radius);
        patch(TrenchGround.Kind.ROOTS, false, fixture.id(), zone);
      }
      case BURIED_SERVICE -> {
        Geometry beside = about(fixture.shape(), rules.serviceClearM());
        patch(TrenchGround.Kind.SERVICE, false, fixture.id(), beside);
        if (fixture.shape() instanceof Shape.Line line) {
          services.add(new Service(fixture, line.points()));
        } else {
          Coordinate[] ring = Shapes.of(fixture.shape()).getCoordinates();
          services.add(
              new Service(fixture, Arrays.stream(ring).map(c -> new Point(c.x, c.y)).toList()));
        }
      }
      default -> {
        // What blocks the way is gone round; a fence is nothing to a trench.
      }
    }
  }

  /** Ground that is mended afterwards; a way keeps off its edge as from a wall. */
  private void surface(Fixture fixture, TrenchGround.Kind kind, double edgeM) {
    Geometry shape = Shapes.of(fixture.shape());
    if (shape.getDimension() < 2) {
      shape = about(fixture.shape(), 0.5);
    }
    boolean vehicles = bearsVehicles(fixture);
    for (Region region : Region.of(shape)) {
      grounds.add(new Patch(kind, vehicles, fixture.id(), region));
    }
    for (Region region : Region.of(edgeM > 0 ? wider(shape, edgeM) : shape)) {
      shunned.add(new Patch(kind, vehicles, fixture.id(), region));
    }
    cornersOf(wider(shape, edgeM + BESIDE_M), Math.max(0.5, shape.getLength() / 24));
  }

  private void patch(TrenchGround.Kind kind, boolean vehicles, String id, Geometry shape) {
    for (Region region : Region.of(shape)) {
      Patch patch = new Patch(kind, vehicles, id, region);
      grounds.add(patch);
      shunned.add(patch);
    }
    cornersOf(wider(shape, BESIDE_M));
  }

  /** Whether vehicles drive over paving, gravel or a lawn: as the owner said, or by its width. */
  public static boolean bearsVehicles(Fixture fixture) {
    if (fixture.traffic().isPresent()) {
      return fixture.traffic().get() == Fixture.Traffic.VEHICLES;
    }
    return fixture.kind() != FixtureKind.LAWN
        && fixture.shape() instanceof Shape.Area
        && new MinimumDiameter(Shapes.of(fixture.shape())).getLength() > DRIVE_WIDTH_M;
  }

  private static Geometry about(Shape shape, double clearM) {
    if (shape instanceof Shape.Round round) {
      double radius = round.radiusM() + clearM;
      return polygon(round.centre(), radius, radius > 1 ? 16 : 8);
    }
    return wider(Shapes.of(shape), clearM);
  }

  /** A polygon that holds a disc. */
  private static Geometry polygon(Point centre, double radiusM, int sides) {
    double reach = radiusM / Math.cos(Math.PI / sides);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < sides; i++) {
      double angle = 2 * Math.PI * (i + 0.5) / sides;
      points.add(
          new Point(centre.x() + reach * Math.cos(angle), centre.y() + reach * Math.sin(angle)));
    }
    return Shapes.outline(points);
  }

  /** A shape grown on all sides, its corners mitred. */
  private static Geometry wider(Geometry shape, double byM) {
    return BufferOp.bufferOp(
        shape,
        byM,
        new BufferParameters(8, BufferParameters.CAP_SQUARE, BufferParameters.JOIN_MITRE, 3));
  }

  private void cornersOf(Geometry shape) {
    for (Coordinate corner : shape.getCoordinates()) {
      corners.add(new Point(corner.x, corner.y));
    }
  }

  /** Corners and places between them, since ways bend where the ground changes. */
  private void cornersOf(Geometry shape, double everyM) {
    Coordinate[] ring = shape.getCoordinates();
    for (int i = 1; i < ring.length; i++) {
      Point a = new Point(ring[i - 1].x, ring[i - 1].y);
      Point b = new Point(ring[i].x, ring[i].y);
      int parts = Math.max(1, (int) Math.round(a.distanceTo(b) / everyM));
      for (int k = 0; k < parts; k++) {
        corners.add(Planes.between(a, b, (double) k / parts));
      }
    }
  }

  /** Places at which ways may bend. */
  List<Point> corners() {
    return corners;
  }

  /** What may not be come near, as one area without overlaps. */
  List<Region> blocked() {
    return blocked;
  }

  /** The land; empty where its outline is not known. */
  List<Region> land() {
    return land;
  }

  /** Ground as it counts when ways are compared. */
  List<Patch> shunned() {
    return shunned;
  }

  /** Distance from a service within which digging is by hand, metres. */
  double serviceClearM() {
    return serviceClearM;
  }

  /** Buried lines. */
  List<Service> services() {
    return services;
  }

  /**
   * A part of a straight line in ground of one kind.
   *
   * @param from share of the line at which it begins
   * @param to share at which it ends
   * @param ids things the ground belongs to
   */
  record Stretch(
      double from, double to, TrenchGround.Kind kind, boolean vehicles, List<String> ids) {}

  /** A straight line by the ground it lies in. */
  List<Stretch> stretches(Point a, Point b) {
    List<double[]> parts = new ArrayList<>();
    List<Double> cuts = new ArrayList<>(List.of(0.0, 1.0));
    for (Patch patch : grounds) {
      double[] inside = patch.region().inside(a, b);
      parts.add(inside);
      Arrays.stream(inside).forEach(cuts::add);
    }
    double[] sorted = cuts.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    List<Stretch> stretches = new ArrayList<>();
    for (int i = 1; i < sorted.length; i++) {
      if (sorted[i] - sorted[i - 1] > 1e-9) {
        Stretch next = stretch(parts, sorted[i - 1], sorted[i]);
        Stretch last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
        if (last != null
            && last.kind() == next.kind()
            && last.vehicles() == next.vehicles()
            && last.ids().equals(next.ids())) {
          next = new Stretch(last.from(), next.to(), next.kind(), next.vehicles(), next.ids());
          stretches.remove(stretches.size() - 1);
        }
        stretches.add(next);
      }
    }
    return stretches;
  }

  private Stretch stretch(List<double[]> parts, double from, double to) {
    double middle = (from + to) / 2;
    TrenchGround.Kind kind = TrenchGround.Kind.SOIL;
    boolean vehicles = false;
    List<String> ids = new ArrayList<>();
    for (int p = 0; p < grounds.size(); p++) {
      double[] inside = parts.get(p);
      for (int i = 0; i < inside.length; i += 2) {
        if (inside[i] < middle && middle < inside[i + 1]) {
          Patch patch = grounds.get(p);
          vehicles |= patch.vehicles();
          if (!patch.id().isEmpty()) {
            ids.add(patch.id());
          }
          if (patch.kind().compareTo(kind) > 0) {
            kind = patch.kind();
          }
        }
      }
    }
    return new Stretch(from, to, kind, vehicles, ids);
  }
}
