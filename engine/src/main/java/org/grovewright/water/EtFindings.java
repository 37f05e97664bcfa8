package org.grovewright.water;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Climate;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Says what was assumed about the weather. */
final class EtFindings {
  private EtFindings() {}

  static List<Finding> of(Climate climate, ClimateEt et, Catalogue catalogue) {
    List<Finding> findings = new ArrayList<>();
    long temperaturesOnly = count(et, m -> m.formula() == ReferenceEt.Formula.HARGREAVES_SAMANI);
    if (temperaturesOnly > 0) {
      findings.add(
          note(
              "water.temperatures-only",
              "In {0} of 12 months only temperatures are known, so the demand of the air was found"
                  + " from them alone (Hargreaves-Samani). Sunshine or solar radiation, humidity and"
                  + " wind would make it surer.",
              new Quantity(temperaturesOnly, Kind.COUNT)));
    }
    long noRadiation =
        count(
            et,
            m ->
                m.formula() == ReferenceEt.Formula.PENMAN_MONTEITH
                    && m.radiation() == ReferenceEt.RadiationFrom.TEMPERATURE_RANGE);
    if (noRadiation > 0) {
      findings.add(
          note(
              "water.radiation-from-temperature",
              "In {0} of 12 months neither solar radiation nor sunshine is known; radiation was"
                  + " found from the range of temperature as for an inland place. On a coast it is"
                  + " about a fifth higher.",
              new Quantity(noRadiation, Kind.COUNT)));
    }
    long noHumidity =
        count(
            et,
            m ->
                m.formula() == ReferenceEt.Formula.PENMAN_MONTEITH
                    && m.moisture() == ReferenceEt.MoistureFrom.MINIMUM_TEMPERATURE);
    if (noHumidity > 0) {
      double below = et.arid() ? catalogue.constant("water.dewpoint-arid-offset").value() : 0;
      findings.add(
          note(
              "water.humidity-from-temperature",
              et.arid()
                  ? "In {0} of 12 months no humidity is known; the climate is dry, so the dew point"
                      + " was taken as the minimum temperature less {1} degrees Celsius."
                  : "In {0} of 12 months no humidity is known; the dew point was taken as the minimum"
                      + " temperature.",
              new Quantity(noHumidity, Kind.COUNT),
              new Quantity(below, Kind.NUMBER)));
    }
    long noWind =
        count(
            et,
            m ->
                m.formula() == ReferenceEt.Formula.PENMAN_MONTEITH
                    && m.wind() == ReferenceEt.WindFrom.DEFAULT);
    if (noWind > 0) {
      findings.add(
          note(
              "water.wind-assumed",
              "In {0} of 12 months no wind is known; a light wind of {1} was assumed.",
              new Quantity(noWind, Kind.COUNT),
              new Quantity(catalogue.constant("water.wind-default").value(), Kind.WIND_SPEED)));
    }
    long noRain = climate.normals().stream().filter(m -> m.rainM().isEmpty()).count();
    if (noRain > 0) {
      findings.add(
          note(
              "water.rain-unknown",
              "In {0} of 12 months no rain is known; the plan counts none in them.",
              new Quantity(noRain, Kind.COUNT)));
    }
    return findings;
  }

  private static long count(ClimateEt et, java.util.function.Predicate<ReferenceEt> wanted) {
    return et.months().stream().filter(wanted).count();
  }

  private static Finding note(String code, String message, Quantity... quantities) {
    return Finding.of(code, Severity.NOTE, "", message, quantities);
  }
}
