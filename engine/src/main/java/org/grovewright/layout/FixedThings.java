package org.grovewright.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Clearance;
import org.grovewright.catalogue.Constant;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
import org.locationtech.jts.geom.Geometry;

/** Plants against fixed things and against the boundary. */
final class FixedThings {
  private final Grove grove;
  private final Constant tolerance;
  private final Constant leastPruned;
  private final Map<FixtureKind, Clearance> clearances = new EnumMap<>(FixtureKind.class);
  private final ConflictFigures figures;

  FixedThings(Grove grove, Catalogue catalogue, FigureBook book) {
    this.grove = grove;
    tolerance = catalogue.constant("layout.position-tolerance");
    leastPruned = catalogue.constant("layout.least-pruned-share");
    catalogue.clearances().forEach(row -> clearances.put(row.kind(), row));
    figures = new ConflictFigures(book);
  }

  List<Conflict> check(List<Crown> crowns) {
    List<Conflict> conflicts = new ArrayList<>();
    for (Crown crown : crowns) {
      for (Fixture fixture : grove.site().fixtures()) {
        double distance = Shapes.distance(fixture.shape(), crown.planting().at());
        if (!trunk(crown, fixture, distance, conflicts)) {
          crown(crown, fixture, distance, conflicts);
        }
      }
    }
    return conflicts;
  }

  private static String name(Fixture fixture) {
    return "the "
        + fixture.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ')
        + " "
        + fixture.id();
  }

  private static Quantity length(double metres) {
    return new Quantity(metres, Kind.LENGTH);
  }

  /**
   * Distance the stem keeps. The catalogue's distances are for the trunks and roots of trees: a
   * companion whose full crown is smaller than that has neither, and only its crown is watched. A
   * distance the owner gave holds for every plant.
   */
  private Need trunkNeed(Crown crown, Fixture fixture) {
    if (fixture.clearanceM().isPresent()) {
      return new Need(fixture.clearanceM().getAsDouble(), "description", "the owner's clearance");
    }
    Clearance row = clearances.get(fixture.kind());
    if (row == null) {
      return new Need(0, "assumed: no clearance known", Working.COMMON_PRACTICE);
    }
    if (!crown.isMain() && crown.fullRadiusM() < row.trunkM()) {
      return new Need(0, "assumed: small plants have no trunk to keep off", row.source());
    }
    return new Need(row.trunkM(), "catalogue: clearances", row.source());
  }

  /** Gap the full crown keeps; never more than the owner asks the stem to keep. */
  private Need crownNeed(Fixture fixture) {
    Clearance row = clearances.get(fixture.kind());
    if (row == null) {
      return new Need(Double.NEGATIVE_INFINITY, "", "");
    }
    double gap = Math.min(row.crownM(), fixture.clearanceM().orElse(row.crownM()));
    return new Need(gap, "catalogue: clearances", row.source());
  }

  private static boolean mayBearPlants(FixtureKind kind) {
    return kind == FixtureKind.SEPTIC_FIELD || kind == FixtureKind.LAWN;
  }

  private record Need(double metres, String origin, String source) {}

  private boolean trunk(Crown crown, Fixture fixture, double distance, List<Conflict> conflicts) {
    Need need = trunkNeed(crown, fixture);
    boolean on = distance == 0 && !mayBearPlants(fixture.kind());
    if (!on && distance + tolerance.value() >= need.metres()) {
      return false;
    }
    String plant = crown.planting().id();
    String id = ConflictFigures.id(plant, "fixture", fixture.id());
    figures.enter(
        id,
        distance,
        "shortest distance from the stem to the edge of the footprint, 0 on it",
        need.metres(),
        Working.of(
            "least distance of a stem",
            need.source(),
            new Input("c", need.metres(), Kind.LENGTH, need.origin())));
    figures.enterYear(id, 0, "from planting");
    String remedy =
        crown.standing()
            ? " It stands already: watch for damage and roots, and ask a tree surgeon in doubt."
            : " Set it {2} further away.";
    if (fixture.kind() == FixtureKind.BURIED_SERVICE) {
      remedy += " Have the service located and marked before anyone digs near it.";
    }
    if (fixture.kind() == FixtureKind.SEPTIC_FIELD) {
      remedy += " Roots block drain lines, and fruit above a field may not be fit to eat.";
    }
    Finding finding =
        Finding.of(
            on ? "layout.on-fixture" : "layout.trunk-near-fixture",
            Severity.SHORTFALL,
            plant,
            (on ? crown.label() + " stands on " : crown.label() + " stands {0} from ")
                + name(fixture)
                + (need.metres() > 0 ? " and should keep {1} from planting on." : ".")
                + remedy,
            length(distance),
            length(need.metres()),
            length(Math.max(0, need.metres() - distance)));
    conflicts.add(
        new Conflict(
            Conflict.Kind.TRUNK_NEAR_FIXTURE,
            plant,
            fixture.id(),
            distance,
            need.metres(),
            0,
            Math.max(0, need.metres() - distance),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            finding));
    return true;
  }

