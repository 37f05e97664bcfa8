package org.grovewright.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.model.Point;
import org.grovewright.model.Site;
import org.grovewright.model.SpotHeight;
import org.locationtech.jts.geom.Geometry;

/**
 * The ground between the measured spot heights.
 *
 * <p>The heights are the least-squares plane through the spots plus the spots' departures from it,
 * spread between them by inverse squared distance (Shepard 1968, "A two-dimensional interpolation
 * function for irregularly-spaced data"). The surface passes exactly through every spot. It never
 * departs from the plane by more than the largest departure of a spot, and far outside the spots it
 * goes over into the plane.
 *
 * <p>No spots mean level ground at height 0, one spot level ground at its height; two spots, or
 * spots so nearly in a line that they say nothing of the fall across it, give a slope along the
 * line and level ground across. Several heights at one place count as their mean.
 *
 * <p>How wrong a height may be shows in {@link #typicalErrorM}: each spot is foretold from the
 * others and compared with what was measured. Ground that bulges or dips between the spots unseen
 * by any of them cannot be known.
 */
public final class Terrain {
  /** Two measurements nearer than this are of one place, metres. */
  private static final double SAME_PLACE_M = 1e-6;

  /**
   * Least scatter across the main line of the spots over the scatter along it. Below it a height
   * error of a centimetre over the narrow side would tip the whole plane.
   */
  private static final double LEAST_SCATTER = 0.05;

  /** Longest step along a way over the ground, metres on the plan. */
  private static final double STEP_M = 1;

  /** Level ground at height 0. */
  public static final Terrain LEVEL = new Terrain(List.of(), 0);

  private final List<SpotHeight> spots;
  private final double[] departures;
  private final Point centre;
  private final double heightAtCentre;
  private final double riseX;
  private final double riseY;
  private final double northBearingDeg;
  private final Geometry measuredArea;

  private Terrain(List<SpotHeight> spots, double northBearingDeg) {
    this.spots = spots;
    this.northBearingDeg = northBearingDeg;
    this.measuredArea = Shapes.points(spots.stream().map(SpotHeight::at).toList()).convexHull();
    int n = spots.size();
    double x = 0;
    double y = 0;
    double z = 0;
    for (SpotHeight spot : spots) {
      x += spot.at().x() / n;
      y += spot.at().y() / n;
      z += spot.heightM() / n;
    }
    centre = new Point(x, y);
    heightAtCentre = z;
    double sxx = 0;
    double sxy = 0;
    double syy = 0;
    double sxz = 0;
    double syz = 0;
    for (SpotHeight spot : spots) {
      double dx = spot.at().x() - x;
      double dy = spot.at().y() - y;
      double dz = spot.heightM() - z;
      sxx += dx * dx;
      sxy += dx * dy;
      syy += dy * dy;
      sxz += dx * dz;
      syz += dy * dz;
    }
    // Solving in the principal axes of the spots drops the axis they do not reach along.
    double angle = 0.5 * Math.atan2(2 * sxy, sxx - syy);
    double ux = Math.cos(angle);
    double uy = Math.sin(angle);
    double along = ux * ux * sxx + 2 * ux * uy * sxy + uy * uy * syy;
    double across = uy * uy * sxx - 2 * ux * uy * sxy + ux * ux * syy;
    double riseAlong = along > 0 ? (ux * sxz + uy * syz) / along : 0;
    boolean wide = across > LEAST_SCATTER * LEAST_SCATTER * along;
    double riseAcross = wide ? (ux * syz - uy * sxz) / across : 0;
    riseX = riseAlong * ux - riseAcross * uy;
    riseY = riseAlong * uy + riseAcross * ux;
    departures = new double[n];
    for (int i = 0; i < n; i++) {
      departures[i] = spots.get(i).heightM() - planeAt(spots.get(i).at());
    }
  }

  /** The ground of a site. */
  public static Terrain of(Site site) {
    return of(site.spotHeights(), site.northBearingDeg());
  }

  private static Terrain of(List<SpotHeight> measured, double northBearingDeg) {
    List<SpotHeight> places = new ArrayList<>();
    List<Integer> counts = new ArrayList<>();
    for (SpotHeight spot : measured) {
      int same = 0;
      while (same < places.size() && places.get(same).at().distanceTo(spot.at()) > SAME_PLACE_M) {
        same++;
      }
      if (same == places.size()) {
        places.add(spot);
        counts.add(1);
      } else {
        SpotHeight mean = places.get(same);
        int count = counts.get(same) + 1;
        counts.set(same, count);
        places.set(
            same,
            new SpotHeight(mean.at(), mean.heightM() + (spot.heightM() - mean.heightM()) / count));
      }
    }
    return new Terrain(places, northBearingDeg);
  }

