package org.grovewright.irrigation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.finding.Finding;
import org.grovewright.hydraulics.Link;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of a design, worked out anew from the solved networks of small invented groves. */
class DesignRulesTest {
  private static final Catalogue CATALOGUE = SmallCase.few(CatalogueFiles.load().catalogue());

  /** Keller and Karmeli's design emission uniformity, plant by plant, written out anew. */
  private static double uniformity(ZoneResult zone) {
    Map<Integer, Integer> counts = new HashMap<>();
    zone.outlets().forEach(o -> counts.merge(o.outlet().plant(), 1, Integer::sum));
    double meanPa =
        zone.outlets().stream().mapToDouble(o -> o.pressurePa()).average().orElseThrow();
    double sum = 0;
    double least = Double.POSITIVE_INFINITY;
    for (ZoneResult.OutletResult o : zone.outlets()) {
      EmitterType e = o.outlet().emitter();
      double typical = ZoneNetwork.curveOf(e).flow(meanPa / SupplyModel.PASCALS_PER_METRE);
      double ratio = o.flowM3PerS() / typical;
      double n = counts.get(o.outlet().plant());
      sum += ratio;
      least = Math.min(least, (1 - 1.27 * e.manufacturingCv() / Math.sqrt(n)) * ratio);
    }
    return least / (sum / zone.outlets().size());
  }

  private static boolean keepsRules(ZoneResult zone, Grove grove) {
    boolean keeps = uniformity(zone) >= 0.85 - 1e-6;
    for (ZoneResult.OutletResult o : zone.outlets()) {
      EmitterType e = o.outlet().emitter();
      keeps &= o.pressurePa() >= e.minPressurePa() - 1 && o.pressurePa() <= e.maxPressurePa() + 1;
    }
    for (Link link : zone.network().network().links()) {
      if (link instanceof Link.Pipe pipe) {
        double area = Math.PI / 4 * pipe.diameter() * pipe.diameter();
        keeps &= Math.abs(zone.solution().flow(pipe.id())) / area <= 1.5 + 1e-6;
      }
    }
    double open = zone.flowM3PerS();
    double test = grove.supply().flowTests().get(0).flowM3PerS();
    return keeps && open <= test;
  }

  @ParameterizedTest
  @ValueSource(longs = {101, 102, 103, 104, 105, 106, 107, 108, 109, 110, 111, 112, 113, 114, 115})
  void thePlanKeepsEveryRuleOrSaysThatNoWayDoes(long seed) {
    Grove grove = SmallCase.grove(seed, CATALOGUE);
    FigureBook book = new FigureBook();
    WaterNeeds needs = WaterNeeds.of(grove, CATALOGUE, book);
    WateringSystem system =
        WateringSystem.of(grove, CATALOGUE, needs, Terrain.of(grove.site()), book);

    boolean keeps = system.zones().stream().allMatch(zone -> keepsRules(zone, grove));
    assertThat(
            system.findings().stream()
                .filter(f -> f.severity() == Finding.Severity.SHORTFALL)
                .anyMatch(f -> f.code().equals("irrigation.no-way-fits")))
        .isEqualTo(!keeps);
    assertThat(system.alternatives().stream().filter(Alternative::planned))
        .singleElement()
        .satisfies(planned -> assertThat(planned.keepsRules()).isEqualTo(keeps));
  }
}
