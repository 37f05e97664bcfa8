package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.demand.Requirement;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.model.Supply.SupplyKind;
import org.grovewright.quantity.FigureBook;
import org.grovewright.trench.Trench;

/**
 * What must be bought and done for a watering system.
 *
 * @param trench trench of the mains
 * @param list goods
 * @param work work
 * @param findings remarks on the way of the mains and on devices
 */
record Goods(Trench trench, GoodsList list, List<WorkAmount> work, List<Finding> findings) {

  /** Counts a solved system. */
  static Goods of(List<ZoneResult> zones, DesignSite with) {
    return zones.isEmpty()
        ? new Goods(Trench.NONE, new GoodsList(), List.of(), List.of())
        : new Counter(zones, with).count();
  }

  /** The goods as requirements, with their figures and that of the trench entered. */
  List<Requirement> enter(FigureBook book, DesignSite with) {
    if (work.isEmpty()) {
      return List.of();
    }
    double mains =
        work.stream()
            .filter(w -> w.taskKey().equals("lay-main"))
            .mapToDouble(WorkAmount::amount)
            .sum();
    new TrenchGoods(trench, with.catalogue())
        .enter(book, with.trench().burial(), with.trench().rules(), mains);
    return list.requirements(book);
  }

  private static final class Counter {
    private final List<ZoneResult> zones;
    private final Grove grove;
    private final ZoneNetwork.Site site;
    private final Rulebook rules;
    private final HeadParts parts;
    private final BackflowAdvice backflow;
    private final double ventRiseM;
    private final double lowGaugePa;
    private final Trench trench;
    private final TrenchGoods inGround;
    private final GoodsList goods = new GoodsList();
    private final List<WorkAmount> work = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private final PipeGoods pipes;

    Counter(List<ZoneResult> zones, DesignSite with) {
      this.zones = zones;
      this.grove = with.grove();
      this.site = with.network();
      this.rules = with.rules();
      this.parts = site.parts();
      this.backflow = with.backflow(zones);
      this.pipes = new PipeGoods(site, rules, goods, work, findings);
      this.ventRiseM = with.catalogue().constant("irrigation.vent-rise").value();
      this.lowGaugePa = with.catalogue().constant("irrigation.low-gauge").value();
      this.trench = with.trench().of(zones);
      this.inGround = new TrenchGoods(trench, with.catalogue());
    }

    Goods count() {
      head();
      for (ZoneResult zone : zones) {
        zone(zone);
      }
      workOnMains();
      return new Goods(trench, goods, work, findings);
    }

    private void head() {
      SupplyKind kind = grove.supply().kind();
      grove
          .supply()
          .pipe()
          .ifPresent(
              p -> {
                if (grove.watering().propose() && kind == SupplyKind.GRAVITY_TANK) {
                  goods.length(p.pipeKey(), p.lengthM(), "supply pipe");
                }
              });
      String before = backflow.count() > 1 ? "one behind each valve" : "head of the system";
      backflow.device().ifPresent(p -> goods.pieces(p.key(), backflow.count(), before));
      findings.add(backflow.remark());
      for (Part timer : timers(kind)) {
        goods.pieces(timer.key(), 1, "head of the system");
      }
      ZoneResult largest =
          zones.stream().max(Comparator.comparingDouble(ZoneResult::flowM3PerS)).orElseThrow();
      goods.pieces(largest.design().filter().key(), 1, "head of the system");
      String gauge = restingPa() > lowGaugePa ? "gauge" : "gauge-low";
      for (String role : List.of(gauge, "gauge-tee", "thread-tape", "punch")) {
        parts
            .fitting(role, largest.design().mainPipe())
            .ifPresent(p -> goods.pieces(p.key(), 1, "head of the system"));
      }
      work.add(new WorkAmount("assemble-head", "", zones.size(), ""));
    }

