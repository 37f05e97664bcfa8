package org.grovewright.formats.inp;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.grovewright.formats.inp.InpNote.Severity;
import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.EmitterGroup;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.LossCurve;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Node;
import org.grovewright.hydraulics.PumpCurve;
import org.grovewright.hydraulics.PumpCurve.Point;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.SupplyCurve;

/**
 * Writes a network as EPANET input text, in litres per second, metres and millimetres.
 *
 * <p>A source with a falling supply curve becomes a reservoir and a pump with the same curve, which
 * is exact. The format has one emitter per junction and one exponent for all; what does not fit is
 * named.
 */
public final class InpWriter {
  private static final InpUnits UNITS = InpUnits.LPS;
  private static final double FIT = 1e-9;

  /** Pressure in m at which the flow of an emitter is kept where no answer is known. */
  private static final double USUAL_PRESSURE = 10;

  /** Exponent of an orifice. */
  private static final double ORIFICE = 0.5;

  private final Network network;
  private final ToDoubleFunction<EmitterGroup> pressure;
  private final List<InpNote> notes = new ArrayList<>();
  private final Map<String, StringBuilder> sections = new LinkedHashMap<>();
  private double exponent = Double.NaN;

  private InpWriter(Network network, ToDoubleFunction<EmitterGroup> pressure) {
    this.network = network;
    this.pressure = pressure;
    for (String name :
        List.of(
            "JUNCTIONS",
            "RESERVOIRS",
            "PIPES",
            "PUMPS",
            "VALVES",
            "EMITTERS",
            "CURVES",
            "STATUS",
            "OPTIONS")) {
      sections.put(name, new StringBuilder());
    }
  }

  /**
   * Writes a network; what the text cannot say is in the notes. An emitter that follows no power
   * law keeps its flow at 10 m.
   */
  public static InpWriting write(Network network) {
    return write(network, group -> USUAL_PRESSURE);
  }

  /**
   * Writes a solved network; what the text cannot say is in the notes. An emitter that follows no
   * power law keeps its flow at the pressure of the answer, so that another engine comes to the
   * same answer.
   */
  public static InpWriting write(Solution solution) {
    return write(
        solution.network(),
        group -> {
          double found = solution.pressure(group.nodeId());
          return found > 0 ? found : USUAL_PRESSURE;
        });
  }

  private static InpWriting write(Network network, ToDoubleFunction<EmitterGroup> pressure) {
    InpWriter writer = new InpWriter(network, pressure);
    writer.checkNames();
    network.nodes().forEach(writer::node);
    network.links().forEach(writer::link);
    writer.emitters();
    writer.options();
    StringBuilder text = new StringBuilder();
    writer.sections.forEach(
        (name, lines) -> {
          if (lines.length() > 0) {
            text.append('[').append(name).append("]\n").append(lines).append('\n');
          }
        });
    text.append("[TIMES]\nDuration 0\n\n[END]\n");
    return new InpWriting(text.toString(), writer.notes);
  }

  private void line(String section, Object... fields) {
    StringBuilder lines = sections.get(section);
    for (int i = 0; i < fields.length; i++) {
      lines.append(i == 0 ? "" : " ").append(fields[i]);
    }
    lines.append('\n');
  }

  private void note(Severity severity, String message) {
    notes.add(new InpNote(severity, 0, message));
  }

  /** Names end at white space and a semicolon starts a comment. */
  private void checkNames() {
    Set<String> ids = new HashSet<>();
    network.nodes().forEach(node -> ids.add(node.id()));
    network.links().forEach(link -> ids.add(link.id()));
    for (String id : new java.util.TreeSet<>(ids)) {
      if (!id.equals(name(id))) {
        note(Severity.NOTE, "the name \"" + id + "\" is written as " + name(id));
      }
    }
  }

  private static String name(String id) {
    return id.replaceAll("[\\s;\"\\[]", "_");
  }

  private void node(Node node) {
    String id = name(node.id());
    if (node instanceof Node.Reservoir reservoir) {
      line("RESERVOIRS", id, reservoir.head());
    } else if (node instanceof Node.Source source && source.supply().a() == 0) {
      line("RESERVOIRS", id, source.elevation() + source.supply().staticHead());
    } else {
      double demand = network.demands().getOrDefault(node.id(), 0.0);
      line("JUNCTIONS", id, node.elevation(), demand / UNITS.flow());
      if (node instanceof Node.Source source) {
        supply(source);
      }
    }
  }

  private void supply(Node.Source source) {
    String id = name(source.id());
    SupplyCurve supply = source.supply();
    line("RESERVOIRS", id + "_supply", source.elevation());
    pump(
        id + "_pump",
        id + "_supply",
        id,
        new PumpCurve.PowerLaw(supply.staticHead(), supply.a(), supply.n()));
    note(
        Severity.NOTE,
        "source " + source.id() + " is written as a reservoir and a pump with its curve");
  }

  private void pump(String id, String from, String to, PumpCurve curve) {
    line("PUMPS", id, from, to, "HEAD", id);
    if (curve instanceof PumpCurve.PowerLaw law) {
      powerLaw(id, law);
    } else if (curve instanceof PumpCurve.Pieces law) {
      pieces(id, law.points());
    }
  }

  private void powerLaw(String id, PumpCurve.PowerLaw curve) {
    // two points that take a third and two thirds of the head fix the power law
    for (double lost : new double[] {0, 1.0 / 3, 2.0 / 3}) {
      double flow = Math.pow(lost * curve.shutoffHead() / curve.b(), 1 / curve.c());
      line("CURVES", id, flow / UNITS.flow(), (1 - lost) * curve.shutoffHead());
    }
  }

