package org.grovewright.formats.weather;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import org.grovewright.water.EtSettings;
import org.grovewright.water.ReferenceEt;

/** Reference evapotranspiration of a weather table with every step, as CSV. */
public final class Et0Csv {
  private static final String HEADING =
      "mean_c,p_kpa,gamma_kpa_per_c,delta_kpa_per_c,es_kpa,ea_kpa,dr,declination_rad,ws_rad,ra_mj_per_m2,"
          + "n_h,rs_mj_per_m2,rso_mj_per_m2,rns_mj_per_m2,rnl_mj_per_m2,rn_mj_per_m2,g_mj_per_m2,"
          + "u2_m_per_s,penman_monteith_mm,hargreaves_mm,et0_mm,formula,radiation,moisture,wind\n";

  private Et0Csv() {}

  /** The table's reference evapotranspiration, one line a row, lines ending in a line feed. */
  public static String of(WeatherTable table, EtSettings settings) {
    StringBuilder text = new StringBuilder(table.monthly() ? "month,t" : "date,t").append(HEADING);
    List<WeatherTable.Row> rows = table.rows();
    for (int i = 0; i < rows.size(); i++) {
      WeatherTable.Row row = rows.get(i);
      ReferenceEt et =
          table.monthly()
              ? ReferenceEt.monthly(settings, row.month(), row.weather(), soilHeat(rows, i))
              : ReferenceEt.daily(settings, row.date().getDayOfYear(), row.weather());
      text.append(table.monthly() ? Integer.toString(row.month()) : row.date().toString());
      append(text, et);
    }
    return text.toString();
  }

  /** Soil heat of a month from its neighbours, round the year where all twelve are there. */
  private static double soilHeat(List<WeatherTable.Row> rows, int at) {
    int months = rows.size();
    boolean whole = months == 12;
    boolean hasBefore = whole || (at > 0 && rows.get(at - 1).month() == rows.get(at).month() - 1);
    boolean hasAfter =
        whole || (at + 1 < months && rows.get(at + 1).month() == rows.get(at).month() + 1);
    if (!hasBefore) {
      return 0;
    }
    double before = rows.get((at + months - 1) % months).weather().tmeanC();
    return hasAfter
        ? ReferenceEt.soilHeatMj(before, rows.get((at + 1) % months).weather().tmeanC())
        : ReferenceEt.soilHeatFromPreviousMj(before, rows.get(at).weather().tmeanC());
  }

  private static void append(StringBuilder text, ReferenceEt et) {
    number(text, et.tmeanC(), 2);
    number(text, et.pressureKPa(), 3);
    number(text, et.gammaKPaPerC(), 5);
    number(text, et.slopeKPaPerC(), 5);
    number(text, et.esKPa(), 4);
    number(text, et.eaKPa(), 4);
    number(text, et.sun().inverseDistance(), 4);
    number(text, et.sun().declinationRad(), 4);
    number(text, et.sun().sunsetHourAngleRad(), 4);
    number(text, et.sun().raMjPerM2Day(), 3);
    number(text, et.sun().daylightHours(), 3);
    number(text, et.rsMj(), 3);
    number(text, et.rsoMj(), 3);
    number(text, et.rnsMj(), 3);
    number(text, et.rnlMj(), 3);
    number(text, et.rnMj(), 3);
    number(text, et.gMj(), 3);
    number(text, et.u2MPerS(), 3);
    number(text, et.penmanMonteithMm(), 3);
    number(text, et.hargreavesMm(), 3);
    number(text, et.et0MmPerDay(), 3);
    word(text, et.formula());
    word(text, et.radiation());
    word(text, et.moisture());
    word(text, et.wind());
    text.append('\n');
  }

  private static void number(StringBuilder text, double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    text.append(',').append(rounded.signum() == 0 ? rounded.abs() : rounded);
  }

  private static void word(StringBuilder text, Enum<?> constant) {
    text.append(',').append(constant.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }
}
