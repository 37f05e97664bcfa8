package org.grovewright.layout;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.growth.Growth;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * What stands between a plant and the noon sun.
 *
 * <p>At noon the sun stands {@code 90 deg - |latitude - declination|} above the horizon, in the
 * south where the latitude is the greater and in the north where it is the smaller. From the
 * plant's stem one looks that way; a thing whose edge is met after a distance {@code d} casts its
 * shade up to {@code its height - d tan(height of the sun)} on the plant. Slopes are left out, and
 * a crown counts as if it were dense to the ground.
 *
 * @param plantId the plant in the shade
 * @param byId the plant or fixed thing that shades it
 * @param share share of the plant's height in shade, above 0 to 1
 */
public record NoonShade(String plantId, String byId, double share) {
  /** Tilt of the earth's axis: the sun's declination at the June solstice, degrees. */
  public static final double TILT_DEG = 23.44;

  private static final double LEAST_SHARE = 0.05;

  /**
   * Declination of the sun on the day on which it stands lowest at noon, degrees.
   *
   * @param latitudeDeg latitude, south negative
   */
  public static double winterDeclinationDeg(double latitudeDeg) {
    return latitudeDeg < 0 ? TILT_DEG : -TILT_DEG;
  }

  /**
   * All shades at noon.
   *
   * @param grove the grove
   * @param catalogue knows its plants
   * @param declinationDeg declination of the sun on the day: 0 at the equinoxes, {@link #TILT_DEG}
   *     at the June solstice and minus that at the December one
   * @param planYears years into the plan, for the size of the plants
   */
  public static List<NoonShade> of(
      Grove grove, Catalogue catalogue, double declinationDeg, double planYears) {
    double fromZenith = grove.site().latitudeDeg() - declinationDeg;
    double height = Math.toRadians(90 - Math.abs(fromZenith));
    if (height <= 0 || fromZenith == 0) {
      return List.of();
    }
    List<Thing> plants = new ArrayList<>();
    for (Planting planting : grove.plantings()) {
      Crown crown = Crown.of(planting, grove, catalogue);
      double age = crown.ageAt(planYears);
      Growth growth = Growth.of(planting, crown.species(), grove.start(), catalogue.constants());
      if (age >= 0) {
        plants.add(
            new Thing(
                planting.id(), planting.at(), crown.radiusM(planYears), growth.heightM(age), null));
      }
    }
    List<Thing> things = new ArrayList<>(plants);
    for (Fixture fixture : grove.site().fixtures()) {
      if (fixture.heightM() > 0 && fixture.kind() != FixtureKind.BURIED_SERVICE) {
        things.add(
            fixture.shape() instanceof Shape.Round round
                ? new Thing(fixture.id(), round.centre(), round.radiusM(), fixture.heightM(), null)
                : new Thing(fixture.id(), null, 0, fixture.heightM(), Shapes.of(fixture.shape())));
      }
    }
    // The sketch's y axis points to the bearing of north; the sun stands due south or due north.
    double bearing = Math.toRadians((fromZenith > 0 ? 180 : 0) - grove.site().northBearingDeg());
    Point towards = new Point(Math.sin(bearing), Math.cos(bearing));
    List<NoonShade> shades = new ArrayList<>();
    for (Thing plant : plants) {
      for (Thing other : things) {
        if (other == plant) {
          continue;
        }
        double distance =
            other.distance(plant.centre(), towards, other.heightM() / Math.tan(height));
        double shaded = other.heightM() - distance * Math.tan(height);
        double share = Math.min(1, shaded / Math.max(plant.heightM(), 0.1));
        if (share >= LEAST_SHARE) {
          shades.add(new NoonShade(plant.id(), other.id(), share));
        }
      }
    }
    return shades;
  }

  /** A thing that casts a shade: round, or with a footprint. */
  private record Thing(
      String id, Point centre, double radiusM, double heightM, Geometry footprint) {
    /** Distance from a place to its edge in a direction; infinite if it is not met. */
    double distance(Point from, Point towards, double farthest) {
      if (footprint != null) {
        Point end = new Point(from.x() + towards.x() * farthest, from.y() + towards.y() * farthest);
        Coordinate here = new Coordinate(from.x(), from.y());
        Coordinate there = new Coordinate(end.x(), end.y());
        if (!footprint.getEnvelopeInternal().intersects(new Envelope(here, there))) {
          return Double.POSITIVE_INFINITY;
        }
        Geometry met = Shapes.segment(from, end).intersection(footprint);
        return met.isEmpty() ? Double.POSITIVE_INFINITY : met.distance(Shapes.point(from));
      }
      double dx = centre.x() - from.x();
      double dy = centre.y() - from.y();
      double along = dx * towards.x() + dy * towards.y();
      double aside = Math.abs(dx * towards.y() - dy * towards.x());
      if (aside >= radiusM || along <= 0) {
        return Double.POSITIVE_INFINITY;
      }
      return Math.max(0, along - Math.sqrt(radiusM * radiusM - aside * aside));
    }
  }
}
