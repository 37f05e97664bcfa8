package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.hydraulics.HydraulicProblem.Kind;

/** Finds everything that is wrong with a network's description before it is solved. */
final class NetworkCheck {
  private final Network network;
  private final List<HydraulicProblem> problems = new ArrayList<>();

  private NetworkCheck(Network network) {
    this.network = network;
  }

  static List<HydraulicProblem> problemsOf(Network network) {
    NetworkCheck check = new NetworkCheck(network);
    check.settings();
    check.nodes();
    check.links();
    check.demandsAndEmitters();
    check.regulators();
    check.connections();
    return List.copyOf(check.problems);
  }

  private void add(Kind kind, String part, String message) {
    problems.add(new HydraulicProblem(kind, part, message));
  }

  private void settings() {
    above("", "the water", "viscosity in m2/s", network.viscosity());
    above("", "the network", "gravity in m/s2", network.gravity());
  }

  private void nodes() {
    List<Node> nodes = network.nodes();
    for (int i = 0; i < nodes.size(); i++) {
      Node node = nodes.get(i);
      String id = node.id();
      if (network.findNode(id) != i) {
        add(Kind.DUPLICATE_ID, id, "two nodes are named " + id + "; every node needs its own name");
      }
      finite(id, "node ", "elevation or head in m", node.elevation());
      if (node instanceof Node.Source source) {
        SupplyCurve supply = source.supply();
        String what = "the supply at ";
        finite(id, what, "static pressure in m", supply.staticHead());
        atLeast(id, what, "fall of pressure with flow", supply.a(), 0);
        atLeast(id, what, "exponent", supply.n(), 1);
      }
    }
  }

  private void links() {
    List<Link> links = network.links();
    for (int i = 0; i < links.size(); i++) {
      Link link = links.get(i);
      String id = link.id();
      if (network.linkIndex(id) != i) {
        add(Kind.DUPLICATE_ID, id, "two links are named " + id + "; every link needs its own name");
      }
      end(id, link.from(), network.startOf(i));
      end(id, link.to(), network.endOf(i));
      if (link.from().equals(link.to())) {
        add(
            Kind.SELF_LOOP,
            id,
            "link " + id + " starts and ends at " + link.to() + "; it must join two nodes");
      }
      if (link instanceof Link.Pipe pipe) {
        pipe(pipe);
      } else if (link instanceof Link.PressureRegulator valve) {
        above(id, "regulator ", "inside diameter in m", valve.diameter());
        atLeast(id, "regulator ", "set pressure in m", valve.setPressure(), 0);
        atLeast(id, "regulator ", "minor-loss K", valve.minorLoss(), 0);
      } else if (link instanceof Link.LossDevice device) {
        atLeast(id, "device ", "loss coefficient", device.loss().a(), 0);
        atLeast(id, "device ", "loss exponent", device.loss().n(), 1);
        atLeast(id, "device ", "squared-flow loss coefficient", device.loss().m(), 0);
      } else if (link instanceof Link.Pump pump) {
        pump(id, pump.curve());
      }
    }
  }

  private void pump(String id, PumpCurve curve) {
    // a curve of pieces cannot be made from points that are no curve
    if (curve instanceof PumpCurve.PowerLaw law) {
      above(id, "pump ", "head at no flow in m", law.shutoffHead());
      above(id, "pump ", "curve coefficient", law.b());
      above(id, "pump ", "curve exponent", law.c());
    }
  }

  private void pipe(Link.Pipe pipe) {
    String id = pipe.id();
    String what = "pipe ";
    above(id, what, "length in m", pipe.length());
    above(id, what, "inside diameter in m", pipe.diameter());
    atLeast(id, what, "minor-loss K", pipe.minorLoss(), 0);
    if (pipe.roughness().formula() != network.formula()) {
      add(
          Kind.WRONG_FRICTION_FORMULA,
          id,
          what + id + " has a roughness for the other friction formula than the network's");
    } else if (network.formula() == FrictionFormula.HAZEN_WILLIAMS) {
      above(id, what, "Hazen-Williams C", pipe.roughness().value());
    } else {
      double height = pipe.roughness().value();
      atLeast(id, what, "roughness height in m", height, 0);
      if (height >= pipe.diameter() / 2 && pipe.diameter() > 0) {
        add(
            Kind.BAD_NUMBER,
            id,
            what + id + " has a roughness height of " + height + " m, as much as half its bore");
      }
    }
  }

  private void end(String linkId, String nodeId, int node) {
    if (node < 0) {
      add(
          Kind.UNKNOWN_NODE,
          linkId,
          "link " + linkId + " names the node " + nodeId + ", which does not exist");
    }
  }

