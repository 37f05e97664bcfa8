package org.grovewright.trouble;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.hydraulics.Fault;
import org.grovewright.hydraulics.HydraulicException;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Node;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.hydraulics.SupplyCurve;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.irrigation.ZoneNetwork;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.irrigation.ZoneResult.OutletResult;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply.SupplyKind;
import org.grovewright.quantity.Kind;
import org.grovewright.trouble.Mishap.Place;
import org.grovewright.trouble.WhatIfAnswer.PlantChange;
import org.grovewright.trouble.WhatIfAnswer.ZoneChange;

/** Solves a watering system with and without a mishap and sets every plant side by side. */
public final class WhatIfs {
  /** The cut of the usual case: what a slip of a spade leaves. */
  public static final double SMALL_CUT_M = 0.003;

  private final Grove grove;
  private final List<ZoneResult> zones;
  private final Programme programme;
  private final int year;

  /**
   * Cases for a planned system.
   *
   * @param grove the grove
   * @param system its watering system
   * @param programme its timer
   * @param year year of the plan, from 1, whose emitters and needs count; later years than those
   *     planned are like the last
   */
  public WhatIfs(Grove grove, WateringSystem system, Programme programme, int year) {
    this.grove = grove;
    this.zones = system.zonesIn(year);
    this.programme = programme;
    this.year = Math.min(year, Programme.YEARS);
  }

  /** One of each mishap, at its most telling place. */
  public static List<Mishap> usual() {
    return List.of(
        new Mishap.MoreTrees(Optional.empty(), 2),
        new Mishap.HalfPressure(),
        new Mishap.Cut(Place.ANY, SMALL_CUT_M),
        new Mishap.StuckValve(Optional.empty(), true),
        new Mishap.StuckValve(Optional.empty(), false),
        new Mishap.HalfClogged(0),
        new Mishap.Severed(Place.ANY));
  }

  /**
   * What a mishap would change.
   *
   * @throws IllegalArgumentException if it names a row, zone or place that is not there
   */
  public WhatIfAnswer answer(Mishap mishap) {
    if (zones.isEmpty()) {
      throw new IllegalArgumentException("This grove has no watering system.");
    }
    if (mishap instanceof Mishap.MoreTrees more) {
      return moreTrees(more);
    } else if (mishap instanceof Mishap.HalfPressure) {
      return halfPressure();
    } else if (mishap instanceof Mishap.Cut cut) {
      return cut(cut);
    } else if (mishap instanceof Mishap.StuckValve valve) {
      return valve.open() ? stuckOpen(zone(valve.zoneId())) : stuckShut(zone(valve.zoneId()));
    } else if (mishap instanceof Mishap.HalfClogged clogged) {
      return halfClogged(clogged.left());
    }
    return severed(((Mishap.Severed) mishap).place());
  }

  private WhatIfAnswer moreTrees(Mishap.MoreTrees more) {
    List<Tubing.Run> runs = Tubing.along(more.rowId(), zones);
    RowExtension extension = new RowExtension(grove, runs, more.count());
    ZoneResult zone = runs.get(0).zone();
    Answer answer = new Answer();
    answer.remarks.addAll(extension.remarks());
    Solution after = answer.solve(extension.network());
    if (after != null) {
      answer.zone(zone, after);
      extension
          .addedEmitters()
          .forEach(
              (plant, ids) -> answer.added(zone, plant, ids, after, extension.templatePlant()));
    }
    return answer.titled(extension.title());
  }

  private WhatIfAnswer halfPressure() {
    boolean tank = grove.supply().kind() == SupplyKind.GRAVITY_TANK;
    Answer answer = new Answer();
    for (ZoneResult zone : zones) {
      Network network = zone.network().network();
      Node.Source source =
          (Node.Source) network.nodes().get(network.nodeIndex(ZoneNetwork.SUPPLY_NODE));
      SupplyCurve s = source.supply();
      SupplyCurve half = new SupplyCurve(s.staticHead() / 2, s.a(), s.n());
      Network changed =
          network.toBuilder()
              .replace(new Node.Source(source.id(), source.elevation(), half))
              .build();
      answer.zone(zone, answer.solve(changed));
    }
    return answer.titled(
        Told.of(
            tank
                ? "The tank is half full: the water stands half as high above its outlet."
                : "The supply has half its pressure with nothing running, as when a pump fails or"
                    + " the mains are low."));
  }