  private void pieces(String id, List<Point> points) {
    boolean likeAPowerLaw = points.size() == 3 && points.get(0).flow() == 0;
    for (int i = 0; i < points.size(); i++) {
      Point point = points.get(i);
      if (likeAPowerLaw && i == 2) {
        // three points from no flow would be read as a power law; a fourth on the line is not
        Point before = points.get(1);
        line(
            "CURVES",
            id,
            (before.flow() + point.flow()) / 2 / UNITS.flow(),
            (before.head() + point.head()) / 2);
      }
      line("CURVES", id, point.flow() / UNITS.flow(), point.head());
    }
  }

  private void link(Link link) {
    String id = name(link.id());
    String from = name(link.from());
    String to = name(link.to());
    if (link instanceof Link.Pipe pipe) {
      boolean shutCheck = pipe.closed() && pipe.checkValve();
      if (shutCheck) {
        note(Severity.NOTE, "the check valve of the shut pipe " + pipe.id() + " is left out");
      }
      boolean hazen = network.formula() == FrictionFormula.HAZEN_WILLIAMS;
      double roughness = pipe.roughness().value() / (hazen ? 1 : UNITS.roughnessHeight());
      String state = pipe.closed() ? "Closed" : pipe.checkValve() ? "CV" : "Open";
      double bore = pipe.diameter() / UNITS.bore();
      line("PIPES", id, from, to, pipe.length(), bore, roughness, pipe.minorLoss(), state);
    } else if (link instanceof Link.PressureRegulator valve) {
      double bore = valve.diameter() / UNITS.bore();
      line("VALVES", id, from, to, bore, "PRV", valve.setPressure(), valve.minorLoss());
    } else if (link instanceof Link.Pump pump) {
      pump(id, from, to, pump.curve());
    } else if (link instanceof Link.LossDevice device) {
      device(device, id, from, to);
    }
  }

  private void device(Link.LossDevice device, String id, String from, String to) {
    LossCurve loss = device.loss();
    double squared = loss.n() == 2 ? loss.a() + loss.m() : loss.m();
    if (loss.a() != 0 && loss.n() != 2) {
      note(
          Severity.ERROR,
          "the loss curve of " + device.id() + " is not of the squared flow and cannot be written");
    }
    // K in a bore of 50 mm, as the format wants a bore
    double bore = 0.05;
    double area = Math.PI / 4 * bore * bore;
    double k = squared * 2 * network.gravity() * area * area;
    if (device.oneWay() && !device.closed()) {
      double roughness = network.formula() == FrictionFormula.HAZEN_WILLIAMS ? 150 : 0;
      line("PIPES", id, from, to, 0.01, bore / UNITS.bore(), roughness, k, "CV");
      note(
          Severity.NOTE,
          "device " + device.id() + " is written as a pipe of 1 cm with a check valve");
    } else {
      line("VALVES", id, from, to, bore / UNITS.bore(), "TCV", k, 0);
      if (device.closed()) {
        line("STATUS", id, "Closed");
      }
    }
  }

  private void emitters() {
    Map<String, Double> coefficients = new LinkedHashMap<>();
    DoubleSummaryStatistics unlike = new DoubleSummaryStatistics();
    for (EmitterGroup group : network.emitters()) {
      EmitterCurve curve = group.curve();
      double x = curve.exponentAt(USUAL_PRESSURE);
      double k = curve.flow(USUAL_PRESSURE) / Math.pow(USUAL_PRESSURE, x);
      double low = curve.flow(1);
      double high = curve.flow(60);
      boolean plain =
          Math.abs(low / k - 1) < FIT && Math.abs(high / (k * Math.pow(60, x)) - 1) < FIT;
      if (Double.isNaN(exponent)) {
        // an emitter right at one pressure only is so with any exponent; an orifice's is the one
        // with which other engines settle, where they do not with one near zero
        exponent = plain ? x : ORIFICE;
      }
      if (!plain || x != exponent) {
        double kept = pressure.applyAsDouble(group);
        unlike.accept(kept);
        k = curve.flow(kept) / Math.pow(kept, exponent);
      }
      coefficients.merge(group.nodeId(), k * group.count() / UNITS.flow(), Double::sum);
    }
    coefficients.forEach((node, k) -> line("EMITTERS", name(node), k));
    if (unlike.getCount() > 0) {
      note(
          Severity.ERROR,
          String.format(
              Locale.ROOT,
              "the format has one exponent for all emitters, here %s; %d of %d follow another law and"
                  + " have their flow at one pressure only, from %.2f to %.2f m",
              exponent,
              unlike.getCount(),
              network.emitters().size(),
              unlike.getMin(),
              unlike.getMax()));
    }
  }

  private void options() {
    line("OPTIONS", "Units", UNITS.name());
    line(
        "OPTIONS", "Headloss", network.formula() == FrictionFormula.HAZEN_WILLIAMS ? "H-W" : "D-W");
    line("OPTIONS", "Viscosity", network.viscosity() / InpUnits.VISCOSITY);
    line("OPTIONS", "Emitter Exponent", Double.isNaN(exponent) ? ORIFICE : exponent);
    line("OPTIONS", "Trials", 200);
    line("OPTIONS", "Accuracy", "0.000001");
  }
}
