package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.trench.Burial;
import org.grovewright.trench.GroundMap;
import org.grovewright.trench.Trench;
import org.grovewright.trench.TrenchRules;
import org.locationtech.jts.geom.Geometry;

/** What an owner must know of the trench of the mains, and of laterals that cross a surface. */
final class TrenchRemarks {
  /** Shorter touches are not worth a word, metres. */
  private static final double WORTH_M = 0.05;

  private final Trench trench;
  private final Grove grove;
  private final Catalogue catalogue;
  private final Burial burial;
  private final TrenchRules rules;
  private final List<Finding> findings = new ArrayList<>();

  private TrenchRemarks(
      Trench trench, Grove grove, Catalogue catalogue, Burial burial, TrenchRules rules) {
    this.trench = trench;
    this.grove = grove;
    this.catalogue = catalogue;
    this.burial = burial;
    this.rules = rules;
  }

  /** All remarks on the trench of a system. */
  static List<Finding> of(List<ZoneResult> zones, Trench trench, DesignSite with) {
    TrenchRemarks remarks =
        new TrenchRemarks(
            trench, with.grove(), with.catalogue(), with.trench().burial(), with.trench().rules());
    if (!trench.segments().isEmpty()) {
      remarks.things();
      remarks.ground();
      remarks.crossings();
      remarks.frost();
    }
    remarks.laterals(zones);
    return remarks.findings;
  }

  private static Quantity metres(double value) {
    return new Quantity(value, Kind.LENGTH);
  }

  private void add(String code, Severity severity, String subject, String text, double... metres) {
    Quantity[] quantities = new Quantity[metres.length];
    for (int i = 0; i < metres.length; i++) {
      quantities[i] = metres(metres[i]);
    }
    findings.add(Finding.of("irrigation." + code, severity, subject, text, quantities));
  }

  /** Things the trench goes through or too near, and services beside it. */
  private void things() {
    Geometry ways =
        Shapes.union(
            trench.segments().stream().map(s -> Shapes.of(new Shape.Line(s.line()))).toList());
    Geometry supply = Shapes.point(grove.supply().at());
    for (Fixture fixture : grove.site().fixtures()) {
      Geometry shape = Shapes.of(fixture.shape());
      double distance = ways.distance(shape);
      if (fixture.kind() == FixtureKind.BURIED_SERVICE) {
        boolean crossed =
            trench.crossings().stream().anyMatch(c -> c.service().equals(fixture.id()));
        if (distance <= rules.serviceClearM() && !crossed) {
          add(
              "trench-near-service",
              Severity.NOTE,
              fixture.id(),
              "The trench comes near this buried service. Have it marked before you dig, and dig"
                  + " by hand there.");
        }
        continue;
      }
      if (!GroundMap.blocks(fixture.kind())) {
        continue;
      }
      double leaving = supply.distance(shape) == 0 ? shape.getBoundary().distance(supply) : 0;
      boolean through =
          fixture.shape() instanceof Shape.Line
              ? distance == 0
              : ways.intersection(shape).getLength() > 1.5 * leaving + WORTH_M;
      if (through) {
        add(
            "main-crosses",
            Severity.SHORTFALL,
            fixture.id(),
            "The main runs through it. Lead it round by giving bends in the route.");
      } else if (distance < rules.clearM() - WORTH_M && supply.distance(shape) >= rules.clearM()) {
        add(
            "trench-near",
            Severity.NOTE,
            fixture.id(),
            "The trench comes within {0} of it, and {1} is wanted so as not to undermine it. Dig a"
                + " short piece at a time there and fill it the same day.",
            distance,
            rules.clearM());
      }
    }
    Geometry land = Shapes.outline(grove.site().boundary());
    double off = land.isEmpty() ? 0 : Shapes.without(ways, List.of(land.buffer(0.02))).getLength();
    if (off > WORTH_M) {
      add(
          "trench-off-land",
          Severity.NOTE,
          "",
          "{0} of the trench of the main lies outside the outline of your land. Check the outline"
              + " and the places of tap and rows, or ask the neighbour.",
          off);
    }
  }

