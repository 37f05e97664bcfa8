package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Stock;
import org.grovewright.model.Supply.SupplyKind;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.water.WaterNeeds;

/**
 * Prices a watering system over its life: goods by the metre or piece at the owner's price or the
 * typical one, work at the value of an hour, water that is given in excess at the price of water.
 */
final class Costs {
  private final Grove grove;
  private final Catalogue catalogue;
  private final Map<String, Double> unitPrices = new LinkedHashMap<>();
  private final Overwatering overwatering;
  private final double lifeYears;
  private final double labourPerS;
  private final boolean ownHour;
  private final Constant waterPrice;
  private final double waterPerM3;

  Costs(Grove grove, Catalogue catalogue, WaterNeeds needs) {
    this.grove = grove;
    this.catalogue = catalogue;
    overwatering =
        Overwatering.of(
            needs,
            WateringSystem.DESIGN_YEAR,
            catalogue.constant("irrigation.application-efficiency").value());
    lifeYears = catalogue.constant("irrigation.life-years").value();
    OptionalDouble own = grove.watering().wishes().hourOfWork();
    ownHour = own.isPresent();
    labourPerS = own.orElse(catalogue.constant("irrigation.labour-value").value() * times()) / 3600;
    boolean mains = grove.supply().kind() == SupplyKind.HOUSE_TAP;
    waterPrice =
        catalogue.constant(mains ? "irrigation.water-price" : "irrigation.own-water-price");
    waterPerM3 = waterPrice.value() * times();
  }

  double lifeYears() {
    return lifeYears;
  }

  double labourPerS() {
    return labourPerS;
  }

  /** Where the value of an hour comes from. */
  String hourOrigin() {
    return ownHour
        ? "your description: watering, hour_of_work"
        : "assumed: catalogue: constants, irrigation.labour-value";
  }

  /** Remark on an hour that the owner gave no value. */
  Optional<Finding> hourAssumed() {
    return ownHour
        ? Optional.empty()
        : Optional.of(
            Finding.of(
                "irrigation.hour-assumed",
                Severity.NOTE,
                "watering",
                "Where ways to build the watering are compared, an hour of work counts {0}, which"
                    + " is an assumption and not money that you pay out. Write hour_of_work in the"
                    + " watering part of your description to count your time otherwise, or 0.",
                new Quantity(labourPerS * 3600, Kind.MONEY)));
  }

  double waterPerM3() {
    return waterPerM3;
  }

  /** Money for a flow of 1 m3/s in a month of each year of the system's life. */
  double monthlyFlowValue() {
    return lifeYears * waterPerM3 * overwatering.monthM3();
  }

  /** Where the price of water comes from. */
  String waterPriceOrigin() {
    return "catalogue: constants, " + waterPrice.key();
  }

  Overwatering overwatering() {
    return overwatering;
  }

  /** Money of the plan for one of the catalogue's. */
  private double times() {
    return grove.stock().typicalTimes().orElse(1);
  }

  /** Price of one metre, piece or cubic metre; 0 where it is not known. */
  double unitPrice(String key) {
    return unitPrices.computeIfAbsent(key, this::findPrice);
  }

  private double findPrice(String key) {
    Stock.Price own = grove.stock().prices().get(key);
    if (own != null) {
      return own.amount() / own.packSize();
    }
    TypicalPrice typical = catalogue.prices().get(key);
    if (typical != null) {
      boolean same = typical.currency().equals(grove.stock().currency());
      return typical.amount() / typical.packSize() * (same ? 1 : times());
    }
    Pipe pipe = catalogue.pipes().get(key);
    // Plastic pipe is sold roughly by its weight, so bore stands in for a price not known.
    return pipe == null ? 0 : pipe.insideDiameterM() * 50;
  }

  /** Money for goods and for the work with them. */
  double of(GoodsList goods, List<WorkAmount> work) {
    double money = goods.cost(this::unitPrice, key -> true);
    return labourPerS == 0 ? money : money + seconds(work) * labourPerS;
  }

  /** Person-seconds of work; each task is begun once. */
  private double seconds(List<WorkAmount> work) {
    Map<String, Double> amounts = new LinkedHashMap<>();
    work.forEach(w -> amounts.merge(w.taskKey(), w.amount(), Double::sum));
    double seconds = 0;
    for (Map.Entry<String, Double> entry : amounts.entrySet()) {
      TaskRate rate = catalogue.tasks().get(entry.getKey());
      seconds += rate.setUpSeconds() + rate.secondsPerUnit() * entry.getValue();
    }
    return seconds;
  }

  /** The cost of a solved system with its goods. */
  LifeCost of(List<ZoneResult> zones, Goods goods) {
    double pipe = goods.list().cost(this::unitPrice, catalogue.pipes()::containsKey);
    double all = goods.list().cost(this::unitPrice, key -> true);
    double seconds = seconds(goods.work());
    double wasted = zones.stream().mapToDouble(this::wastedM3).sum();
    return new LifeCost(
        pipe, all - pipe, seconds, seconds * labourPerS, wasted, wasted * waterPerM3);
  }

  /** Water given in excess over the life of a zone, m3. */
  double wastedM3(ZoneResult zone) {
    return lifeYears * overwatering.perYearM3(flows(zone));
  }

  /** What every plant of a solved zone gets. */
  static List<Overwatering.Flow> flows(ZoneResult zone) {
    Map<Integer, Integer> counts = new LinkedHashMap<>();
    Map<Integer, EmitterType> types = new LinkedHashMap<>();
    for (ZoneResult.OutletResult o : zone.outlets()) {
      counts.merge(o.outlet().plant(), 1, Integer::sum);
      types.put(o.outlet().plant(), o.outlet().emitter());
    }
    List<Overwatering.Flow> flows = new ArrayList<>();
    zone.plantFlows()
        .forEach(
            (plant, flow) ->
                flows.add(
                    new Overwatering.Flow(
                        plant, flow, ZoneResult.spread(types.get(plant), counts.get(plant)))));
    return flows;
  }

  /** What every plant would get were the pressure the same at all. */
  static List<Overwatering.Flow> nominal(Sizing.Fitted zone) {
    List<Overwatering.Flow> flows = new ArrayList<>();
    for (List<LateralLayout.Served> lateral : zone.served()) {
      for (LateralLayout.Served p : lateral) {
        flows.add(
            new Overwatering.Flow(
                p.plant(),
                p.count() * p.emitter().nominalFlowM3PerS(),
                ZoneResult.spread(p.emitter(), p.count())));
      }
    }
    return flows;
  }
}