  private WhatIfAnswer cut(Mishap.Cut cut) {
    Tubing.Spot spot = Tubing.spot(cut.place(), zones);
    Tubing.Run run = spot.run();
    Fault.Hole hole = new Fault.Hole(run.piece(spot.stop()).id(), spot.share(), cut.diameterM());
    Network holed = hole.applyTo(run.zone().network().network());
    Answer answer = new Answer();
    Solution after = answer.solve(holed);
    answer.zone(run.zone(), after);
    if (after != null) {
      double lost = after.emitterFlow(hole.emitterId());
      double usual = run.zone().flowM3PerS() / run.zone().outlets().size();
      answer.remarks.add(
          Told.of(
              "The hole lets out {0}, as much as {1} of the zone's emitters.",
              lost, Kind.EMITTER_FLOW, Math.rint(lost / usual), Kind.COUNT));
    }
    return answer.titled(
        Told.of(
            "A cut as large as a round hole of {0}, {1} along the tubing of row "
                + run.profile().rowId()
                + ".",
            cut.diameterM(),
            Kind.BORE,
            spot.alongM(),
            Kind.LENGTH));
  }

  private WhatIfAnswer severed(Place place) {
    Tubing.Spot spot = Tubing.spot(place, zones);
    Tubing.Run run = spot.run();
    Network network = run.zone().network().network();
    Fault shut = new Fault.Stuck(run.piece(spot.stop()).id(), true);
    Answer answer = new Answer();
    answer.zone(run.zone(), answer.solve(shut.applyTo(network)));
    answer.remarks.add(
        Told.of(
            run.profile().line().closed()
                ? "The line is a loop: water still comes to every plant, now from one side only."
                : "The line is a dead end: nothing beyond the cut gets water."));
    return answer.titled(
        Told.of(
            "The tubing is cut through, {0} along row "
                + run.profile().rowId()
                + ", and both ends are folded shut.",
            spot.alongM(),
            Kind.LENGTH));
  }

  private static String called(ZoneResult zone) {
    return ZoneDesign.called(zone.design().id());
  }

  private WhatIfAnswer stuckShut(ZoneResult zone) {
    Fault shut = new Fault.Stuck(ZoneNetwork.VALVE_LINK, true);
    Answer answer = new Answer();
    answer.zone(zone, answer.solve(shut.applyTo(zone.network().network())));
    return answer.titled(Told.of("The valve of zone " + called(zone) + " does not open."));
  }

  private WhatIfAnswer stuckOpen(ZoneResult stuck) {
    Answer answer = new Answer();
    for (ZoneResult other : zones) {
      if (other == stuck) {
        continue;
      }
      JointNetwork joint = JointNetwork.of(other, stuck);
      Solution after = answer.solve(joint.network());
      answer.zone(other, after);
      if (after != null) {
        answer.remarks.add(
            Told.of(
                "While zone "
                    + called(other)
                    + " runs, zone "
                    + called(stuck)
                    + " draws {0} besides.",
                joint.flowOfSecond(after),
                Kind.FLOW));
      }
    }
    answer.remarks.add(
        Told.of(
            "Alone it goes on drawing {0}, which makes {1}, until someone shuts the supply by hand.",
            stuck.flowM3PerS(), Kind.FLOW, stuck.flowM3PerS(), Kind.DAILY_WATER));
    return answer.titled(Told.of("The valve of zone " + called(stuck) + " does not close."));
  }

  private WhatIfAnswer halfClogged(double left) {
    Answer answer = new Answer();
    for (ZoneResult zone : zones) {
      Network network = zone.network().network();
      Fault clogged = Fault.Clogging.ofHalf(network, left);
      answer.zone(zone, answer.solve(clogged.applyTo(network)));
    }
    answer.remarks.add(
        Told.of(
            "The emitters that stay clear give a little more, because less water rubs along the"
                + " pipes."));
    return answer.titled(
        left == 0
            ? Told.of("Half of the emitters, every second one, are clogged and give nothing.")
            : Told.of(
                "Half of the emitters, every second one, are clogged and give {0} of their flow.",
                left, Kind.SHARE));
  }

  private ZoneResult zone(Optional<String> id) {
    if (id.isEmpty()) {
      return zones.get(0);
    }
    List<String> known = new ArrayList<>();
    for (ZoneResult zone : zones) {
      if (Tubing.same(zone.design().id(), id.get())) {
        return zone;
      }
      known.add(zone.design().id());
    }
    throw new IllegalArgumentException(
        "There is no zone "
            + ZoneDesign.called(id.get())
            + "; there is "
            + String.join(", ", known)
            + ".");
  }

  /** The share of its need that a plant gets in its thirstiest month of the year. */
  private double shareOfNeed(int plant) {
    double most = -1;
    double share = 1;
    for (Programme.PlantSupply supply : programme.supplies()) {
      if (supply.plant() == plant && supply.year() == year && supply.needsM3PerS() > most) {
        most = supply.needsM3PerS();
        share = supply.share();
      }
    }
    return share;
  }

  /** An answer in the making. */
  private final class Answer {
    private final List<PlantChange> plants = new ArrayList<>();
    private final List<ZoneChange> changes = new ArrayList<>();
    private final List<Told> remarks = new ArrayList<>();