  /** Paving to be lifted, roots to be spared, traffic that was assumed. */
  private void ground() {
    Map<String, Double> paved = new LinkedHashMap<>();
    Map<String, Double> rooted = new LinkedHashMap<>();
    Map<String, Double> driven = new LinkedHashMap<>();
    for (Trench.Segment segment : trench.segments()) {
      for (String thing : segment.things()) {
        switch (kindOf(thing)) {
          case PAVING -> paved.merge(thing, segment.lengthM(), Double::sum);
          case EXISTING_TREE -> rooted.merge(thing, segment.lengthM(), Double::sum);
          default -> {
            // Gravel, lawns and services ask for no remark by their ground alone.
          }
        }
        if (segment.vehicles() && byWidth(thing)) {
          driven.merge(thing, segment.coverM(), Math::max);
        }
      }
    }
    paved.forEach(
        (thing, length) ->
            add(
                "trench-through-paving",
                Severity.NOTE,
                thing,
                "{0} of the trench of the main goes through it, because any way round costs more."
                    + " Lift or cut it there, or have a sleeve pushed through below it, and lay the"
                    + " main in the sleeve so that it can be pulled out again.",
                length));
    rooted.forEach(
        (thing, length) ->
            add(
                "trench-among-roots",
                Severity.NOTE,
                thing,
                "{0} of the trench of the main lies among the roots of this tree. Dig there by"
                    + " hand, pass below thick roots and leave them whole, and ask a tree surgeon"
                    + " if you would have to cut one.",
                length));
    driven.forEach(
        (thing, cover) ->
            add(
                "trench-traffic-assumed",
                Severity.NOTE,
                thing,
                "It is wide enough for vehicles, so the main is laid {0} deep below it. Say"
                    + " traffic: feet in the description if none drive there.",
                cover));
  }

  private FixtureKind kindOf(String thing) {
    return fixture(thing).kind();
  }

  private Fixture fixture(String thing) {
    return grove.site().fixtures().stream()
        .filter(f -> f.id().equals(thing))
        .findFirst()
        .orElseThrow();
  }

  private boolean byWidth(String thing) {
    Fixture fixture = fixture(thing);
    return fixture.traffic().isEmpty()
        && (fixture.kind() == FixtureKind.PAVING || fixture.kind() == FixtureKind.GRAVEL);
  }

  private void crossings() {
    for (Trench.Crossing crossing : trench.crossings()) {
      double depth = trench.segment(crossing.segment()).orElseThrow().depthM();
      String where =
          "The trench of the main crosses it in segment "
              + crossing.segment()
              + ", {0} deep. Have all lines marked by your local service before you dig, and wait"
              + " until they are. ";
      String digging =
          "Uncover it by hand, with no machine within {1} of the marks, and keep the distance"
              + " between pipe and service that its owner asks for.";
      if (crossing.serviceDepthM().isPresent()) {
        add(
            "trench-crosses-service",
            Severity.NOTE,
            crossing.service(),
            where + digging + " It should lie {2} deep, but depths change: do not rely on that.",
            depth,
            rules.serviceClearM(),
            crossing.serviceDepthM().getAsDouble());
      } else {
        add(
            "trench-crosses-service",
            Severity.NOTE,
            crossing.service(),
            where + digging,
            depth,
            rules.serviceClearM());
      }
    }
  }

  private void frost() {
    if (burial.drained()) {
      add(
          "main-drained",
          Severity.NOTE,
          "",
          "Frost goes {0} into the ground, deeper than a main is dug by hand. Lay it with a fall to"
              + " a drain at its lowest point, and drain it, the filter and the valves before"
              + " winter.",
          burial.frostM());
    } else if (!burial.given() && burial.frostM() > 0.1) {
      add(
          "frost-assumed",
          Severity.NOTE,
          "",
          "Frost is taken to go {0} into the ground, from the temperatures of the months. Ask"
              + " neighbours or the building office, and write it as frost_depth under site.",
          burial.frostM());
    }
  }

  /** Drip lines that cross paving, gravel or a lawn lie open to mowers and wheels. */
  private void laterals(List<ZoneResult> zones) {
    for (Fixture fixture : grove.site().fixtures()) {
      TrenchGround.Kind kind =
          switch (fixture.kind()) {
            case PAVING -> TrenchGround.Kind.PAVING;
            case GRAVEL -> TrenchGround.Kind.GRAVEL;
            case LAWN -> TrenchGround.Kind.LAWN;
            default -> null;
          };
      if (kind == null) {
        continue;
      }
      Geometry shape = Shapes.of(fixture.shape());
      double crossed = 0;
      for (ZoneResult zone : zones) {
        for (ZoneDesign.LateralDesign lateral : zone.design().laterals()) {
          for (Line line : lateral.lines()) {
            List<Point> path = line.path();
            crossed += Shapes.of(new Shape.Line(path)).intersection(shape).getLength();
          }
        }
      }
      if (crossed > WORTH_M) {
        add(
            "lateral-across",
            Severity.NOTE,
            fixture.id(),
            "{0} of drip line lies on it. Bury the line at least {1} deep there, so that mowers,"
                + " feet and wheels do not tear it.",
            crossed,
            catalogue.ground(kind).lateralCover().of(GroundMap.bearsVehicles(fixture)));
      }
    }
  }
}
