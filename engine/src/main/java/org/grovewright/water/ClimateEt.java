package org.grovewright.water;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.MonthNormal;
import org.grovewright.model.Site;

/**
 * Reference evapotranspiration of the twelve months of a climate.
 *
 * @param months January first
 * @param arid whether the dew point was lowered below the minimum temperature, because no humidity
 *     is known and the year brings little rain for what the air asks for
 */
public record ClimateEt(List<ReferenceEt> months, boolean arid) {
  /** Copies the months. */
  public ClimateEt {
    months = List.copyOf(months);
  }

  /** The reference evapotranspiration of a month, 1 to 12. */
  public ReferenceEt month(int month) {
    return months.get(month - 1);
  }

  /**
   * Finds the twelve months from the normals.
   *
   * @throws IllegalArgumentException if the site or the height of the wind measurements is out of
   *     range
   */
  public static ClimateEt of(Site site, Climate climate, Catalogue catalogue) {
    EtSettings settings =
        EtSettings.of(site.latitudeDeg(), site.elevationM(), climate.windHeightM(), catalogue);
    List<ReferenceEt> humid = months(climate, settings);
    boolean arid = isArid(climate, humid, catalogue);
    return new ClimateEt(arid ? months(climate, settings.arid(catalogue)) : humid, arid);
  }

  private static List<ReferenceEt> months(Climate climate, EtSettings settings) {
    List<ReferenceEt> months = new ArrayList<>(12);
    for (int i = 0; i < 12; i++) {
      MonthNormal before = climate.normals().get((i + 11) % 12);
      MonthNormal after = climate.normals().get((i + 1) % 12);
      double soilHeat =
          ReferenceEt.soilHeatMj(Weather.of(before).tmeanC(), Weather.of(after).tmeanC());
      months.add(
          ReferenceEt.monthly(settings, i + 1, Weather.of(climate.normals().get(i)), soilHeat));
    }
    return months;
  }

  private static boolean isArid(Climate climate, List<ReferenceEt> months, Catalogue catalogue) {
    double rain = 0;
    double demand = 0;
    boolean humidityUnknown = false;
    for (int i = 0; i < 12; i++) {
      MonthNormal month = climate.normals().get(i);
      if (month.rainM().isEmpty()) {
        return false;
      }
      rain += month.rainM().getAsDouble();
      demand += months.get(i).hargreavesMm() / 1000 * Months.meanDays(i + 1);
      humidityUnknown |= months.get(i).moisture() == ReferenceEt.MoistureFrom.MINIMUM_TEMPERATURE;
    }
    return humidityUnknown && rain < catalogue.constant("water.arid-below").value() * demand;
  }
}