  /** Height of the ground, metres above the site's own zero. */
  public double heightAt(Point place) {
    double weights = 0;
    double sum = 0;
    for (int i = 0; i < departures.length; i++) {
      double distance = spots.get(i).at().distanceTo(place);
      if (distance < SAME_PLACE_M) {
        return spots.get(i).heightM();
      }
      double weight = 1 / (distance * distance);
      weights += weight;
      sum += weight * departures[i];
    }
    return planeAt(place) + (weights > 0 ? sum / weights : 0);
  }

  /**
   * Length of a way over the ground, which is longer than on the plan where it rises or falls.
   *
   * @param way its points on the plan
   * @return metres along the slope
   */
  public double lengthOver(List<Point> way) {
    double sum = 0;
    for (int i = 1; i < way.size(); i++) {
      double[] heights = heightsFrom(way.get(i - 1), way.get(i));
      double step = way.get(i - 1).distanceTo(way.get(i)) / (heights.length - 1);
      for (int k = 1; k < heights.length; k++) {
        sum += Math.hypot(step, heights[k] - heights[k - 1]);
      }
    }
    return sum;
  }

  /**
   * Height of the highest ground that a way crosses, metres above the site's own zero.
   *
   * @param way its points on the plan, at least one
   */
  public double highestOver(List<Point> way) {
    double highest = heightAt(way.get(0));
    for (int i = 1; i < way.size(); i++) {
      for (double height : heightsFrom(way.get(i - 1), way.get(i))) {
        highest = Math.max(highest, height);
      }
    }
    return highest;
  }

  /** Heights at equal steps from one place to another, at both of them too, metres. */
  private double[] heightsFrom(Point a, Point b) {
    int steps = (int) Math.max(1, Math.ceil(a.distanceTo(b) / STEP_M));
    double[] heights = new double[steps + 1];
    heights[0] = heightAt(a);
    for (int k = 1; k <= steps; k++) {
      double share = (double) k / steps;
      heights[k] =
          heightAt(new Point(a.x() + share * (b.x() - a.x()), a.y() + share * (b.y() - a.y())));
    }
    return heights;
  }

  /** Height of the least-squares plane, metres. */
  private double planeAt(Point place) {
    return heightAtCentre + riseX * (place.x() - centre.x()) + riseY * (place.y() - centre.y());
  }

  /** Fall of the land as a whole: that of the least-squares plane. */
  public Slope slope() {
    return slope(riseX, riseY);
  }

  /** Fall of the ground about a place, over a metre to each side of it. */
  public Slope slopeAt(Point place) {
    double x = place.x();
    double y = place.y();
    return slope(
        (heightAt(new Point(x + 1, y)) - heightAt(new Point(x - 1, y))) / 2,
        (heightAt(new Point(x, y + 1)) - heightAt(new Point(x, y - 1))) / 2);
  }

  private Slope slope(double dx, double dy) {
    double gradient = Math.hypot(dx, dy);
    if (gradient < 1e-9) {
      return new Slope(0, OptionalDouble.empty());
    }
    double bearing = (northBearingDeg + Math.toDegrees(Math.atan2(-dx, -dy))) % 360;
    return new Slope(gradient, OptionalDouble.of(bearing < 0 ? bearing + 360 : bearing));
  }

  /** Number of places measured. */
  public int spotCount() {
    return spots.size();
  }

  /**
   * Distance of a place from the area that the spots enclose, metres; 0 within it or with no spots.
   */
  public double beyondM(Point place) {
    return spots.isEmpty() ? 0 : measuredArea.distance(Shapes.point(place));
  }

  /** Greatest width of the area that the spots enclose, metres. */
  public double extentM() {
    return Math.hypot(
        measuredArea.getEnvelopeInternal().getWidth(),
        measuredArea.getEnvelopeInternal().getHeight());
  }

  /**
   * Root mean square error when each spot is foretold from the others, metres; empty with fewer
   * than four spots, which leave nothing to compare.
   */
  public OptionalDouble typicalErrorM() {
    int n = spots.size();
    if (n < 4) {
      return OptionalDouble.empty();
    }
    double sum = 0;
    for (int i = 0; i < n; i++) {
      List<SpotHeight> others = new ArrayList<>(spots);
      SpotHeight left = others.remove(i);
      double error = new Terrain(others, northBearingDeg).heightAt(left.at()) - left.heightM();
      sum += error * error;
    }
    return OptionalDouble.of(Math.sqrt(sum / n));
  }
}
