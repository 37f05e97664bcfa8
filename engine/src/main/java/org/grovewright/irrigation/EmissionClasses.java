package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.hydraulics.Solution;
import org.grovewright.model.Point;

/**
 * The design emission uniformity that counts as good, by what sort of watering a zone is: points
 * far apart, points close together, or a line whose wet places run into one another, each on even
 * and on steep ground. The lower ends of the published ranges are the rows of the catalogue.
 *
 * <p>Drippers, bubblers and small sprays at plants are points alike; the ranges know no other class
 * for them.
 */
final class EmissionClasses {
  private final Constant floor;
  private final Constant wideM;
  private final Constant steepSlope;

  /** By sort of watering: on even and on steep ground. */
  private final Constant[][] good;

  private final double greatest;

  /** The classes of a catalogue. */
  EmissionClasses(Catalogue catalogue) {
    floor = catalogue.constant("irrigation.least-uniformity");
    wideM = catalogue.constant("irrigation.wide-spacing");
    steepSlope = catalogue.constant("irrigation.steep-ground");
    String[] sorts = {"wide", "close", "line"};
    good = new Constant[sorts.length][];
    double most = floor.value();
    for (int i = 0; i < sorts.length; i++) {
      String key = "irrigation.good-uniformity-" + sorts[i];
      good[i] =
          new Constant[] {catalogue.constant(key + "-even"), catalogue.constant(key + "-steep")};
      most = Math.max(most, Math.max(good[i][0].value(), good[i][1].value()));
    }
    greatest = most;
  }

  /**
   * The class of a zone.
   *
   * @param row the row of the catalogue that says what counts as good
   * @param floor the row that says below what no zone is planned
   * @param spacingM mean distance of a plant from the nearest other, metres; none for one plant
   * @param slope rise over run between the lowest and the highest emitter
   */
  record EmissionClass(Constant row, Constant floor, double spacingM, double slope) {
    /** Emission uniformity from which on it is good, share. */
    double good() {
      return Math.max(row.value(), floor.value());
    }
  }

  /** By how much a zone falls short of what counts as good there; 0 where it does not. */
  double shortness(ZoneResult zone) {
    double even = zone.emissionUniformity();
    return even >= greatest ? 0 : Math.max(0, of(zone).good() - even);
  }

  /** The class of a zone. */
  EmissionClass of(ZoneResult zone) {
    double spacing = spacing(zone.outlets());
    double slope = slope(zone);
    int sort = spacing >= wideM.value() ? 0 : spacing > wetted(zone.outlets()) ? 1 : 2;
    Constant row = good[sort][slope > steepSlope.value() ? 1 : 0];
    return new EmissionClass(row, floor, spacing, slope);
  }

  private static double spacing(List<ZoneResult.OutletResult> outlets) {
    Map<Integer, double[]> sums = new LinkedHashMap<>();
    for (ZoneResult.OutletResult o : outlets) {
      double[] sum = sums.computeIfAbsent(o.outlet().plant(), p -> new double[3]);
      sum[0] += o.outlet().at().x();
      sum[1] += o.outlet().at().y();
      sum[2]++;
    }
    List<double[]> places = new ArrayList<>(sums.values());
    double mean = 0;
    for (double[] a : places) {
      double nearest = Double.POSITIVE_INFINITY;
      for (double[] b : places) {
        if (a != b) {
          double dx = a[0] / a[2] - b[0] / b[2];
          double dy = a[1] / a[2] - b[1] / b[2];
          nearest = Math.min(nearest, dx * dx + dy * dy);
        }
      }
      mean += Math.sqrt(nearest) / places.size();
    }
    return mean;
  }

  /** Mean diameter that the emitters wet, metres. */
  private static double wetted(List<ZoneResult.OutletResult> outlets) {
    return outlets.stream()
        .map(o -> o.outlet().emitter())
        .mapToDouble(EmitterType::wettedDiameterM)
        .average()
        .orElse(0);
  }

  private static double slope(ZoneResult zone) {
    Solution solution = zone.solution();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    Point low = null;
    Point high = null;
    for (ZoneResult.OutletResult o : zone.outlets()) {
      String node = zone.network().outletNodes().get(o.outlet().id());
      double height = solution.head(node) - o.pressurePa() / SupplyModel.PASCALS_PER_METRE;
      if (height < least) {
        least = height;
        low = o.outlet().at();
      }
      if (height > most) {
        most = height;
        high = o.outlet().at();
      }
    }
    double apart = low == null ? 0 : low.distanceTo(high);
    return apart < 1 ? 0 : (most - least) / apart;
  }
}
