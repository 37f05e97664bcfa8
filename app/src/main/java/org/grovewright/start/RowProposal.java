package org.grovewright.start;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Point;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Puts plants into straight rows along the longer side of the land, each plant as far from its
 * neighbours as their kinds usually stand. Rows begin with the lowest plants on the side of the
 * equator, so that the tall ones shade as little as possible (common practice, no source).
 */
final class RowProposal {
  /** Least distance of a row from the edge of the land, metres; common practice, no source. */
  private static final double EDGE_M = 1.5;

  /**
   * Kinds whose usual distances differ more than so many times get rows of their own if they fit.
   */
  private static final double MOST_UNLIKE = 1.6;

  private static final double STEP_M = 0.25;
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final Geometry within;
  private final boolean upward;

  private RowProposal(Geometry land) {
    this.within = land.buffer(-EDGE_M);
    Geometry box = land.getEnvelope();
    this.upward =
        box.getEnvelopeInternal().getHeight() > 1.25 * box.getEnvelopeInternal().getWidth();
  }

  /**
   * A row with what stands on it.
   *
   * @param from start, metres
   * @param to end, metres
   * @param plants its plants in order
   */
  record ProposedRow(Point from, Point to, List<Placed> plants) {
    /** The greatest usual distance of its plants, metres. */
    double widestM() {
      return plants.stream().mapToDouble(placed -> placed.species().spacingM()).max().orElse(0);
    }
  }

  /**
   * A plant of a row.
   *
   * @param species its kind
   * @param stationM distance from the start of the row, metres
   */
  record Placed(Species species, double stationM) {}

  /**
   * Places plants.
   *
   * @param corners corners of the land in order, metres
   * @param wanted every plant by its kind
   * @param northBearingDeg compass bearing of the upward axis, degrees
   * @param latitudeDeg latitude, degrees
   * @return the rows; with fewer plants than wanted if the land is too small
   */
  static List<ProposedRow> of(
      List<Point> corners, List<Species> wanted, double northBearingDeg, double latitudeDeg) {
    RowProposal proposal = new RowProposal(polygon(corners));
    List<Species> order = new ArrayList<>(wanted);
    order.sort(
        Comparator.comparingDouble(Species::matureHeightM)
            .thenComparing(Species::key, Comparator.naturalOrder()));
    if (!proposal.beginsTowardsEquator(northBearingDeg, latitudeDeg)) {
      Collections.reverse(order);
    }
    List<ProposedRow> bySize = proposal.fill(order, MOST_UNLIKE);
    int placed = bySize.stream().mapToInt(row -> row.plants().size()).sum();
    return placed == order.size() ? bySize : proposal.fill(order, Double.POSITIVE_INFINITY);
  }

  private boolean beginsTowardsEquator(double northBearingDeg, double latitudeDeg) {
    // Compass bearing of the direction in which rows follow one another.
    double bearing = Math.toRadians(northBearingDeg + (upward ? 90 : 0));
    double towardsNorth = Math.cos(bearing);
    return latitudeDeg >= 0 ? towardsNorth >= 0 : towardsNorth < 0;
  }

  private List<ProposedRow> fill(List<Species> order, double mostUnlike) {
    List<ProposedRow> rows = new ArrayList<>();
    if (within.isEmpty()) {
      return rows;
    }
    var box = within.getEnvelopeInternal();
    double first = upward ? box.getMinX() : box.getMinY();
    double last = upward ? box.getMaxX() : box.getMaxY();
    double before = first - EDGE_M;
    double spacingBefore = 0;
    int next = 0;
    for (double across = first; across <= last && next < order.size(); across += STEP_M) {
      Optional<ProposedRow> row = row(across, order.subList(next, order.size()), mostUnlike);
      double spacing = row.map(ProposedRow::widestM).orElse(Double.POSITIVE_INFINITY);
      boolean apart = across - before >= (spacingBefore + spacing) / 2 - STEP_M / 2;
      boolean inside = last + EDGE_M - across >= spacing / 2 - STEP_M / 2;
      if (apart && inside) {
        rows.add(row.orElseThrow());
        next += row.orElseThrow().plants().size();
        before = across;
        spacingBefore = spacing;
      }
    }
    return rows;
  }

  private Optional<ProposedRow> row(double across, List<Species> waiting, double mostUnlike) {
    Optional<Coordinate[]> line = longestWithin(across);
    if (line.isEmpty()) {
      return Optional.empty();
    }
    double length = line.get()[0].distance(line.get()[1]);
    List<Placed> placed = new ArrayList<>();
    double station = Math.max(0, waiting.get(0).spacingM() / 2 - EDGE_M);
    for (int i = 0; i < waiting.size(); i++) {
      Species species = waiting.get(i);
      if (i > 0) {
        station += (waiting.get(i - 1).spacingM() + species.spacingM()) / 2;
      }
      boolean past = station > length - Math.max(0, species.spacingM() / 2 - EDGE_M);
      if (past || unlike(waiting.get(0).spacingM(), species.spacingM()) > mostUnlike) {
        break;
      }
      placed.add(new Placed(species, station));
    }
    return placed.isEmpty()
        ? Optional.empty()
        : Optional.of(new ProposedRow(point(line.get()[0]), point(line.get()[1]), placed));
  }

  private static double unlike(double a, double b) {
    return Math.max(a, b) / Math.min(a, b);
  }

  /** The longest piece of the land on a line across it, from left to right or upwards. */
  private Optional<Coordinate[]> longestWithin(double across) {
    var box = within.getEnvelopeInternal();
    Coordinate from =
        upward
            ? new Coordinate(across, box.getMinY() - 1)
            : new Coordinate(box.getMinX() - 1, across);
    Coordinate to =
        upward
            ? new Coordinate(across, box.getMaxY() + 1)
            : new Coordinate(box.getMaxX() + 1, across);
    Geometry pieces = within.intersection(FACTORY.createLineString(new Coordinate[] {from, to}));
    LineString longest = null;
    for (int i = 0; i < pieces.getNumGeometries(); i++) {
      if (pieces.getGeometryN(i) instanceof LineString piece
          && (longest == null || piece.getLength() > longest.getLength())) {
        longest = piece;
      }
    }
    if (longest == null || longest.getLength() < 0.5) {
      return Optional.empty();
    }
    Coordinate a = longest.getCoordinateN(0);
    Coordinate b = longest.getCoordinateN(longest.getNumPoints() - 1);
    boolean forward = upward ? a.y <= b.y : a.x <= b.x;
    return Optional.of(forward ? new Coordinate[] {a, b} : new Coordinate[] {b, a});
  }

  private static Point point(Coordinate c) {
    return new Point(c.x, c.y);
  }

  private static Geometry polygon(List<Point> corners) {
    Coordinate[] ring = new Coordinate[corners.size() + 1];
    for (int i = 0; i < corners.size(); i++) {
      ring[i] = new Coordinate(corners.get(i).x(), corners.get(i).y());
    }
    ring[corners.size()] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }
}