    WhatIfAnswer titled(Told title) {
      return new WhatIfAnswer(title, plants, changes, remarks);
    }

    /** Solves, or says why it cannot be solved. */
    Solution solve(Network network) {
      try {
        return Solver.solve(network);
      } catch (HydraulicException e) {
        remarks.add(Told.of("No steady flow was found: " + e.getMessage()));
        return null;
      }
    }

    /** Adds all plants of a zone; nothing where there is no solution. */
    void zone(ZoneResult zone, Solution after) {
      if (after == null) {
        return;
      }
      String id = zone.design().id();
      changes.add(new ZoneChange(id, zone.flowM3PerS(), after.supplied(ZoneNetwork.SUPPLY_NODE)));
      Map<Integer, double[]> byPlant = new LinkedHashMap<>();
      for (OutletResult o : zone.outlets()) {
        double[] sums =
            byPlant.computeIfAbsent(
                o.outlet().plant(),
                p -> new double[] {0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY});
        String node = zone.network().outletNodes().get(o.outlet().id());
        sums[0] += o.flowM3PerS();
        sums[1] += after.emitterFlow(o.outlet().id());
        sums[2] = Math.min(sums[2], o.pressurePa());
        sums[3] = Math.min(sums[3], pascals(after, node));
      }
      byPlant.forEach(
          (plant, s) -> {
            double need = shareOfNeed(plant);
            double ratio = s[0] > 0 ? s[1] / s[0] : 1;
            plants.add(
                new PlantChange(
                    grove.plantings().get(plant).id(),
                    id,
                    s[0],
                    s[1],
                    s[2],
                    s[3],
                    need,
                    need * ratio));
          });
    }

    /** Adds a plant that is new and needs as much as another. */
    void added(ZoneResult zone, String plant, List<String> emitters, Solution after, int like) {
      double flow = 0;
      double pressure = Double.POSITIVE_INFINITY;
      Map<String, String> nodes = new HashMap<>();
      after.network().emitters().forEach(g -> nodes.put(g.id(), g.nodeId()));
      for (String emitter : emitters) {
        flow += after.emitterFlow(emitter);
        pressure = Math.min(pressure, pascals(after, nodes.get(emitter)));
      }
      double usual = zone.plantFlows().get(like);
      double share = usual > 0 ? shareOfNeed(like) * flow / usual : 0;
      plants.add(new PlantChange(plant, zone.design().id(), 0, flow, 0, pressure, 0, share));
    }

    private double pascals(Solution solution, String node) {
      return Math.max(0, solution.pressure(node)) * 1000 * solution.network().gravity();
    }
  }

  /** A network in which two zones run at once. */
  private record JointNetwork(Network network, String prefix, List<String> emitters) {
    static JointNetwork of(ZoneResult first, ZoneResult second) {
      Network other = second.network().network();
      Network.Builder builder = first.network().network().toBuilder();
      String prefix = "also " + second.design().id() + ": ";
      for (Node node : other.nodes()) {
        if (!ZoneNetwork.SHARED_NODES.contains(node.id())) {
          builder.junction(prefix + node.id(), node.elevation());
        }
      }
      for (Link link : other.links()) {
        if (!link.id().equals(ZoneNetwork.SUPPLY_PIPE_LINK)) {
          builder.link(renamed(link, prefix));
        }
      }
      List<String> emitters = new ArrayList<>();
      other
          .emitters()
          .forEach(
              g -> {
                emitters.add(prefix + g.id());
                builder.emitter(prefix + g.id(), prefix + g.nodeId(), g.curve(), g.count());
              });
      return new JointNetwork(builder.build(), prefix, emitters);
    }

    private static Link renamed(Link link, String prefix) {
      String id = prefix + link.id();
      String from = end(link.from(), prefix);
      String to = end(link.to(), prefix);
      if (link instanceof Link.Pipe p) {
        return new Link.Pipe(
            id,
            from,
            to,
            p.length(),
            p.diameter(),
            p.roughness(),
            p.minorLoss(),
            p.checkValve(),
            p.closed());
      } else if (link instanceof Link.LossDevice d) {
        return new Link.LossDevice(id, from, to, d.loss(), d.oneWay(), d.closed());
      } else if (link instanceof Link.PressureRegulator r) {
        return new Link.PressureRegulator(
            id, from, to, r.diameter(), r.setPressure(), r.minorLoss());
      }
      return new Link.Pump(id, from, to, ((Link.Pump) link).curve());
    }

    private static String end(String node, String prefix) {
      return ZoneNetwork.SHARED_NODES.contains(node) ? node : prefix + node;
    }

    double flowOfSecond(Solution solution) {
      return emitters.stream().mapToDouble(solution::emitterFlow).sum();
    }
  }
}
