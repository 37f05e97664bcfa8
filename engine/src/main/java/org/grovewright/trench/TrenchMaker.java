package org.grovewright.trench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Fixture;
import org.grovewright.model.Point;

/** Makes the trench of pipes whose ways are known. */
public final class TrenchMaker {
  /** A pipe lies in a piece of trench whose middle is nearer to it than this, metres. */
  private static final double WITHIN_M = 1e-3;

  /** Pieces shorter than this are joined to their neighbour, metres. */
  private static final double LEAST_M = 0.05;

  private final GroundMap map;
  private final Catalogue catalogue;
  private final TrenchRules rules;
  private final Burial burial;
  private final Terrain terrain;

  /** A maker for some ground. */
  public TrenchMaker(
      GroundMap map, Catalogue catalogue, TrenchRules rules, Burial burial, Terrain terrain) {
    this.map = map;
    this.catalogue = catalogue;
    this.rules = rules;
    this.burial = burial;
    this.terrain = terrain;
  }

  /** What two pieces must have in common to be one segment. */
  private record Sort(
      TrenchGround.Kind kind, boolean vehicles, List<Trench.InTrench> pipes, List<String> things) {}

  private static final class Piece {
    private final Point a;
    private final Point b;
    private final Sort sort;
    private boolean used;

    Piece(Point a, Point b, Sort sort) {
      this.a = a;
      this.b = b;
      this.sort = sort;
    }

    Point other(Point end) {
      return end.distanceTo(a) < end.distanceTo(b) ? b : a;
    }
  }

  private record Spot(long x, long y) {
    static Spot of(Point place) {
      return new Spot(
          Math.round(place.x() / Planes.TOGETHER_M), Math.round(place.y() / Planes.TOGETHER_M));
    }
  }

  /**
   * The trench, its segments numbered from a place on.
   *
   * @param runs the pipes
   * @param start where the numbers begin
   */
  public Trench make(List<Trench.Run> runs, Point start) {
    Map<Spot, List<Piece>> at = new LinkedHashMap<>();
    for (Piece piece : pieces(runs)) {
      at.computeIfAbsent(Spot.of(piece.a), k -> new ArrayList<>()).add(piece);
      at.computeIfAbsent(Spot.of(piece.b), k -> new ArrayList<>()).add(piece);
    }
    List<Trench.Segment> segments = new ArrayList<>();
    List<Point> open = new ArrayList<>(List.of(start));
    while (true) {
      while (!open.isEmpty()) {
        Point from = open.remove(open.size() - 1);
        Optional<Piece> next = next(at, from, null);
        if (next.isPresent()) {
          open.add(from);
          open.add(walk(at, from, next.get(), segments));
        }
      }
      Optional<Point> rest =
          at.values().stream()
              .flatMap(List::stream)
              .filter(piece -> !piece.used)
              .map(piece -> piece.a)
              .min(Comparator.comparingDouble(start::distanceTo));
      if (rest.isEmpty()) {
        break;
      }
      open.add(rest.get());
    }
    return new Trench(segments, crossings(segments));
  }

  private List<Piece> pieces(List<Trench.Run> runs) {
    List<Piece> pieces = new ArrayList<>();
    for (List<Point> part : Planes.together(runs.stream().map(Trench.Run::path).toList())) {
      for (int i = 1; i < part.size(); i++) {
        Point a = part.get(i - 1);
        Point b = part.get(i);
        addPieces(pieces, a, b, pipesIn(runs, Planes.between(a, b, 0.5)));
      }
    }
    return pieces;
  }

  private void addPieces(List<Piece> pieces, Point a, Point b, List<Trench.InTrench> pipes) {
    double length = a.distanceTo(b);
    Point from = a;
    Sort sort = null;
    List<GroundMap.Stretch> stretches = map.stretches(a, b);
    for (int i = 0; i < stretches.size(); i++) {
      GroundMap.Stretch stretch = stretches.get(i);
      boolean last = i == stretches.size() - 1;
      boolean tiny = (stretch.to() - stretch.from()) * length < LEAST_M && stretches.size() > 1;
      if (sort == null || !tiny) {
        Sort next = new Sort(stretch.kind(), stretch.vehicles(), pipes, stretch.ids());
        if (sort != null) {
          Point to = Planes.between(a, b, stretch.from());
          pieces.add(new Piece(from, to, sort));
          from = to;
        }
        sort = next;
      }
      if (last) {
        pieces.add(new Piece(from, b, sort));
      }
    }
  }

