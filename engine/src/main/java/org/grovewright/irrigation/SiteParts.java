package org.grovewright.irrigation;

import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply;
import org.grovewright.trench.LaidMain;

/** Gathers what all zones share: supply pipe, feeder tube and the losses of fittings. */
final class SiteParts {
  private SiteParts() {}

  static ZoneNetwork.Site of(
      Grove grove, Catalogue catalogue, SupplyModel supply, Terrain terrain) {
    Supply given = grove.supply();
    Pipe supplyPipe = given.pipe().map(p -> catalogue.pipes().get(p.pipeKey())).orElse(null);
    double supplyPipeM = given.pipe().map(Supply.SupplyPipe::lengthM).orElse(0.0);
    HeadParts parts = new HeadParts(catalogue);
    Pipe feeder =
        catalogue.pipes().values().stream()
            .filter(p -> p.use() == Pipe.Use.FEEDER)
            .filter(p -> p.market().serves(grove.preferences().units()))
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("the catalogue has no feeder tube"));
    Pipe usualMain =
        catalogue.pipes().values().stream()
            .filter(p -> p.use() == Pipe.Use.MAIN)
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("the catalogue has no main pipe"));
    double backflow =
        new BackflowAdvice(grove, catalogue, supply, terrain, parts, List.of())
            .device()
            .map(Part::lossCoefficient)
            .orElse(0.0);
    double valve = parts.part("part.valve-electric-20").map(Part::lossCoefficient).orElse(0.0);
    return new ZoneNetwork.Site(
        supply,
        supplyPipe,
        supplyPipeM,
        feeder,
        new ZoneNetwork.Fittings(
            given.kind() == Supply.SupplyKind.GRAVITY_TANK ? 0 : valve,
            backflow,
            parts.lossOf("tee", usualMain),
            parts.lossOf("elbow", usualMain),
            catalogue.constant("irrigation.head-bore").value()),
        terrain,
        grove.preferences().friction(),
        parts,
        LaidMain.of(grove));
  }
}
