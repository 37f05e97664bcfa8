package org.grovewright.formats.inp;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.grovewright.formats.inp.InpSections.Line;
import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.LossCurve;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Roughness;

/**
 * Reads a network from EPANET input text as it stands at the start of its run: tanks at their first
 * level, demands at their base value.
 */
public final class InpReader {
  private static final Set<String> READ =
      Set.of(
          "JUNCTIONS",
          "RESERVOIRS",
          "TANKS",
          "PIPES",
          "PUMPS",
          "VALVES",
          "EMITTERS",
          "DEMANDS",
          "CURVES",
          "STATUS",
          "OPTIONS");

  /** Sections without a bearing on a steady solve. */
  private static final Set<String> WITHOUT_EFFECT =
      Set.of(
          "TITLE",
          "ENERGY",
          "QUALITY",
          "SOURCES",
          "REACTIONS",
          "MIXING",
          "TIMES",
          "REPORT",
          "COORDINATES",
          "VERTICES",
          "LABELS",
          "BACKDROP",
          "TAGS");

  private static final Set<String> OPTIONS_WITHOUT_EFFECT =
      Set.of(
          "TRIALS",
          "ACCURACY",
          "UNBALANCED",
          "QUALITY",
          "DIFFUSIVITY",
          "TOLERANCE",
          "MAP",
          "PATTERN",
          "CHECKFREQ",
          "MAXCHECK",
          "DAMPLIMIT",
          "HEADERROR",
          "FLOWCHANGE",
          "SPECIFIC");

  /** In place of a bore that cannot be read; no roughness is too much for it. */
  private static final double WIDE = 1e6;

  private final InpSections sections;
  private final List<InpNote> notes = new ArrayList<>();
  private final InpNumbers numbers = new InpNumbers(notes);
  private InpUnits units = InpUnits.GPM;
  private FrictionFormula formula = FrictionFormula.HAZEN_WILLIAMS;
  private boolean formulaKnown = true;
  private double viscosity = 1;
  private double emitterExponent = 0.5;
  private double demandMultiplier = 1;
  private Network.Builder builder;

  private InpReader(String text) {
    sections = new InpSections(text);
  }

  /** Reads a text; whatever is wrong with it is in the notes, with its line. */
  public static InpReading read(String text) {
    InpReader reader = new InpReader(text);
    reader.unreadSections();
    reader.options();
    reader.builder =
        Network.builder(reader.formula)
            .kinematicViscosity(reader.viscosity * InpUnits.VISCOSITY)
            .gravity(InpUnits.GRAVITY);
    reader.nodes();
    reader.links();
    reader.emitters();
    return new InpReading(reader.builder.build(), reader.notes);
  }

  private void note(int line, String message) {
    notes.add(new InpNote(InpNote.Severity.NOTE, line, message));
  }

  private void error(int line, String message) {
    notes.add(new InpNote(InpNote.Severity.ERROR, line, message));
  }

  private void unreadSections() {
    for (String name : sections.names()) {
      int line = sections.start(name);
      boolean empty = sections.lines(name).isEmpty();
      if (WITHOUT_EFFECT.contains(name)) {
        note(line, "section [" + name + "] is left out; it does not change a steady solve");
      } else if (!READ.contains(name) && !empty) {
        error(line, "section [" + name + "] is not read, but may change the answer");
      }
    }
  }

  private void options() {
    for (Line line : sections.lines("OPTIONS")) {
      String name = line.field(0).toUpperCase(Locale.ROOT);
      String value = line.field(line.size() - 1);
      switch (name) {
        case "UNITS" -> {
          InpUnits found = InpUnits.named(value);
          if (found == null) {
            error(line.number(), "the flow unit " + value + " is not known");
          } else {
            units = found;
          }
        }
        case "HEADLOSS" -> {
          switch (value.toUpperCase(Locale.ROOT)) {
            case "H-W" -> formula = FrictionFormula.HAZEN_WILLIAMS;
            case "D-W" -> formula = FrictionFormula.DARCY_WEISBACH;
            default -> {
              formulaKnown = false;
              error(line.number(), "the friction formula " + value + " is not H-W or D-W");
            }
          }
        }
        case "VISCOSITY" ->
            viscosity = numbers.above(line, line.size() - 1, "the viscosity", "", 1);
        case "EMITTER" -> emitterOption(line, value);
        case "DEMAND" -> demandOption(line, value);
        case "PRESSURE" -> {
          if (!Set.of("PSI", "METERS").contains(value.toUpperCase(Locale.ROOT))) {
            error(line.number(), "pressures in " + value + " are not read");
          }
        }
        default -> {
          if (!OPTIONS_WITHOUT_EFFECT.contains(name)) {
            error(line.number(), "the option " + name + " is not read, but may change the answer");
          }
        }
      }
    }
  }

