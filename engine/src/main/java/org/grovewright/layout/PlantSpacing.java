package org.grovewright.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/** Plants against plants. */
final class PlantSpacing {
  private final Constant tolerance;
  private final Constant collar;
  private final Constant leastPruned;
  private final ConflictFigures figures;

  PlantSpacing(Catalogue catalogue, FigureBook book) {
    tolerance = catalogue.constant("layout.position-tolerance");
    collar = catalogue.constant("layout.trunk-collar");
    leastPruned = catalogue.constant("layout.least-pruned-share");
    figures = new ConflictFigures(book);
  }

  List<Conflict> check(List<Crown> crowns) {
    List<Conflict> conflicts = new ArrayList<>();
    for (int i = 0; i < crowns.size(); i++) {
      for (int j = i + 1; j < crowns.size(); j++) {
        Crown a = crowns.get(i);
        Crown b = crowns.get(j);
        double distance = a.planting().at().distanceTo(b.planting().at());
        if (distance < tolerance.value()) {
          conflicts.add(samePlace(a, b, distance));
        } else if (a.isMain() && b.isMain()) {
          crowns(a, b, distance, conflicts);
        } else if (a.isMain()) {
          collar(a, b, distance, conflicts);
        } else if (b.isMain()) {
          collar(b, a, distance, conflicts);
        } else {
          crowded(a, b, distance, conflicts);
        }
      }
    }
    return conflicts;
  }

  private static Quantity length(double metres) {
    return new Quantity(metres, Kind.LENGTH);
  }

  private static Quantity year(double years) {
    return new Quantity(Math.floor(years), Kind.YEAR);
  }

  private Conflict samePlace(Crown a, Crown b, double distance) {
    String first = a.planting().id();
    String second = b.planting().id();
    double needed = a.firstRadiusM() + b.firstRadiusM();
    String id =
        enterDistance(
            first,
            second,
            distance,
            needed,
            Working.of(
                "sum of both crown radii at planting",
                "growth curves",
                new Input("r1", a.firstRadiusM(), Kind.LENGTH, "growth of " + first),
                new Input("r2", b.firstRadiusM(), Kind.LENGTH, "growth of " + second)));
    figures.enterYear(id, 0, "from planting");
    Finding finding =
        Finding.of(
            "layout.same-place",
            Severity.SHORTFALL,
            first,
            a.label()
                + " and "
                + b.label()
                + " stand on the same spot, {0} apart. Check both places in the description.",
            length(distance));
    return conflict(Conflict.Kind.SAME_PLACE, a, b, distance, needed, 0, finding);
  }

  private static Conflict conflict(
      Conflict.Kind kind,
      Crown a,
      Crown b,
      double distance,
      double needed,
      double years,
      Finding finding) {
    return new Conflict(
        kind,
        a.planting().id(),
        b.planting().id(),
        distance,
        needed,
        years,
        needed - distance,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        finding);
  }

  private void crowns(Crown a, Crown b, double distance, List<Conflict> conflicts) {
    double full = a.fullRadiusM() + b.fullRadiusM();
    if (full <= distance + tolerance.value()) {
      return;
    }
    double years = meetingYears(a, b, distance);
    String first = a.planting().id();
    String second = b.planting().id();
    Input one = new Input("r1", a.fullRadiusM(), Kind.LENGTH, "growth of " + first);
    Input two = new Input("r2", b.fullRadiusM(), Kind.LENGTH, "growth of " + second);
    String id =
        enterDistance(
            first,
            second,
            distance,
            full,
            Working.of(
                "r1 + r2, crown radii when full-grown or as kept", "growth curves", one, two));
    figures.enterYear(
        id,
        years,
        "first t with r1(t) + r2(t) >= d",
        new Input("d", distance, Kind.LENGTH, id + ".distance"),
        one,
        two);
    boolean usual = distance + tolerance.value() >= (usualSpacing(a) + usualSpacing(b)) / 2;
    double share = distance / full;
    double keepA = 2 * a.fullRadiusM() * share;
    double keepB = 2 * b.fullRadiusM() * share;
    boolean canPrune = share >= leastPruned.value();
    String remedy;
    if (canPrune) {
      remedy = " Keep " + first + " pruned to a spread of {3} and " + second + " to {4}";
      remedy +=
          a.standing() && b.standing() ? "." : ", or set " + movable(a, b) + " {5} further away.";
    } else if (a.standing() && b.standing()) {
      remedy =
          " Both stand already and pruning alone would have to keep them to {3} and {4}, more than"
              + " most trees bear: plan to take one out.";
    } else {
      remedy =
          " Pruning them to {3} and {4} is more than most trees bear: set "
              + movable(a, b)
              + " {5} further away, or choose a smaller kind.";
    }
    String lead =
        usual
            ? ", though they have their usual spacing"
            : ", and they stand nearer than the usual spacing of their kinds";
    Finding finding =
        Finding.of(
            "layout.crowns-meet",
            usual ? Severity.NOTE : Severity.SHORTFALL,
            first,
            "The crowns of "
                + a.label()
                + " and "
                + b.label()
                + " meet in year {2}: they stand {0} apart and full-grown need {1}"
                + lead
                + "."
                + remedy,
            length(distance),
            length(full),
            year(years),
            length(keepA),
            length(keepB),
            length(full - distance));
    conflicts.add(
        new Conflict(
            Conflict.Kind.CROWNS_MEET,
            first,
            second,
            distance,
            full,
            years,
            full - distance,
            canPrune ? OptionalDouble.of(keepA) : OptionalDouble.empty(),
            canPrune ? OptionalDouble.of(keepB) : OptionalDouble.empty(),
            finding));
  }

