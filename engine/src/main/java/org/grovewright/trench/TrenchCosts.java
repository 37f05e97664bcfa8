package org.grovewright.trench;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.catalogue.TrenchGround;

/**
 * What a metre of trench and a metre of pipe in it cost, in money of the plan. Work counts by the
 * rates of the catalogue's tasks and the value of an hour; the time to begin a task does not, since
 * it is the same for every way.
 */
public final class TrenchCosts {
  private final double pipePerM;
  private final double servicePiece;
  private final Map<TrenchGround.Kind, double[]> perM = new EnumMap<>(TrenchGround.Kind.class);
  private final Map<TrenchGround.Kind, Double> reluctance = new EnumMap<>(TrenchGround.Kind.class);

  /** Prices of goods by the metre: the pipe, tape over it, a sleeve under paving. */
  public record Prices(double pipe, double tape, double sleeve) {}

  /**
   * Costs by the rates of a catalogue.
   *
   * @param valuePerS money for a second of work
   */
  public TrenchCosts(
      Catalogue catalogue, TrenchRules rules, Burial burial, Prices prices, double valuePerS) {
    pipePerM = prices.pipe();
    servicePiece = rate(catalogue, "expose-service") * valuePerS;
    for (TrenchGround ground : catalogue.grounds()) {
      double[] money = new double[2];
      for (int v = 0; v < 2; v++) {
        double depth = burial.coverM(ground, v == 1) + rules.beddingM();
        double volume = rules.leastWidthM() * depth;
        double seconds =
            volume * (rate(catalogue, ground.digTask()) + rate(catalogue, "backfill-trench"))
                + rules.leastWidthM()
                    * (rate(catalogue, ground.liftTask()) + rate(catalogue, ground.mendTask()));
        boolean sleeved = ground.kind() == TrenchGround.Kind.PAVING;
        money[v] = seconds * valuePerS + prices.tape() + (sleeved ? prices.sleeve() : 0);
      }
      perM.put(ground.kind(), money);
      reluctance.put(ground.kind(), ground.reluctance());
    }
  }

  private static double rate(Catalogue catalogue, Optional<String> task) {
    return task.map(key -> rate(catalogue, key)).orElse(0.0);
  }

  private static double rate(Catalogue catalogue, String task) {
    TaskRate rate = catalogue.tasks().get(task);
    return rate == null ? 0 : rate.secondsPerUnit();
  }

  /** Money for a metre of pipe. */
  double pipePerM() {
    return pipePerM;
  }

  /** Money for uncovering a service by hand where the trench crosses it. */
  double servicePiece() {
    return servicePiece;
  }

  /** Money for a metre of trench through a kind of ground. */
  double trenchPerM(TrenchGround.Kind kind, boolean vehicles) {
    return perM.get(kind)[vehicles ? 1 : 0];
  }

  /** The same as it counts when ways are compared, with the harm it may do. */
  double weightPerM(TrenchGround.Kind kind, boolean vehicles) {
    return trenchPerM(kind, vehicles) * reluctance.get(kind);
  }
}
