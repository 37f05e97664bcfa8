package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.hydraulics.Uniformity;

/**
 * A zone as it runs: pressure and flow of every emitter, solved on its network.
 *
 * @param design the zone
 * @param network its network
 * @param solution heads and flows
 * @param outlets what each outlet gives, in the order of the design
 * @param flowM3PerS flow drawn from the supply, m3/s
 * @param emissionUniformity design emission uniformity, share
 * @param lowQuarter low-quarter distribution uniformity of the emitters, share
 * @param christiansen coefficient of uniformity, share
 * @param maxVelocityMPerS greatest speed in any pipe, m/s
 * @param fastestPipe id of the pipe with that speed
 */
public record ZoneResult(
    ZoneDesign design,
    ZoneNetwork network,
    Solution solution,
    List<OutletResult> outlets,
    double flowM3PerS,
    double emissionUniformity,
    double lowQuarter,
    double christiansen,
    double maxVelocityMPerS,
    String fastestPipe) {
  /** Copies the list. */
  public ZoneResult {
    outlets = List.copyOf(outlets);
  }

  /**
   * What one outlet gives.
   *
   * @param outlet the outlet
   * @param pressurePa gauge pressure at it, pascals
   * @param flowM3PerS its flow, m3/s
   * @param relativeFlow its flow over that of its type at the zone's mean pressure, so that unlike
   *     emitters can be compared
   */
  public record OutletResult(
      Outlet outlet, double pressurePa, double flowM3PerS, double relativeFlow) {}

  /** Builds and solves the network of a zone. */
  static ZoneResult solve(ZoneDesign design, ZoneNetwork.Site site) {
    ZoneNetwork network = ZoneNetwork.of(design, site);
    Solution solution = Solver.solve(network.network());
    return of(design, network, solution);
  }

  /** Reads a solution of a zone's network. */
  static ZoneResult of(ZoneDesign design, ZoneNetwork network, Solution solution) {
    List<Outlet> all = design.outlets();
    double[] pressureM = new double[all.size()];
    double meanM = 0;
    for (int i = 0; i < pressureM.length; i++) {
      pressureM[i] = solution.pressure(network.outletNodes().get(all.get(i).id()));
      meanM += Math.max(0, pressureM[i]) / pressureM.length;
    }
    Map<EmitterType, Double> usual = new HashMap<>();
    List<OutletResult> outlets = new ArrayList<>();
    for (int i = 0; i < pressureM.length; i++) {
      Outlet outlet = all.get(i);
      double mean = meanM;
      double typical =
          usual.computeIfAbsent(outlet.emitter(), type -> ZoneNetwork.curveOf(type).flow(mean));
      double flow = solution.emitterFlow(outlet.id());
      outlets.add(
          new OutletResult(
              outlet,
              pressureM[i] * SupplyModel.PASCALS_PER_METRE,
              flow,
              typical > 0 ? flow / typical : 0));
    }
    double[] relative = outlets.stream().mapToDouble(OutletResult::relativeFlow).toArray();
    double sum = 0;
    for (double r : relative) {
      sum += r;
    }
    boolean flows = sum > 0;
    double velocity = 0;
    String fastest = "";
    Network parts = network.network();
    for (Link link : parts.links()) {
      double v = link instanceof Link.Pipe ? solution.velocity(link.id()) : 0;
      if (v > velocity) {
        velocity = v;
        fastest = link.id();
      }
    }
    return new ZoneResult(
        design,
        network,
        solution,
        outlets,
        solution.supplied(ZoneNetwork.SUPPLY_NODE),
        flows ? emissionUniformity(outlets, sum / relative.length) : 0,
        flows ? Uniformity.lowQuarter(relative) : 0,
        flows ? Uniformity.christiansen(relative) : 0,
        velocity,
        fastest);
  }

  /**
   * Keller and Karmeli's design emission uniformity, taken plant by plant so that plants may have
   * unlike emitters: the least of {@code (1 - 1.27 CV / sqrt(n)) q / qn} over the mean of {@code q
   * / qn}. Where all plants have the same emitters it is the published formula.
   */
  private static double emissionUniformity(List<OutletResult> outlets, double mean) {
    Map<Integer, Integer> count = new LinkedHashMap<>();
    for (OutletResult o : outlets) {
      count.merge(o.outlet().plant(), 1, Integer::sum);
    }
    double least = Double.POSITIVE_INFINITY;
    for (OutletResult o : outlets) {
      double n = count.get(o.outlet().plant());
      least = Math.min(least, spread(o.outlet().emitter(), n) * o.relativeFlow());
    }
    return least / mean;
  }

  /**
   * Keller and Karmeli's allowance for emitters that are made unlike, for a plant with n of them.
   */
  static double spread(EmitterType emitter, double n) {
    return 1 - 1.27 * emitter.manufacturingCv() / Math.sqrt(n);
  }

  /** The same zone under another name. */
  ZoneResult named(String id) {
    return new ZoneResult(
        new ZoneDesign(
            id,
            design.main(),
            design.mainPipe(),
            design.laterals(),
            design.regulator(),
            design.filter(),
            design.year()),
        network,
        solution,
        outlets,
        flowM3PerS,
        emissionUniformity,
        lowQuarter,
        christiansen,
        maxVelocityMPerS,
        fastestPipe);
  }

  /** Flow of each plant of the zone by its index in the grove, m3/s. */
  public Map<Integer, Double> plantFlows() {
    Map<Integer, Double> flows = new LinkedHashMap<>();
    for (OutletResult o : outlets) {
      flows.merge(o.outlet().plant(), o.flowM3PerS(), Double::sum);
    }
    return flows;
  }

  /** The outlet with the least flow for its rating. */
  public OutletResult weakest() {
    OutletResult weakest = outlets.get(0);
    for (OutletResult o : outlets) {
      if (o.relativeFlow() < weakest.relativeFlow() - 1e-12) {
        weakest = o;
      }
    }
    return weakest;
  }

  /** Least pressure at any outlet, pascals. */
  public double minPressurePa() {
    return outlets.stream().mapToDouble(OutletResult::pressurePa).min().orElse(0);
  }

  /** Greatest pressure at any outlet, pascals. */
  public double maxPressurePa() {
    return outlets.stream().mapToDouble(OutletResult::pressurePa).max().orElse(0);
  }

  boolean meets(Rulebook rules) {
    return shortness(rules) <= 1e-9;
  }

  /** How far the zone is from keeping every rule; 0 where it keeps them. */
  double shortness(Rulebook rules) {
    double shortness = rules.evenness().shortness(this);
    shortness += Math.max(0, maxVelocityMPerS / rules.maxVelocityMPerS() - 1);
    return shortness + pressureShort();
  }

  /** By which shares pressures leave the working ranges of their emitters, in all. */
  double pressureShort() {
    double shortness = 0;
    for (OutletResult o : outlets) {
      double least = o.outlet().emitter().minPressurePa();
      double most = o.outlet().emitter().maxPressurePa();
      shortness += Math.max(0, 1 - o.pressurePa() / least);
      shortness += Math.max(0, o.pressurePa() / most - 1);
    }
    return shortness;
  }
}
