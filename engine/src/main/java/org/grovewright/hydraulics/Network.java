package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;

/**
 * Nodes, links and emitters of one network, in the order they were given. A network never changes.
 * It may be wrong: {@link #problems} says how, all at once, and {@link Solver} refuses it.
 */
public final class Network {
  private final FrictionFormula formula;
  private final double viscosity;
  private final double gravity;
  private final List<Node> nodes;
  private final List<Link> links;
  private final List<EmitterGroup> emitters;
  private final Map<String, Double> demands;
  private final Map<String, Integer> nodeIndex;
  private final Map<String, Integer> linkIndex;
  private final Map<String, Integer> emitterIndex;

  /** For each link and each group of emitters the places of its nodes, -1 where unknown. */
  private final int[] linkStart;

  private final int[] linkEnd;
  private final int[] emitterNode;
  private final List<HydraulicProblem> problems;

  private Network(Builder builder) {
    formula = builder.formula;
    viscosity = builder.viscosity;
    gravity = builder.gravity;
    nodes = List.copyOf(builder.nodes);
    links = List.copyOf(builder.links);
    emitters = List.copyOf(builder.emitters);
    demands = Collections.unmodifiableMap(new LinkedHashMap<>(builder.demands));
    nodeIndex = new HashMap<>(nodes.size() * 2);
    linkIndex = new HashMap<>(links.size() * 2);
    emitterIndex = new HashMap<>(emitters.size() * 2);
    for (int i = 0; i < nodes.size(); i++) {
      nodeIndex.putIfAbsent(nodes.get(i).id(), i);
    }
    for (int i = 0; i < links.size(); i++) {
      linkIndex.putIfAbsent(links.get(i).id(), i);
    }
    for (int i = 0; i < emitters.size(); i++) {
      emitterIndex.putIfAbsent(emitters.get(i).id(), i);
    }
    linkStart = new int[links.size()];
    linkEnd = new int[links.size()];
    for (int i = 0; i < linkStart.length; i++) {
      linkStart[i] = findNode(links.get(i).from());
      linkEnd[i] = findNode(links.get(i).to());
    }
    emitterNode = new int[emitters.size()];
    for (int i = 0; i < emitterNode.length; i++) {
      emitterNode[i] = findNode(emitters.get(i).nodeId());
    }
    problems = NetworkCheck.problemsOf(this);
  }

  /** A builder for a network whose pipes follow one friction formula. */
  public static Builder builder(FrictionFormula formula) {
    return new Builder(formula);
  }

  /** A builder that starts with everything of this network, to change parts of it. */
  public Builder toBuilder() {
    Builder builder = new Builder(formula);
    builder.viscosity = viscosity;
    builder.gravity = gravity;
    builder.nodes.addAll(nodes);
    builder.links.addAll(links);
    builder.emitters.addAll(emitters);
    for (EmitterGroup group : emitters) {
      builder.emittersAt.merge(group.nodeId(), 1, Integer::sum);
    }
    builder.demands.putAll(demands);
    return builder;
  }

  /** The friction formula of every pipe. */
  public FrictionFormula formula() {
    return formula;
  }

  /** Kinematic viscosity of the water, in m2/s. */
  public double viscosity() {
    return viscosity;
  }

  /** Acceleration of gravity, in m/s2. */
  public double gravity() {
    return gravity;
  }

  /** All nodes in the order they were given. */
  public List<Node> nodes() {
    return nodes;
  }

  /** All links in the order they were given. */
  public List<Link> links() {
    return links;
  }

  /** All groups of emitters in the order they were given. */
  public List<EmitterGroup> emitters() {
    return emitters;
  }

  /** Fixed demands by node id, in m3/s; a negative one is an inflow. */
  public Map<String, Double> demands() {
    return demands;
  }

  /** Everything that is wrong with the network; empty for one that can be solved. */
  public List<HydraulicProblem> problems() {
    return problems;
  }

  /**
   * Place of a node in {@link #nodes}.
   *
   * @throws IllegalArgumentException if there is no such node
   */
  public int nodeIndex(String id) {
    return indexIn(nodeIndex, id, "node");
  }

  /**
   * Place of a link in {@link #links}.
   *
   * @throws IllegalArgumentException if there is no such link
   */
  public int linkIndex(String id) {
    return indexIn(linkIndex, id, "link");
  }

  /**
   * Place of a group of emitters in {@link #emitters}.
   *
   * @throws IllegalArgumentException if there is no such group
   */
  public int emitterIndex(String id) {
    return indexIn(emitterIndex, id, "emitter");
  }

  /** Whether there is a link with this name. */
  public boolean hasLink(String id) {
    return linkIndex.containsKey(id);
  }

  /** Whether there is a group of emitters with this name. */
  public boolean hasEmitter(String id) {
    return emitterIndex.containsKey(id);
  }

  /** Place of a node in {@link #nodes}, or -1. */
  int findNode(String id) {
    Integer index = nodeIndex.get(id);
    return index == null ? -1 : index;
  }

  /** Place in {@link #nodes} of the node that a link starts at, or -1. */
  int startOf(int link) {
    return linkStart[link];
  }

  /** Place in {@link #nodes} of the node that a link ends at, or -1. */
  int endOf(int link) {
    return linkEnd[link];
  }

