package org.grovewright.irrigation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;
import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.LossCurve;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Roughness;
import org.grovewright.hydraulics.Water;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Point;
import org.grovewright.model.Preferences;
import org.grovewright.model.Row;
import org.grovewright.trench.LaidMain;

/**
 * The hydraulic network of one zone: supply, supply pipe, filter, valve, regulator, main, laterals
 * and every emitter, each at its height on the ground.
 *
 * @param network the network
 * @param outletNodes id of the node at which each outlet draws, by outlet id, in outlet order
 * @param alongM distance from the feed along its tubing of each node in a line, metres; the length
 *     of a pipe in the network is more than the way between nodes where it has barbs in it
 */
public record ZoneNetwork(
    Network network, Map<String, String> outletNodes, Map<String, Double> alongM) {
  /** Id of the node at which the water comes in. */
  public static final String SUPPLY_NODE = "supply";

  /** Id of the pipe from the tested outlet to the head of the system, where there is one. */
  public static final String SUPPLY_PIPE_LINK = "supply-pipe";

  /** Id of the link that stands for the zone's valve and the backflow preventer. */
  public static final String VALVE_LINK = "valve-and-backflow";

  private static final String HEAD_NODE = "head";

  /** Ids of the nodes that the networks of all zones have in common. */
  public static final Set<String> SHARED_NODES = Set.of(SUPPLY_NODE, HEAD_NODE);

  /** Outlets closer together than this share a node: a pipe needs a length. */
  private static final double SAME_PLACE_M = 0.001;

  /**
   * What all zones share.
   *
   * @param supply the supply
   * @param supplyPipe pipe between the tested outlet and the head of the system, or null
   * @param supplyPipeM its length, metres
   * @param feeder thin tube to emitters away from their line
   * @param fittings loss coefficients of fittings
   * @param terrain the ground
   * @param friction friction formula
   * @param parts the devices and fittings there are
   * @param laidMain the main that lies there already
   */
  record Site(
      SupplyModel supply,
      Pipe supplyPipe,
      double supplyPipeM,
      Pipe feeder,
      Fittings fittings,
      Terrain terrain,
      Preferences.Friction friction,
      HeadParts parts,
      LaidMain laidMain) {
    /** The same behind another backflow preventer. */
    Site behind(Part device) {
      return new Site(
          supply,
          supplyPipe,
          supplyPipeM,
          feeder,
          new Fittings(
              fittings.valve,
              device.lossCoefficient(),
              fittings.tee,
              fittings.elbow,
              fittings.headBoreM),
          terrain,
          friction,
          parts,
          laidMain);
    }
  }

  /**
   * Loss coefficients K on the velocity head.
   *
   * @param valve zone valve, in the bore of the head
   * @param backflow backflow preventer, in the bore of the head
   * @param tee branch of a tee, in its pipe
   * @param elbow bend, in its pipe
   * @param headBoreM bore of the devices at the head, metres
   */
  record Fittings(double valve, double backflow, double tee, double elbow, double headBoreM) {}

  /** Builds the network of a zone; its parts are named after the zone's rows and plants. */
  static ZoneNetwork of(ZoneDesign zone, Site site) {
    return new Builder(zone, site).build();
  }

  /**
   * Id of a piece of a line's tubing in the network.
   *
   * @param line the line
   * @param number number of the piece from 1, counted from the feed
   */
  public static String pieceId(Line line, int number) {
    return "pipe-" + line.id() + "." + number;
  }

  /** The curve of a catalogue emitter. */
  static EmitterCurve curveOf(EmitterType emitter) {
    double perMetre = SupplyModel.PASCALS_PER_METRE;
    EmitterCurve curve =
        emitter.compensating()
            ? EmitterCurve.pressureCompensating(
                emitter.nominalFlowM3PerS(),
                emitter.minPressurePa() / perMetre,
                emitter.maxPressurePa() / perMetre,
                emitter.exponent())
            : EmitterCurve.through(
                emitter.nominalFlowM3PerS(),
                emitter.nominalPressurePa() / perMetre,
                emitter.exponent());
    return emitter.shutOffPressurePa().isPresent()
        ? curve.shuttingBelow(emitter.shutOffPressurePa().getAsDouble() / perMetre)
        : curve;
  }

  /** The roughness of a catalogue pipe in the terms of a friction formula. */
  static Roughness roughnessOf(Pipe pipe, Preferences.Friction friction) {
    return friction == Preferences.Friction.HAZEN_WILLIAMS
        ? Roughness.hazenWilliams(pipe.hazenWilliamsC())
        : Roughness.darcyWeisbach(pipe.roughnessM());
  }

  private static final class Builder {
    private final ZoneDesign zone;
    private final Site site;
    private final Network.Builder network;
    private final Map<String, String> outletNodes = new LinkedHashMap<>();
    private final Map<String, Double> alongM = new LinkedHashMap<>();
    private final Map<EmitterType, EmitterCurve> curves = new LinkedHashMap<>();

    Builder(ZoneDesign zone, Site site) {
      this.zone = zone;
      this.site = site;
      this.network =
          Network.builder(
              site.friction() == Preferences.Friction.HAZEN_WILLIAMS
                  ? FrictionFormula.HAZEN_WILLIAMS
                  : FrictionFormula.DARCY_WEISBACH);
    }

    ZoneNetwork build() {
      String at = head();
      for (int i = 0; i < zone.laterals().size(); i++) {
        at = leg(at, i);
        lateral(zone.laterals().get(i), at);
      }
      return new ZoneNetwork(network.build(), outletNodes, alongM);
    }

    /** Everything between the supply and the main; gives the node the main starts from. */
    private String head() {
      double ground = site.supply().elevationM();
      network.source(SUPPLY_NODE, ground, site.supply().curve());
      String at = SUPPLY_NODE;
      if (site.supplyPipe() != null) {
        network.junction(HEAD_NODE, ground);
        pipe(SUPPLY_PIPE_LINK, at, HEAD_NODE, site.supplyPipeM(), site.supplyPipe(), 0);
        at = HEAD_NODE;
      }
      network.junction("after-valve", ground);
      double k = site.fittings().valve() + site.fittings().backflow();
      network.filter(
          VALVE_LINK, at, "after-valve", LossCurve.minor(k, site.fittings().headBoreM()));
      Filter filter = zone.filter();
      network.junction("after-filter", ground);
      network.filter(
          "filter",
          "after-valve",
          "after-filter",
          LossCurve.through(
              filter.ratedFlowM3PerS(), filter.lossAtRatedPa() / SupplyModel.PASCALS_PER_METRE, 2));
      at = "after-filter";
      if (zone.regulator().isPresent()) {
        Regulator regulator = zone.regulator().get();
        network.junction("after-regulator", ground);
        double bore = site.fittings().headBoreM();
        double velocity = regulator.maxFlowM3PerS() / (Math.PI / 4 * bore * bore);
        double lossM = regulator.lossAtMaxPa() / SupplyModel.PASCALS_PER_METRE;
        network.valve(
            "regulator",
            at,
            "after-regulator",
            bore,
            regulator.setPressurePa() / SupplyModel.PASCALS_PER_METRE,
            lossM * 2 * Water.STANDARD_GRAVITY / (velocity * velocity));
        at = "after-regulator";
      }
      return at;
    }

    /** One leg of the main; gives the node at its end. */
    private String leg(String from, int index) {
      List<Point> path = zone.main().get(index);
      double length = site.terrain().lengthOver(path);
      if (length <= SAME_PLACE_M) {
        return from;
      }
      String to = "feed-" + zone.laterals().get(index).id();
      network.junction(to, height(path.get(path.size() - 1)));
      double k = site.fittings().elbow() * (path.size() - 2) + site.fittings().tee();
      pipe("main-" + (index + 1), from, to, length, zone.mainPipe(), k);
      return to;
    }

    private void lateral(ZoneDesign.LateralDesign lateral, String feed) {
      for (Line line : lateral.lines()) {
        Row walk = new Row("", line.path());
        String at = feed;
        double low = height(line.path().get(0));
        double done = 0;
        int pieces = 0;
        for (Outlet outlet : line.outlets()) {
          if (!outlet.openIn(zone.year())) {
            continue;
          }
          double step = outlet.alongM() - done;
          if (step > SAME_PLACE_M || at.equals(feed)) {
            String node = line.id() + "." + (pieces + 1);
            double high = height(walk.at(outlet.alongM()));
            network.junction(node, high);
            linePiece(
                line,
                lateral.tubing(),
                ++pieces,
                at,
                node,
                Math.hypot(Math.max(step, SAME_PLACE_M), high - low),
                outlet.emitter().barbLossM());
            done = Math.max(outlet.alongM(), done);
            alongM.put(node, done);
            at = node;
            low = high;
          }
          emitter(line, outlet, at);
        }
        if (line.closed() && pieces > 0) {
          double back = site.terrain().lengthOver(Paths.from(line.path(), done));
          linePiece(line, lateral.tubing(), pieces + 1, at, feed, Math.max(back, SAME_PLACE_M), 0);
        }
      }
    }

    private void linePiece(
        Line line, Pipe tubing, int number, String from, String to, double length, double barbM) {
      network.link(
          Link.Pipe.of(
                  pieceId(line, number),
                  from,
                  to,
                  length,
                  tubing.insideDiameterM(),
                  roughnessOf(tubing, site.friction()))
              .withBarbs(barbM > 0 ? 1 : 0, barbM));
    }

    private void emitter(Line line, Outlet outlet, String lineNode) {
      String at = lineNode;
      double feeder = line.feederM(outlet, site.terrain());
      if (feeder > SAME_PLACE_M) {
        at = "end-" + outlet.id();
        network.junction(at, height(outlet.at()));
        pipe("feeder-" + outlet.id(), lineNode, at, feeder, site.feeder(), 0);
      }
      network.emitter(
          outlet.id(), at, curves.computeIfAbsent(outlet.emitter(), ZoneNetwork::curveOf), 1);
      outletNodes.put(outlet.id(), at);
    }

    private void pipe(String id, String from, String to, double length, Pipe pipe, double k) {
      network.link(
          Link.Pipe.of(
                  id, from, to, length, pipe.insideDiameterM(), roughnessOf(pipe, site.friction()))
              .withMinorLoss(k));
    }

    private double height(Point at) {
      return site.terrain().heightAt(at);
    }
  }
}