    /** Pressure with nothing running at the lowest place that water is led to, pascals. */
    private double restingPa() {
      SupplyModel supply = site.supply();
      double lowest =
          zones.stream()
              .flatMap(zone -> zone.design().allOutlets().stream())
              .mapToDouble(outlet -> site.terrain().heightAt(outlet.at()))
              .min()
              .orElse(supply.elevationM());
      return (supply.curve().staticHead() + supply.elevationM() - lowest)
          * SupplyModel.PASCALS_PER_METRE;
    }

    /** Timers and valves; they stand where water leaves a laid main, be it at several places. */
    private List<Part> timers(SupplyKind kind) {
      LaidMainUse laid = LaidMainUse.of(zones, site.laidMain());
      return laid.apart()
          ? Collections.nCopies(laid.outlets(), parts.timers(kind, 1)).stream()
              .flatMap(List::stream)
              .toList()
          : parts.timers(kind, zones.size());
    }

    private void zone(ZoneResult result) {
      ZoneDesign zone = result.design();
      zone.regulator().ifPresent(r -> goods.pieces(r.key(), 1, zone.id()));
      pipes.main(zone);
      int lines = 0;
      for (ZoneDesign.LateralDesign lateral : zone.laterals()) {
        pipes.lateral(zone.id(), lateral);
        lines += lateral.lines().size();
      }
      int first = 0;
      for (ZoneDesign.LateralDesign lateral : zone.laterals()) {
        for (Line line : lateral.lines()) {
          for (Outlet outlet : line.outlets()) {
            first += outlet.fromYear() == 1 ? 1 : 0;
            goods.pieces(outlet.emitter().key(), 1, outlet.id(), outlet.fromYear());
            goods.length(site.feeder().key(), line.feederM(outlet, site.terrain()), outlet.id());
          }
        }
      }
      if (rise(zone) > ventRiseM) {
        pipes.fitting("air-vent", zone.mainPipe(), 1, zone.id() + ", highest point");
      }
      work.add(new WorkAmount("flush", zone.id(), 1, ""));
      work.add(new WorkAmount("leak-test", zone.id(), 1, ""));
      work.add(new WorkAmount("flush-lateral", zone.id(), lines, ""));
      work.add(new WorkAmount("fit-emitter", zone.id(), first, emitters(zone)));
      int cans = Math.min(first, rules.catchCans());
      work.add(new WorkAmount("catch-can-check", zone.id(), cans, ""));
      work.add(new WorkAmount("set-timer", zone.id(), 1, ""));
    }

    private static String emitters(ZoneDesign zone) {
      return SystemFigures.zoneId(zone.id(), 1) + "emitters";
    }

    private double rise(ZoneDesign zone) {
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      List<Point> places = new ArrayList<>();
      zone.main().forEach(places::addAll);
      zone.outlets().forEach(outlet -> places.add(outlet.at()));
      for (Point place : places) {
        double height = site.terrain().heightAt(place);
        least = Math.min(least, height);
        most = Math.max(most, height);
      }
      return most - least;
    }

    private void workOnMains() {
      double mains = 0;
      for (ZoneResult zone : zones) {
        for (List<List<Point>> parts : site.laidMain().missing(zone.design().main())) {
          mains += parts.stream().mapToDouble(site.terrain()::lengthOver).sum();
        }
      }
      if (mains <= 0) {
        return;
      }
      inGround.goods(goods);
      inGround.work(work);
      work.add(new WorkAmount("lay-main", "", mains, "irrigation.main-length", inGround.all()));
      if (pipes.cementJoints() > 0) {
        work.add(new WorkAmount("cement-joint", "", pipes.cementJoints(), ""));
        Pipe pipe = zones.get(0).design().mainPipe();
        pipes.fitting("cement", pipe, 1, pipes.cementJoints() + " joints");
        pipes.fitting("primer", pipe, 1, pipes.cementJoints() + " joints");
      }
    }
  }
}