  /** Enters the distance of two plants with the one they need; gives the id of their figures. */
  private String enterDistance(
      String first, String second, double distance, double needed, Working working) {
    String id = ConflictFigures.id(first, "plant", second);
    figures.enter(id, distance, "straight line from stem to stem", needed, working);
    return id;
  }

  /** Years until two crowns touch, or until both have grown where they never do. */
  private static double meetingYears(Crown a, Crown b, double distance) {
    double horizon = Math.max(a.horizonYears(), b.horizonYears());
    return MeetingTime.of(t -> a.radiusM(t) + b.radiusM(t), distance, horizon).orElse(horizon);
  }

  private static String movable(Crown a, Crown b) {
    if (a.standing()) {
      return b.planting().id();
    }
    return b.standing() ? a.planting().id() : "one of them";
  }

  /** Usual spacing, or the spread the plant is kept to or can reach where that is less, metres. */
  private static double usualSpacing(Crown crown) {
    return Math.min(crown.species().spacingM(), 2 * crown.fullRadiusM());
  }

  private void collar(Crown main, Crown companion, double distance, List<Conflict> conflicts) {
    double radius = companion.firstRadiusM();
    double needed = collar.value() + radius;
    if (distance + tolerance.value() >= needed) {
      return;
    }
    String first = companion.planting().id();
    String second = main.planting().id();
    String id =
        enterDistance(
            first,
            second,
            distance,
            needed,
            Working.of(
                "c + r",
                collar.source(),
                collar.as("c (bare collar round the trunk)"),
                new Input(
                    "r (crown radius at planting)", radius, Kind.LENGTH, "growth of " + first)));
    figures.enterYear(id, 0, "from planting");
    Finding finding =
        Finding.of(
            "layout.in-collar",
            Severity.SHORTFALL,
            first,
            companion.label()
                + " stands {0} from the trunk of "
                + main.label()
                + " and needs {1} from planting, so that the collar of the trunk stays bare, dry"
                + " and in sight. Set it {2} further out; it may well grow under the crown.",
            length(distance),
            length(needed),
            length(needed - distance));
    conflicts.add(conflict(Conflict.Kind.IN_COLLAR, companion, main, distance, needed, 0, finding));
  }

  /**
   * Companions crowd each other below the mean of their usual spacings. Ground covers are meant to
   * close up, so they never crowd anything.
   */
  private void crowded(Crown a, Crown b, double distance, List<Conflict> conflicts) {
    if (a.species().role() == Species.Role.GROUNDCOVER
        || b.species().role() == Species.Role.GROUNDCOVER) {
      return;
    }
    double needed = (usualSpacing(a) + usualSpacing(b)) / 2;
    if (distance + tolerance.value() >= needed) {
      return;
    }
    double years = meetingYears(a, b, distance);
    String first = a.planting().id();
    String second = b.planting().id();
    String id =
        enterDistance(
            first,
            second,
            distance,
            needed,
            Working.of(
                "(s1 + s2) / 2",
                Working.COMMON_PRACTICE,
                new Input("s1", usualSpacing(a), Kind.LENGTH, "catalogue: species, spacing"),
                new Input("s2", usualSpacing(b), Kind.LENGTH, "catalogue: species, spacing")));
    figures.enterYear(
        id,
        years,
        "first t with r1(t) + r2(t) >= d",
        new Input("d", distance, Kind.LENGTH, id + ".distance"));
    Finding finding =
        Finding.of(
            "layout.crowded",
            Severity.NOTE,
            first,
            a.label()
                + " and "
                + b.label()
                + " stand {0} apart where {1} is usual; they touch in year {2}. Trim them, or set"
                + " one {3} further away.",
            length(distance),
            length(needed),
            year(years),
            length(needed - distance));
    conflicts.add(conflict(Conflict.Kind.CROWDED, a, b, distance, needed, years, finding));
  }
}
