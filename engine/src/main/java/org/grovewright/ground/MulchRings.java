package org.grovewright.ground;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Point;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * The ground that rings of mulch cover, one ring after the other: of each what no ring before it
 * covers, less collars, fixed things and what lies beyond the land. The areas add up to that of the
 * union of all rings, and each depends on the few things near its ring alone, so that moving a
 * plant changes few of them.
 */
public final class MulchRings {
  private final List<Disc> collars;
  private final List<Geometry> fixed;
  private final Geometry land;
  private final Memory memory;
  private final List<Disc> before = new ArrayList<>();

  /**
   * Rings on a piece of land.
   *
   * @param collars ground at the stems that stays bare
   * @param fixed areas of fixed things
   * @param land the land; empty where its outline is none
   * @param memory areas found before on the same land with the same fixed things
   */
  MulchRings(List<Disc> collars, List<Geometry> fixed, Geometry land, Memory memory) {
    this.collars = collars;
    this.fixed = fixed;
    this.land = land;
    this.memory = memory;
  }

  /** A round piece of ground. */
  record Disc(Point centre, double radiusM) {
    private boolean touches(Disc other) {
      double reach = radiusM + other.radiusM;
      double dx = centre.x() - other.centre.x();
      double dy = centre.y() - other.centre.y();
      // A little wider than the radii, for discs are drawn as polygons of the same area.
      return dx * dx + dy * dy < reach * reach * 1.01;
    }

    private Envelope envelope() {
      Envelope envelope = new Envelope(centre.x(), centre.x(), centre.y(), centre.y());
      envelope.expandBy(radiusM * 1.01);
      return envelope;
    }

    private Geometry geometry() {
      return Shapes.disc(centre, radiusM);
    }
  }

  /** A ring and all that takes ground from it. */
  private record Ring(Disc ring, List<Disc> rings, List<Disc> collars) {}

  /** Areas of rings for groves that differ in nothing but where plants stand. For one thread. */
  public static final class Memory {
    private static final int MOST = 10_000;

    private final Map<Ring, Double> areas = new HashMap<>();

    private double area(Ring ring, Supplier<Double> find) {
      Double known = areas.get(ring);
      if (known == null) {
        if (areas.size() >= MOST) {
          areas.clear();
        }
        known = find.get();
        areas.put(ring, known);
      }
      return known;
    }
  }

  /** Lays a further ring; the ground that it newly covers, m2. */
  double add(Disc ring) {
    if (ring.radiusM() <= 0) {
      return 0;
    }
    Ring key =
        new Ring(
            ring,
            before.stream().filter(ring::touches).toList(),
            collars.stream().filter(c -> c.radiusM() > 0 && ring.touches(c)).toList());
    before.add(ring);
    return memory.area(key, () -> area(key));
  }

  private double area(Ring ring) {
    Envelope here = ring.ring().envelope();
    List<Geometry> others = new ArrayList<>();
    ring.rings().forEach(disc -> others.add(disc.geometry()));
    ring.collars().forEach(disc -> others.add(disc.geometry()));
    for (Geometry thing : fixed) {
      if (thing.getEnvelopeInternal().intersects(here)) {
        others.add(thing);
      }
    }
    return Shapes.without(Shapes.within(ring.ring().geometry(), land), others).getArea();
  }
}
