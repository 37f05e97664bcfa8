package org.grovewright.formats.inp;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.grovewright.formats.inp.InpSections.Line;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.LossCurve;
import org.grovewright.hydraulics.PumpCurve;
import org.grovewright.hydraulics.PumpCurve.Point;

/**
 * Reads pumps and their curves: one point stands for a usual curve, three from no flow for a power
 * law, and any others for straight pieces from each to the next, as the format's engine takes them.
 */
final class InpPumps {
  /** In place of a curve that cannot be read, so that nothing else is wrong with the pump. */
  private static final PumpCurve STAND_IN = PumpCurve.ofPoint(1e-3, 10);

  private final InpSections sections;
  private final InpNumbers numbers;
  private final InpUnits units;

  /** The pumps of each curve, to name them where it is wrong. */
  private final Map<String, List<String>> pumpsOf = new HashMap<>();

  /** Curves read before, which are told of once. */
  private final Map<String, PumpCurve> known = new LinkedHashMap<>();

  InpPumps(InpSections sections, InpNumbers numbers, InpUnits units) {
    this.sections = sections;
    this.numbers = numbers;
    this.units = units;
    for (Line line : sections.lines("PUMPS")) {
      for (int at = 3; at + 1 < line.size(); at += 2) {
        if (line.field(at).equalsIgnoreCase("HEAD")) {
          pumpsOf.computeIfAbsent(line.field(at + 1), name -> new ArrayList<>()).add(line.field(0));
        }
      }
    }
  }

  /**
   * Reads a pump.
   *
   * @param line its line, with a name and two nodes at least
   * @param status what the text says of it elsewhere: open, closed or a speed; null for nothing
   */
  Link read(Line line, String status) {
    String id = line.field(0);
    PumpCurve curve = null;
    double speed = 1;
    boolean told = false;
    for (int at = 3; at < line.size(); at += 2) {
      String word = line.field(at).toUpperCase(Locale.ROOT);
      if (at + 1 == line.size()) {
        numbers.error(line.number(), "pump " + id + ": nothing follows " + word);
        told = true;
      } else if (word.equals("HEAD")) {
        curve = curve(line, line.field(at + 1));
      } else if (word.equals("SPEED")) {
        speed = numbers.notBelow(line, at + 1, "pump " + id + ": speed", "", 1);
      } else {
        numbers.error(line.number(), "pump " + id + ": " + word + " is not read");
        told = true;
      }
    }
    if (status != null && !status.equals("OPEN") && !status.equals("CLOSED")) {
      Line setting = new Line(line.number(), List.of(status));
      speed = numbers.notBelow(setting, 0, "pump " + id + ": speed", "", 1);
    }
    if ("CLOSED".equals(status) || speed == 0) {
      // a pump that stands still lets nothing through
      return new Link.LossDevice(
          id, line.field(1), line.field(2), LossCurve.power(0, 2), true, true);
    }
    if (curve == null && !told) {
      numbers.error(line.number(), "pump " + id + " has no curve that can be read");
    }
    return new Link.Pump(
        id, line.field(1), line.field(2), (curve == null ? STAND_IN : curve).atSpeed(speed));
  }

  private PumpCurve curve(Line pump, String name) {
    PumpCurve before = known.get(name);
    if (before != null) {
      return before;
    }
    List<Line> lines =
        sections.lines("CURVES").stream().filter(line -> line.field(0).equals(name)).toList();
    PumpCurve curve = null;
    if (lines.isEmpty()) {
      fault(pump, name, "there is no such curve in [CURVES]");
    } else if (isGood(name, lines)) {
      curve = through(name, lines);
    }
    known.put(name, curve == null ? STAND_IN : curve);
    return known.get(name);
  }

  private void fault(Line line, String curve, String what) {
    List<String> pumps = pumpsOf.get(curve);
    numbers.error(
        line.number(),
        "curve "
            + curve
            + (pumps.size() == 1 ? " of pump " : " of pumps ")
            + String.join(", ", pumps)
            + ": "
            + what);
  }

  /** Whether the points make a falling curve; the first thing that is wrong is noted. */
  private boolean isGood(String name, List<Line> lines) {
    Line before = null;
    for (Line line : lines) {
      String wrong = line.size() < 3 ? "every point needs a flow and a head" : pointFault(line);
      if (wrong == null) {
        wrong = before == null ? startFault(line, lines.size()) : orderFault(before, line);
      }
      if (wrong != null) {
        fault(line, name, wrong);
        return false;
      }
      before = line;
    }
    return true;
  }

  private static String pointFault(Line line) {
    String fault = InpNumbers.fault(line.field(1));
    return fault == null ? InpNumbers.fault(line.field(2)) : fault;
  }

  private String startFault(Line first, int points) {
    if (flow(first) < 0 || points == 1 && flow(first) == 0) {
      String least = points == 1 ? "be above " : "not be below ";
      return "its first flow must " + least + "0 " + units.flowName() + ", but is " + flowOf(first);
    }
    if (!(head(first) > 0)) {
      return "its first head must be above 0 " + units.lengthName() + ", but is " + headOf(first);
    }
    return null;
  }

  private String orderFault(Line before, Line line) {
    if (!(flow(line) > flow(before))) {
      return "its flows must rise from point to point, but "
          + flowOf(line)
          + " follows "
          + flowOf(before);
    }
    if (!(head(line) < head(before))) {
      return "its heads must fall from point to point, but "
          + headOf(line)
          + " follows "
          + headOf(before);
    }
    return null;
  }

  private static double flow(Line line) {
    return Double.parseDouble(line.field(1));
  }

  private static double head(Line line) {
    return Double.parseDouble(line.field(2));
  }

  private String flowOf(Line line) {
    return line.field(1) + " " + units.flowName();
  }

  private String headOf(Line line) {
    return line.field(2) + " " + units.lengthName();
  }

  private PumpCurve through(String name, List<Line> lines) {
    List<Point> points =
        lines.stream()
            .map(line -> new Point(units.flow() * flow(line), units.length() * head(line)))
            .toList();
    Point first = points.get(0);
    if (points.size() == 1) {
      return PumpCurve.ofPoint(first.flow(), first.head());
    }
    boolean power = points.size() == 3 && first.flow() == 0;
    try {
      if (power) {
        return PumpCurve.ofPoints(
            first.head(),
            points.get(1).flow(),
            points.get(1).head(),
            points.get(2).flow(),
            points.get(2).head());
      }
      return new PumpCurve.Pieces(points);
    } catch (IllegalArgumentException e) {
      fault(
          lines.get(0),
          name,
          power
              ? "three points from no flow are read as a power law, which does not go through these;"
                  + " with a fourth point between two of them they are read as straight pieces"
              : "its points lie too close to each other");
      return null;
    }
  }
}