  private void demandsAndEmitters() {
    for (Map.Entry<String, Double> demand : network.demands().entrySet()) {
      String id = demand.getKey();
      if (network.findNode(id) < 0) {
        add(Kind.UNKNOWN_NODE, id, "a demand names the node " + id + ", which does not exist");
      }
      finite(id, "node ", "demand in m3/s", demand.getValue());
    }
    List<EmitterGroup> groups = network.emitters();
    for (int i = 0; i < groups.size(); i++) {
      EmitterGroup group = groups.get(i);
      String id = group.id();
      if (network.emitterIndex(id) != i) {
        add(Kind.DUPLICATE_ID, id, "two groups of emitters are named " + id);
      }
      if (network.nodeOfEmitter(i) < 0) {
        add(
            Kind.UNKNOWN_NODE,
            id,
            "emitter " + id + " names the node " + group.nodeId() + ", which does not exist");
      }
      if (group.count() < 0) {
        add(Kind.BAD_NUMBER, id, "emitter " + id + " has a count of " + group.count());
      }
      String fault = group.curve().fault();
      if (fault != null) {
        add(Kind.BAD_NUMBER, id, "emitter " + id + ": " + fault);
      }
    }
  }

  /** Regulators must not hold the same node, a node held by a source, or feed one another. */
  private void regulators() {
    Map<String, String> holds = new HashMap<>();
    Map<String, String> draws = new HashMap<>();
    for (Link link : network.links()) {
      if (!(link instanceof Link.PressureRegulator valve)) {
        continue;
      }
      String id = valve.id();
      String other = holds.putIfAbsent(valve.to(), id);
      if (other != null) {
        contradiction(
            id, "regulators " + other + " and " + id + " both set the pressure at " + valve.to());
      }
      int node = network.findNode(valve.to());
      if (node >= 0 && !(network.nodes().get(node) instanceof Node.Junction)) {
        contradiction(
            id, "regulator " + id + " sets the pressure at " + valve.to() + ", which is a source");
      }
      draws.put(valve.from(), id);
    }
    for (Map.Entry<String, String> draw : draws.entrySet()) {
      String upstream = holds.get(draw.getKey());
      if (upstream != null) {
        contradiction(
            draw.getValue(),
            "regulator "
                + draw.getValue()
                + " starts where regulator "
                + upstream
                + " ends; put a length of pipe between them or leave one out");
      }
    }
  }

  private void contradiction(String id, String message) {
    add(Kind.CONTRADICTING_VALVES, id, message);
  }

  /** Every node needs some way to a source, closed or not. */
  private void connections() {
    List<Node> nodes = network.nodes();
    int n = nodes.size();
    boolean anySource = false;
    for (Node node : nodes) {
      anySource |= !(node instanceof Node.Junction);
    }
    if (!anySource) {
      add(Kind.NO_SOURCE, "", "the network has no source; add a reservoir, tank or supply");
      return;
    }
    int[] from = new int[network.links().size()];
    int[] to = new int[from.length];
    boolean[] misjoined = new boolean[n];
    for (int i = 0; i < from.length; i++) {
      from[i] = network.startOf(i);
      to[i] = network.endOf(i);
      if (from[i] < 0 || to[i] < 0) {
        int known = Math.max(from[i], to[i]);
        if (known >= 0) {
          misjoined[known] = true;
        }
        from[i] = 0;
        to[i] = 0;
      }
    }
    Adjacency adjacency = new Adjacency(n, from, to);
    boolean[] reached = new boolean[n];
    int[] open = new int[n];
    for (int i = 0; i < n; i++) {
      if (!(nodes.get(i) instanceof Node.Junction)) {
        flood(adjacency, i, reached, open);
      }
    }
    for (int i = 0; i < n; i++) {
      if (!reached[i]) {
        int size = flood(adjacency, i, reached, open);
        if (anyOf(misjoined, open, size)) {
          // a link whose other end is not known was to feed it; that is told already
          continue;
        }
        String id = nodes.get(i).id();
        String others =
            size == 1
                ? ""
                : " and " + (size - 1) + (size == 2 ? " node" : " nodes") + " joined to it";
        add(Kind.ISLAND, id, "no pipe leads from any source to node " + id + others);
      }
    }
  }

  private static boolean anyOf(boolean[] marked, int[] nodes, int size) {
    for (int at = 0; at < size; at++) {
      if (marked[nodes[at]]) {
        return true;
      }
    }
    return false;
  }

  private static int flood(Adjacency adjacency, int start, boolean[] reached, int[] open) {
    if (reached[start]) {
      return 0;
    }
    reached[start] = true;
    open[0] = start;
    int size = 1;
    for (int done = 0; done < size; done++) {
      int node = open[done];
      for (int at = adjacency.start(node); at < adjacency.start(node + 1); at++) {
        int next = adjacency.node(at);
        if (!reached[next]) {
          reached[next] = true;
          open[size++] = next;
        }
      }
    }
    return size;
  }

  private void finite(String id, String what, String field, double value) {
    if (!Double.isFinite(value)) {
      add(Kind.BAD_NUMBER, id, what + id + ": " + field + " must be a number, but is " + value);
    }
  }

  private void above(String id, String what, String field, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      add(Kind.BAD_NUMBER, id, what + id + ": " + field + " must be above 0, but is " + value);
    }
  }

  private void atLeast(String id, String what, String field, double value, double least) {
    if (!(value >= least) || Double.isInfinite(value)) {
      add(
          Kind.BAD_NUMBER,
          id,
          what + id + ": " + field + " must be at least " + least + ", but is " + value);
    }
  }
}