  private void emitterOption(Line line, String value) {
    if (line.size() > 1 && line.field(1).equalsIgnoreCase("EXPONENT")) {
      emitterExponent = numbers.notBelow(line, line.size() - 1, "the emitter exponent", "", 0.5);
      if (emitterExponent > 1) {
        error(line.number(), "the emitter exponent must be from 0 to 1, but is " + value);
        emitterExponent = 0.5;
      }
    } else if (!value.equalsIgnoreCase("NO")) {
      note(line.number(), "emitters never draw water in, whatever the text says");
    }
  }

  private void demandOption(Line line, String value) {
    if (line.size() > 1 && line.field(1).equalsIgnoreCase("MULTIPLIER")) {
      demandMultiplier = numbers.any(line, line.size() - 1, 1);
    } else if (!value.equalsIgnoreCase("DDA")) {
      error(line.number(), "demands that depend on pressure are not read; use emitters");
    }
  }

  private void nodes() {
    Map<String, Double> demands = new LinkedHashMap<>();
    for (Line line : sections.lines("JUNCTIONS")) {
      if (has(line, 1, "junction", "a name")) {
        String id = line.field(0);
        builder.junction(id, units.length() * numbers.any(line, 1, 0));
        demands.put(id, numbers.any(line, 2, 0));
        pattern(line, 3);
      }
    }
    for (Line line : sections.lines("RESERVOIRS")) {
      has(line, 2, "reservoir", "a name and a head");
      builder.reservoir(line.field(0), units.length() * numbers.any(line, 1, 0));
      pattern(line, 2);
    }
    for (Line line : sections.lines("TANKS")) {
      has(line, 2, "tank", "a name and an elevation");
      double level = numbers.any(line, 1, 0) + numbers.any(line, 2, 0);
      builder.reservoir(line.field(0), units.length() * level);
      note(line.number(), "tank " + line.field(0) + " is held at its first level");
    }
    Map<String, Double> separate = new LinkedHashMap<>();
    for (Line line : sections.lines("DEMANDS")) {
      if (has(line, 2, "demand", "a junction and a demand")) {
        separate.merge(line.field(0), numbers.any(line, 1, 0), Double::sum);
        pattern(line, 2);
      }
    }
    // demands of their own section take the place of those beside the junctions
    demands.putAll(separate);
    for (Map.Entry<String, Double> demand : demands.entrySet()) {
      if (demand.getValue() != 0) {
        builder.demand(demand.getKey(), demand.getValue() * demandMultiplier * units.flow());
      }
    }
  }

  private void pattern(Line line, int at) {
    if (line.size() > at) {
      error(
          line.number(),
          "the time pattern " + line.field(at) + " is not read; the base value is used");
    }
  }

  private void links() {
    Map<String, String> status = new HashMap<>();
    for (Line line : sections.lines("STATUS")) {
      if (has(line, 2, "status", "a link and a status")) {
        String now = line.field(1).toUpperCase(Locale.ROOT);
        String before = status.put(line.field(0), now);
        if (before != null && !before.equals(now)) {
          error(
              line.number(),
              "the link " + line.field(0) + " is given both as " + before + " and as " + now);
        }
      }
    }
    for (Line line : sections.lines("PIPES")) {
      String now = status.remove(line.field(0));
      if (has(line, 6, "pipe", "a name, two nodes, length, diameter and roughness")) {
        pipe(line, now);
      } else {
        standIn(line);
      }
    }
    InpPumps pumps = new InpPumps(sections, numbers, units);
    for (Line line : sections.lines("PUMPS")) {
      String now = status.remove(line.field(0));
      if (has(line, 5, "pump", "a name, two nodes and a curve")) {
        Link pump = pumps.read(line, now);
        builder.link(pump);
        if (!(pump instanceof Link.Pump)) {
          note(line.number(), "pump " + pump.id() + " stands still and is read as a closed valve");
        }
      } else {
        standIn(line);
      }
    }
    for (Line line : sections.lines("VALVES")) {
      String now = status.remove(line.field(0));
      if (has(line, 6, "valve", "a name, two nodes, diameter, type and setting")) {
        valve(line, now);
      } else {
        standIn(line);
      }
    }
    for (String id : new java.util.TreeSet<>(status.keySet())) {
      error(sections.start("STATUS"), "a status names the link " + id + ", which does not exist");
    }
  }