  private static List<Trench.InTrench> pipesIn(List<Trench.Run> runs, Point place) {
    List<Trench.InTrench> pipes = new ArrayList<>();
    for (Trench.Run run : runs) {
      for (int i = 1; i < run.path().size(); i++) {
        Point foot = Planes.foot(place, run.path().get(i - 1), run.path().get(i));
        if (foot.distanceTo(place) < WITHIN_M) {
          pipes.add(new Trench.InTrench(run.zone(), run.pipe()));
        }
      }
    }
    return pipes;
  }

  /** The piece to go on with from a place: one like the last, else that with the most pipes. */
  private static Optional<Piece> next(Map<Spot, List<Piece>> at, Point from, Sort like) {
    return at.getOrDefault(Spot.of(from), List.of()).stream()
        .filter(piece -> !piece.used)
        .filter(piece -> like == null || piece.sort.equals(like))
        .min(
            Comparator.<Piece>comparingInt(piece -> -piece.sort.pipes().size())
                .thenComparingDouble(piece -> piece.other(from).y())
                .thenComparingDouble(piece -> piece.other(from).x()));
  }

  /** Follows pieces of one sort to where they end, and gives that place. */
  private Point walk(
      Map<Spot, List<Piece>> at, Point from, Piece first, List<Trench.Segment> segments) {
    List<Point> line = new ArrayList<>(List.of(from));
    Point here = from;
    Optional<Piece> next = Optional.of(first);
    while (next.isPresent()) {
      next.get().used = true;
      here = next.get().other(here);
      line.add(here);
      boolean branches = at.get(Spot.of(here)).size() > 2;
      next = branches ? Optional.empty() : next(at, here, first.sort);
    }
    segments.add(segment(segments.size() + 1, first.sort, Planes.plain(line)));
    return here;
  }

  private Trench.Segment segment(int number, Sort sort, List<Point> line) {
    TrenchGround ground = catalogue.ground(sort.kind());
    double widest = 0;
    double all = 0;
    for (Trench.InTrench pipe : sort.pipes()) {
      widest = Math.max(widest, pipe.pipe().outsideDiameterM());
      all += pipe.pipe().outsideDiameterM();
    }
    double cover = burial.coverM(ground, sort.vehicles());
    return new Trench.Segment(
        number,
        ground,
        sort.vehicles(),
        line,
        terrain.lengthOver(line),
        cover,
        cover + widest + rules.beddingM(),
        rules.widthM(all, sort.pipes().size()),
        sort.pipes(),
        sort.things());
  }

  private List<Trench.Crossing> crossings(List<Trench.Segment> segments) {
    Map<Spot, Trench.Crossing> found = new HashMap<>();
    List<Trench.Crossing> crossings = new ArrayList<>();
    for (Trench.Segment segment : segments) {
      for (int i = 1; i < segment.line().size(); i++) {
        Point a = segment.line().get(i - 1);
        Point b = segment.line().get(i);
        for (GroundMap.Service service : map.services()) {
          for (int k = 1; k < service.line().size(); k++) {
            Point c = service.line().get(k - 1);
            Point d = service.line().get(k);
            double share = Planes.crossing(a, b, c, d);
            if (Double.isNaN(share)) {
              continue;
            }
            Point at = Planes.between(a, b, share);
            Trench.Crossing crossing = crossing(service.fixture(), at, angle(a, b, c, d), segment);
            if (found.putIfAbsent(Spot.of(at), crossing) == null) {
              crossings.add(crossing);
            }
          }
        }
      }
    }
    return crossings;
  }

  private static Trench.Crossing crossing(
      Fixture service, Point at, double angle, Trench.Segment segment) {
    Fixture.Service known =
        service
            .service()
            .orElse(new Fixture.Service(Fixture.Carries.UNKNOWN, java.util.OptionalDouble.empty()));
    return new Trench.Crossing(
        service.id(), known.kind(), known.depthM(), at, angle, segment.number());
  }

  private static double angle(Point a, Point b, Point c, Point d) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double ex = d.x() - c.x();
    double ey = d.y() - c.y();
    return Math.abs(Math.atan2(Math.abs(dx * ey - dy * ex), Math.abs(dx * ex + dy * ey)));
  }
}
