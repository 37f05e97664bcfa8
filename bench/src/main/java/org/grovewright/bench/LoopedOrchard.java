package org.grovewright.bench;

import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Roughness;

/** Networks for measuring: loops of about 200 emitters on a manifold that tapers with the flow. */
final class LoopedOrchard {
  private static final double LITRES_PER_HOUR = 1e-3 / 3600;
  private static final int EMITTERS_PER_LOOP = 200;

  private LoopedOrchard() {}

  /** A network with this many emitters. */
  static Network of(int emitters, FrictionFormula formula) {
    Roughness roughness =
        formula == FrictionFormula.HAZEN_WILLIAMS
            ? Roughness.hazenWilliams(145)
            : Roughness.darcyWeisbach(1.5e-6);
    EmitterCurve curve = EmitterCurve.through(2 * LITRES_PER_HOUR, 10, 0.5);
    int loops = Math.max(1, Math.round((float) emitters / EMITTERS_PER_LOOP));
    Network.Builder builder = Network.builder(formula).reservoir("in", 22);
    String before = "in";
    int made = 0;
    for (int loop = 0; loop < loops; loop++) {
      int upTo = (int) ((long) emitters * (loop + 1) / loops);
      String tee = "m" + loop;
      double flow = (emitters - made) * 2 * LITRES_PER_HOUR;
      double bore = Math.max(0.02, Math.sqrt(4 * flow / Math.PI / 0.8));
      builder.junction(tee, 0.002 * loop);
      builder.pipe("M" + loop, before, tee, 3, bore, roughness);
      before = tee;
      String last = tee;
      for (int i = made; i < upTo; i++) {
        String node = "e" + i;
        builder.junction(node, 0.002 * loop + 0.01 * (i % 13));
        builder.emitter(node, curve);
        builder.pipe("p" + i, last, node, 0.3, 0.0138, roughness);
        last = node;
      }
      builder.pipe("r" + loop, last, tee, 0.3, 0.0138, roughness);
      made = upTo;
    }
    return builder.build();
  }
}