  private void pipe(Line line, String status) {
    String what = "pipe " + line.field(0) + ": ";
    double bore =
        units.bore() * numbers.above(line, 4, what + "inside diameter", units.boreName(), WIDE);
    double minor = 0;
    String state = "OPEN";
    if (line.size() > 6) {
      // the minor loss may be left out before the status
      if (isWord(line.field(6))) {
        state = line.field(6).toUpperCase(Locale.ROOT);
      } else {
        minor = numbers.notBelow(line, 6, what + "minor-loss K", "", 0);
      }
    }
    if (line.size() > 7) {
      state = line.field(7).toUpperCase(Locale.ROOT);
    }
    if (status != null && !state.equals("CV")) {
      state = status;
    }
    if (!Set.of("OPEN", "CLOSED", "CV").contains(state)) {
      error(line.number(), "the status " + state + " of a pipe is not Open, Closed or CV");
    }
    builder.link(
        new Link.Pipe(
            line.field(0),
            line.field(1),
            line.field(2),
            units.length() * numbers.above(line, 3, what + "length", units.lengthName(), 1),
            bore,
            roughness(line, what, bore),
            minor,
            state.equals("CV"),
            state.equals("CLOSED")));
  }

  private Roughness roughness(Line line, String what, double bore) {
    if (!formulaKnown) {
      // which of the two the number stands for is not known either
      return Roughness.hazenWilliams(130);
    }
    if (formula == FrictionFormula.HAZEN_WILLIAMS) {
      return Roughness.hazenWilliams(numbers.above(line, 5, what + "Hazen-Williams C", "", 130));
    }
    String unit = units.roughnessHeightName();
    double height =
        units.roughnessHeight() * numbers.notBelow(line, 5, what + "roughness height", unit, 0);
    if (height >= bore / 2) {
      error(
          line.number(),
          what
              + "its roughness height of "
              + InpNumbers.in(line.field(5), unit)
              + " is half of its inside diameter or more, which is "
              + InpNumbers.in(line.field(4), units.boreName()));
      height = 0;
    }
    return Roughness.darcyWeisbach(height);
  }

  /** Joins the nodes of a link that cannot be read, so that they are not said to be cut off too. */
  private void standIn(Line line) {
    if (line.size() >= 3) {
      Roughness smooth =
          formula == FrictionFormula.HAZEN_WILLIAMS
              ? Roughness.hazenWilliams(130)
              : Roughness.darcyWeisbach(0);
      builder.pipe(line.field(0), line.field(1), line.field(2), 1, 0.1, smooth);
    }
  }

  private static boolean isWord(String field) {
    return Character.isLetter(field.charAt(0));
  }

  private void valve(Line line, String status) {
    String id = line.field(0);
    String what = "valve " + id + ": ";
    double bore = units.bore() * numbers.above(line, 3, what + "diameter", units.boreName(), WIDE);
    double minor = numbers.notBelow(line, 6, what + "minor-loss K", "", 0);
    String type = line.field(4).toUpperCase(Locale.ROOT);
    boolean closed = "CLOSED".equals(status);
    boolean open = "OPEN".equals(status);
    if (status != null && !closed && !open) {
      error(line.number(), "the status " + status + " of valve " + id + " is not read");
    }
    if (type.equals("PRV") && status == null) {
      double set =
          units.pressure()
              * numbers.notBelow(line, 5, what + "set pressure", units.pressureName(), 0);
      builder.valve(id, line.field(1), line.field(2), bore, set, minor);
    } else if (type.equals("PRV") || type.equals("TCV")) {
      double k =
          type.equals("TCV") && !open
              ? numbers.notBelow(line, 5, what + "minor-loss K", "", 0)
              : minor;
      double area = Math.PI / 4 * bore * bore;
      LossCurve loss = new LossCurve(0, 2, k / (2 * InpUnits.GRAVITY * area * area));
      builder.link(new Link.LossDevice(id, line.field(1), line.field(2), loss, false, closed));
    } else {
      error(line.number(), "valve " + id + ": the type " + type + " is not read");
      standIn(line);
    }
  }

  private void emitters() {
    for (Line line : sections.lines("EMITTERS")) {
      if (has(line, 2, "emitter", "a junction and a coefficient")) {
        double perUnit = units.flow() / Math.pow(units.pressure(), emitterExponent);
        String what = "emitter at " + line.field(0) + ": coefficient";
        double k = perUnit * numbers.notBelow(line, 1, what, "", 0);
        builder.emitter(line.field(0), EmitterCurve.power(k, emitterExponent));
      }
    }
  }

  private boolean has(Line line, int least, String what, String wanted) {
    if (line.size() >= least) {
      return true;
    }
    error(line.number(), "a " + what + " needs " + wanted);
    return false;
  }
}