  /** Place in {@link #nodes} of the node that a group of emitters hangs on, or -1. */
  int nodeOfEmitter(int group) {
    return emitterNode[group];
  }

  private static int indexIn(Map<String, Integer> map, String id, String what) {
    Integer index = map.get(id);
    if (index == null) {
      throw new IllegalArgumentException("the network has no " + what + " named " + id);
    }
    return index;
  }

  /** Collects the parts of a network; never fails on wrong figures, which the network reports. */
  public static final class Builder {
    private final FrictionFormula formula;
    private final List<Node> nodes = new ArrayList<>();
    private final List<Link> links = new ArrayList<>();
    private final List<EmitterGroup> emitters = new ArrayList<>();
    private final Map<String, Integer> emittersAt = new HashMap<>();
    private final Map<String, Double> demands = new LinkedHashMap<>();
    private double viscosity = Water.kinematicViscosity(20);
    private double gravity = Water.STANDARD_GRAVITY;

    private Builder(FrictionFormula formula) {
      this.formula = Objects.requireNonNull(formula, "formula");
    }

    /** Sets the kinematic viscosity in m2/s; that of water at 20 degrees Celsius if not set. */
    public Builder kinematicViscosity(double m2PerS) {
      viscosity = m2PerS;
      return this;
    }

    /** Sets the acceleration of gravity in m/s2; the standard one if not set. */
    public Builder gravity(double mPerS2) {
      gravity = mPerS2;
      return this;
    }

    /** Adds any node. */
    public Builder node(Node node) {
      nodes.add(Objects.requireNonNull(node, "node"));
      return this;
    }

    /** Adds a junction at an elevation in m. */
    public Builder junction(String id, double elevationM) {
      return node(new Node.Junction(id, elevationM));
    }

    /** Adds open water at a level in m. */
    public Builder reservoir(String id, double headM) {
      return node(new Node.Reservoir(id, headM));
    }

    /** Adds a source at an elevation in m whose pressure falls as more is drawn. */
    public Builder source(String id, double elevationM, SupplyCurve supply) {
      return node(new Node.Source(id, elevationM, supply));
    }

    /** Adds a fixed demand in m3/s at a node, on top of what was added there before. */
    public Builder demand(String nodeId, double m3PerS) {
      demands.merge(nodeId, m3PerS, Double::sum);
      return this;
    }

    /** Adds any link. */
    public Builder link(Link link) {
      links.add(Objects.requireNonNull(link, "link"));
      return this;
    }

    /** Adds a plain pipe; lengths in m. */
    public Builder pipe(
        String id,
        String from,
        String to,
        double lengthM,
        double insideDiameterM,
        Roughness roughness) {
      return link(Link.Pipe.of(id, from, to, lengthM, insideDiameterM, roughness));
    }

    /** Adds a pressure regulator. */
    public Builder valve(
        String id,
        String from,
        String to,
        double insideDiameterM,
        double setPressureM,
        double minorLossK) {
      return link(
          new Link.PressureRegulator(id, from, to, insideDiameterM, setPressureM, minorLossK));
    }

    /** Adds a check valve with the loss of a K in its bore. */
    public Builder checkValve(
        String id, String from, String to, double insideDiameterM, double minorLossK) {
      return link(
          new Link.LossDevice(
              id, from, to, LossCurve.minor(minorLossK, insideDiameterM), true, false));
    }

    /** Adds a filter, meter or the like with a published loss curve. */
    public Builder filter(String id, String from, String to, LossCurve loss) {
      return link(new Link.LossDevice(id, from, to, loss, false, false));
    }

    /** Adds a pump. */
    public Builder pump(String id, String from, String to, PumpCurve curve) {
      return link(new Link.Pump(id, from, to, curve));
    }

    /** Adds one emitter at a node; it gets the node's id with a running number. */
    public Builder emitter(String nodeId, EmitterCurve curve) {
      return emitter(nodeId, curve, 1);
    }

    /** Adds like emitters at a node; the group gets the node's id with a running number. */
    public Builder emitter(String nodeId, EmitterCurve curve, int count) {
      int number = emittersAt.merge(nodeId, 1, Integer::sum);
      return emitter(nodeId + "#" + number, nodeId, curve, count);
    }

    /** Adds like emitters at a node under a name of their own. */
    public Builder emitter(String id, String nodeId, EmitterCurve curve, int count) {
      emitters.add(new EmitterGroup(id, nodeId, curve, count));
      return this;
    }

    /**
     * Puts a node in the place of the one with its id.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Builder replace(Node node) {
      replaceIn(nodes, Node::id, node);
      return this;
    }

    /**
     * Puts a link in the place of the one with its id.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Builder replace(Link link) {
      replaceIn(links, Link::id, link);
      return this;
    }

    /**
     * Puts a group of emitters in the place of the one with its id.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Builder replace(EmitterGroup group) {
      replaceIn(emitters, EmitterGroup::id, group);
      return this;
    }

    private static <T> void replaceIn(List<T> parts, Function<T, String> id, T part) {
      for (int i = 0; i < parts.size(); i++) {
        if (id.apply(parts.get(i)).equals(id.apply(part))) {
          parts.set(i, part);
          return;
        }
      }
      throw new IllegalArgumentException("the network has no part named " + id.apply(part));
    }

    /** The network as given so far, right or wrong. */
    public Network build() {
      return new Network(this);
    }
  }
}