  private void crown(Crown crown, Fixture fixture, double distance, List<Conflict> conflicts) {
    Need gap = crownNeed(fixture);
    double needed = crown.fullRadiusM() + gap.metres();
    if (needed <= distance + tolerance.value()) {
      return;
    }
    double horizon = crown.horizonYears();
    double years =
        MeetingTime.of(t -> crown.radiusM(t) + gap.metres(), distance, horizon).orElse(horizon);
    String plant = crown.planting().id();
    String id = ConflictFigures.id(plant, "fixture", fixture.id());
    Input radius = new Input("r", crown.fullRadiusM(), Kind.LENGTH, "growth of " + plant);
    Input space = new Input("g", gap.metres(), Kind.LENGTH, gap.origin());
    figures.enter(
        id,
        distance,
        "shortest distance from the stem to the edge of the footprint",
        needed,
        Working.of("r + g, full crown radius and gap", gap.source(), radius, space));
    figures.enterYear(
        id,
        years,
        "first t with r(t) + g >= d",
        new Input("d", distance, Kind.LENGTH, id + ".distance"),
        space);
    double keep = 2 * (distance - gap.metres());
    boolean canPrune = keep >= leastPruned.value() * 2 * crown.fullRadiusM();
    Finding finding =
        Finding.of(
            "layout.crown-near-fixture",
            crown.isMain() ? Severity.SHORTFALL : Severity.NOTE,
            plant,
            "From year {2} the crown of "
                + crown.label()
                + " comes too near "
                + name(fixture)
                + ": the stem stands {0} away and the full crown needs {1}."
                + remedy(crown.standing(), canPrune, "{3}", "{4}"),
            length(distance),
            length(needed),
            new Quantity(Math.floor(years), Kind.YEAR),
            length(Math.max(0, keep)),
            length(needed - distance));
    conflicts.add(
        new Conflict(
            Conflict.Kind.CROWN_NEAR_FIXTURE,
            plant,
            fixture.id(),
            distance,
            needed,
            years,
            needed - distance,
            canPrune ? OptionalDouble.of(keep) : OptionalDouble.empty(),
            OptionalDouble.empty(),
            finding));
  }

  private static String remedy(boolean standing, boolean canPrune, String keep, String move) {
    if (canPrune) {
      return " Keep it pruned to a spread of "
          + keep
          + (standing ? "." : ", or set it " + move + " further away.");
    }
    return standing
        ? " Pruning it back that far is more than most plants bear."
        : " Set it "
            + move
            + " further away or choose a smaller kind; pruning it back that far is more than most"
            + " plants bear.";
  }

  /** Plants against the boundary. */
  List<Conflict> checkBoundary(List<Crown> crowns) {
    List<Conflict> conflicts = new ArrayList<>();
    Geometry land = Shapes.outline(grove.site().boundary());
    if (land.isEmpty()) {
      return conflicts;
    }
    Geometry edge = land.getBoundary();
    for (Crown crown : crowns) {
      Point at = crown.planting().at();
      double distance = edge.distance(Shapes.point(at));
      boolean inside = land.covers(Shapes.point(at));
      if (!inside && distance > tolerance.value()) {
        conflicts.add(outside(crown, distance));
      } else if (crown.fullRadiusM() > distance + tolerance.value()) {
        conflicts.add(over(crown, distance));
      }
    }
    return conflicts;
  }

  private Conflict outside(Crown crown, double distance) {
    String plant = crown.planting().id();
    String id = ConflictFigures.id(plant, "boundary", "");
    figures.enter(
        id,
        -distance,
        "shortest distance from the stem to the boundary, negative outside",
        0,
        Working.of("plants stand within the boundary", "plane geometry"));
    figures.enterYear(id, 0, "from planting");
    return new Conflict(
        Conflict.Kind.OUTSIDE,
        plant,
        "",
        -distance,
        0,
        0,
        distance,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Finding.of(
            "layout.outside",
            Severity.SHORTFALL,
            plant,
            crown.label()
                + " stands {0} outside the boundary. Check its place and the corners of the land"
                + " in the description.",
            length(distance)));
  }

  private Conflict over(Crown crown, double distance) {
    String plant = crown.planting().id();
    String id = ConflictFigures.id(plant, "boundary", "");
    double needed = crown.fullRadiusM();
    Input radius = new Input("r", needed, Kind.LENGTH, "growth of " + plant);
    figures.enter(
        id,
        distance,
        "shortest distance from the stem to the boundary",
        needed,
        Working.of("r, full crown radius", "growth curves", radius));
    double horizon = crown.horizonYears();
    double years = MeetingTime.of(crown::radiusM, distance, horizon).orElse(horizon);
    figures.enterYear(
        id,
        years,
        "first t with r(t) >= d",
        new Input("d", distance, Kind.LENGTH, id + ".distance"));
    boolean canPrune = distance >= leastPruned.value() * needed;
    return new Conflict(
        Conflict.Kind.OVER_BOUNDARY,
        plant,
        "",
        distance,
        needed,
        years,
        needed - distance,
        canPrune ? OptionalDouble.of(2 * distance) : OptionalDouble.empty(),
        OptionalDouble.empty(),
        Finding.of(
            "layout.over-boundary",
            crown.isMain() ? Severity.SHORTFALL : Severity.NOTE,
            plant,
            "From year {2} the crown of "
                + crown.label()
                + " reaches over the boundary: the stem stands {0} from it and the full crown"
                + " needs {1}."
                + remedy(crown.standing(), canPrune, "{3}", "{4}")
                + " Local rules may ask for more.",
            length(distance),
            length(needed),
            new Quantity(Math.floor(years), Kind.YEAR),
            length(2 * distance),
            length(needed - distance)));
  }

  /** Kinds of fixed things on the land for which no clearance is known at all. */
  List<Finding> unknownClearances() {
    return grove.site().fixtures().stream()
        .filter(fixture -> fixture.clearanceM().isEmpty())
        .filter(fixture -> !clearances.containsKey(fixture.kind()))
        .sorted(Comparator.comparing(Fixture::id))
        .map(
            fixture ->
                Finding.of(
                    "layout.no-clearance",
                    Severity.NOTE,
                    fixture.id(),
                    "The catalogue has no clearance for "
                        + name(fixture)
                        + ", so only plants standing on it are reported. Give its clearance in the"
                        + " description."))
        .toList();
  }
}
