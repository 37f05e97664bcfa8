package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.model.Grove;

/**
 * How long a zone may run before water stands and runs off, and how long it must then pause.
 *
 * <p>An emitter spreads its flow over its wetted circle. Where that is more than the soil takes in,
 * water stands until the small hollows are full: {@code on = S / (R - I)}; the pause lets the soil
 * drink what stands: {@code soak = S / I}.
 *
 * @param rateMPerS greatest application rate R of the zone, m/s over the wetted circle
 * @param infiltrationMPerS infiltration rate I of the soil, m/s
 * @param storageM water S that the surface holds, metres
 */
record CycleRule(double rateMPerS, double infiltrationMPerS, double storageM) {
  private static final int MINUTE = 60;

  /** Keeps a whole number of minutes whole when it comes out of a division. */
  private static final double ROUNDING = 1e-9;

  /** The rules of zones on the soil of their grove. */
  static List<CycleRule> of(Grove grove, Catalogue catalogue, List<ZoneResult> zones) {
    double infiltration =
        grove
            .soil()
            .textureKey()
            .map(key -> catalogue.textures().get(key).infiltrationMPerS())
            .orElseGet(() -> catalogue.constant("irrigation.assumed-infiltration").value());
    double storage = catalogue.constant("irrigation.surface-storage").value();
    return zones.stream().map(zone -> of(zone, infiltration, storage)).toList();
  }

  static CycleRule of(ZoneResult zone, double infiltrationMPerS, double storageM) {
    double rate = 0;
    for (ZoneResult.OutletResult o : zone.outlets()) {
      EmitterType emitter = o.outlet().emitter();
      double d = emitter.wettedDiameterM();
      rate = Math.max(rate, o.flowM3PerS() / (Math.PI / 4 * d * d));
    }
    return new CycleRule(rate, infiltrationMPerS, storageM);
  }

  /** Whether a long run must be cut into cycles. */
  boolean limits() {
    return rateMPerS > infiltrationMPerS;
  }

  /** Longest run before water would run off, whole minutes, at least one. */
  int longestRunMinutes() {
    if (!limits()) {
      return Integer.MAX_VALUE;
    }
    return (int) Math.max(1, storageM / (rateMPerS - infiltrationMPerS) / MINUTE + ROUNDING);
  }

  /** Pause between cycles, seconds, in whole minutes. */
  int soakS() {
    return limits()
        ? (int) Math.ceil(storageM / infiltrationMPerS / MINUTE - ROUNDING) * MINUTE
        : 0;
  }
}
