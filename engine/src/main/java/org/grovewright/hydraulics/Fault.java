package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Something that goes wrong with a network, or a change of it to be weighed. */
public sealed interface Fault {
  /** What happened, in a few plain words. */
  String description();

  /** The network with the fault. */
  Network applyTo(Network network);

  /**
   * A cut or hole beside a node, as an orifice.
   *
   * @param nodeId nearest node
   * @param diameter diameter of the hole in m
   */
  record Leak(String nodeId, double diameter) implements Fault {
    /** Discharge coefficient of a sharp-edged hole; common textbook value, from memory. */
    private static final double SHARP_EDGE = 0.6;

    @Override
    public String description() {
      return "hole of " + Math.round(diameter * 1e4) / 10.0 + " mm at " + nodeId;
    }

    @Override
    public Network applyTo(Network network) {
      EmitterCurve hole = EmitterCurve.orifice(diameter, SHARP_EDGE);
      return network.toBuilder().emitter("leak at " + nodeId, nodeId, hole, 1).build();
    }
  }

  /**
   * A cut or hole in a pipe, as an orifice; the pipe is parted there by a node of its own.
   *
   * @param pipeId the pipe
   * @param share how far along the pipe it is, above 0 and below 1
   * @param diameter diameter of the hole in m
   */
  record Hole(String pipeId, double share, double diameter) implements Fault {
    @Override
    public String description() {
      return "hole of " + Math.round(diameter * 1e4) / 10.0 + " mm in " + pipeId;
    }

    /** Id of the node at the hole, which is also that of the orifice. */
    public String emitterId() {
      return "hole in " + pipeId;
    }

    @Override
    public Network applyTo(Network network) {
      Network.Builder builder = network.toBuilder();
      part(network, builder, pipeId, share, emitterId());
      EmitterCurve hole = EmitterCurve.orifice(diameter, Leak.SHARP_EDGE);
      return builder.emitter(emitterId(), emitterId(), hole, 1).build();
    }

    /**
     * Parts a pipe by a new node; the piece before the node keeps the pipe's name and fittings.
     *
     * @param network the network
     * @param builder a builder that starts from it
     * @param pipeId the pipe
     * @param share how far along the pipe the node is, above 0 and below 1
     * @param nodeId name of the node
     */
    static void part(
        Network network, Network.Builder builder, String pipeId, double share, String nodeId) {
      Link.Pipe p = (Link.Pipe) network.links().get(network.linkIndex(pipeId));
      double from = network.nodes().get(network.nodeIndex(p.from())).elevation();
      double to = network.nodes().get(network.nodeIndex(p.to())).elevation();
      builder.junction(nodeId, from + share * (to - from));
      builder.replace(
          new Link.Pipe(
              p.id(),
              p.from(),
              nodeId,
              p.length() * share,
              p.diameter(),
              p.roughness(),
              p.minorLoss(),
              p.checkValve(),
              p.closed()));
      builder.link(
          Link.Pipe.of(
              p.id() + " beyond " + nodeId,
              nodeId,
              p.to(),
              p.length() * (1 - share),
              p.diameter(),
              p.roughness()));
    }
  }

  /**
   * A valve or pipe stuck shut or stuck open.
   *
   * @param linkId the link
   * @param shut whether it is stuck shut
   */
  record Stuck(String linkId, boolean shut) implements Fault {
    @Override
    public String description() {
      return linkId + " stuck " + (shut ? "shut" : "open");
    }

    @Override
    public Network applyTo(Network network) {
      Link link = network.links().get(network.linkIndex(linkId));
      Link stuck = link;
      if (link instanceof Link.Pipe p) {
        stuck =
            new Link.Pipe(
                p.id(),
                p.from(),
                p.to(),
                p.length(),
                p.diameter(),
                p.roughness(),
                p.minorLoss(),
                p.checkValve() && shut,
                shut);
      } else if (link instanceof Link.LossDevice d) {
        stuck = new Link.LossDevice(d.id(), d.from(), d.to(), d.loss(), d.oneWay() && shut, shut);
      } else if (link instanceof Link.PressureRegulator r) {
        LossCurve open = LossCurve.minor(r.minorLoss(), r.diameter());
        stuck = new Link.LossDevice(r.id(), r.from(), r.to(), open, false, shut);
      } else if (link instanceof Link.Pump u) {
        if (!shut) {
          return network;
        }
        LossCurve none = LossCurve.power(0, 2);
        stuck = new Link.LossDevice(u.id(), u.from(), u.to(), none, true, true);
      }
      return network.toBuilder().replace(stuck).build();
    }
  }

  /**
   * A pipe partly blocked.
   *
   * @param pipeId the pipe
   * @param open share of the bore's area that is open, above 0
   */
  record Blockage(String pipeId, double open) implements Fault {
    @Override
    public String description() {
      return pipeId + " open to " + Math.round(1000 * open) / 10.0 + " % of its bore";
    }

    @Override
    public Network applyTo(Network network) {
      Link.Pipe pipe = (Link.Pipe) network.links().get(network.linkIndex(pipeId));
      double loss = pipe.minorLoss() + FaultSearch.blockageLoss(open);
      return network.toBuilder().replace(pipe.withMinorLoss(loss)).build();
    }
  }

  /**
   * Emitters that give less.
   *
   * @param groupIds the groups of emitters
   * @param flow what they still give, as a share
   */
  record Clogging(Set<String> groupIds, double flow) implements Fault {
    /** Copies the ids. */
    public Clogging {
      groupIds = Set.copyOf(groupIds);
    }

    /** Every second group of the network, as if half were clogged. */
    public static Clogging ofHalf(Network network, double flow) {
      List<String> ids = new ArrayList<>();
      for (int g = 0; g < network.emitters().size(); g += 2) {
        ids.add(network.emitters().get(g).id());
      }
      return new Clogging(Set.copyOf(ids), flow);
    }

    @Override
    public String description() {
      return groupIds.size() + " emitters down to " + Math.round(100 * flow) + " % of their flow";
    }

    @Override
    public Network applyTo(Network network) {
      Network.Builder builder = network.toBuilder();
      for (EmitterGroup group : network.emitters()) {
        if (groupIds.contains(group.id())) {
          builder.replace(
              new EmitterGroup(
                  group.id(), group.nodeId(), group.curve().scaled(flow), group.count()));
        }
      }
      return builder.build();
    }
  }

  /**
   * A reservoir or tank at another level.
   *
   * @param nodeId the reservoir
   * @param head level in m above the datum
   */
  record Level(String nodeId, double head) implements Fault {
    @Override
    public String description() {
      return nodeId + " at a level of " + head + " m";
    }

    @Override
    public Network applyTo(Network network) {
      return network.toBuilder().replace(new Node.Reservoir(nodeId, head)).build();
    }
  }

  /**
   * More emitters, as for added trees.
   *
   * @param nodeId where they are added
   * @param curve curve of one of them
   * @param count how many
   */
  record Addition(String nodeId, EmitterCurve curve, int count) implements Fault {
    @Override
    public String description() {
      return count + " more emitters at " + nodeId;
    }

    @Override
    public Network applyTo(Network network) {
      return network.toBuilder().emitter("added at " + nodeId, nodeId, curve, count).build();
    }
  }
}
