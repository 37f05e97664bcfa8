package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.grovewright.model.Preferences.Units;
import org.grovewright.quantity.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ReaderUnitsTest {
  private static String plain(String text) {
    return text.replace('\u00a0', ' ').replace('\u202f', ' ');
  }

  /**
   * Conversions: NIST Special Publication 811 (2008) appendix B.8, from memory (1 ft = 0.3048 m, 1
   * US gal = 3.785412 L, 1 psi = 6.894757 kPa, 1 lb = 0.45359237 kg, 1 yd3 = 0.7645549 m3).
   */
  @ParameterizedTest
  @CsvSource({
    "LENGTH, 3.6576, 12 ft, 3.66 m",
    "LENGTH, 0.6096, 24 in, 61 cm",
    "LENGTH, 1.905, 6 ft 3 in, 1.91 m",
    "LENGTH, 1.8272, 6 ft, 1.83 m",
    "BORE, 0.0136, 0.535 in, 13.6 mm",
    "AREA, 9.290304, 100.0 ft², 9.29 m²",
    "BULK_VOLUME, 0.7645548579840, 1.00 yd³, 0.76 m³",
    "BULK_VOLUME, 0.0283168465920, 1.0 ft³, 28.3 litres",
    "WATER_VOLUME, 0.3785411784, 100 gal, 379 L",
    "DAILY_WATER, 4.381263638888889e-8, 1.0 gal/day, 3.8 L/day",
    "FLOW, 6.30901964e-5, 1.00 gal/min, 3.8 L/min",
    "EMITTER_FLOW, 1.05150327e-6, 1.00 gal/h, 3.79 L/h",
    "PRESSURE, 344737.864, 50.0 psi, 3.45 bar",
    "MASS, 4.5359237, 10.0 lb, 4.54 kg",
    "TEMPERATURE, 20, 68.0 °F, 20.0 °C",
    "RUN_TIME, 2700, 45 min, 45 min",
    "RUN_TIME, 150, 2.5 min, 2.5 min",
    "WORK_TIME, 9000, 2 h 30 min, 2 h 30 min",
    "SHARE, 0.915, 92 %, 92 %",
    "SALINITY, 0.08, 0.80 dS/m, 0.80 dS/m",
    "MONEY, 12345.5, USD 12 345.50, USD 12 345.50",
    "COUNT, 7, 7, 7",
    "WATER_DEPTH_RATE, 5.787037037037037e-8, 0.197 in/day, 5.00 mm/day",
  })
  void writesInTheReadersUnits(Kind kind, double value, String us, String metric) {
    assertThat(plain(new ReaderUnits(Units.US, "USD").text(value, kind))).isEqualTo(us);
    assertThat(plain(new ReaderUnits(Units.METRIC, "USD").text(value, kind))).isEqualTo(metric);
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void everyKindCanBeWrittenAtAnySize(Kind kind) {
    for (Units units : Units.values()) {
      ReaderUnits reader = new ReaderUnits(units, "EUR");
      for (double value : new double[] {0, 1e-12, -3.7, 0.9999, 1, 123456.789, 1e9}) {
        assertThat(reader.text(value, kind)).isNotBlank().doesNotContainPattern("[0-9]E");
        assertThat(reader.si(value, kind)).isNotBlank();
      }
    }
  }

  @Test
  void noMinusBeforeZero() {
    assertThat(plain(new ReaderUnits(Units.METRIC, "EUR").text(-1e-9, Kind.HEAD)))
        .isEqualTo("0.00 m");
  }

  @Test
  void theLocaleDoesNotMatter() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      assertThat(plain(new ReaderUnits(Units.METRIC, "EUR").text(1234.5, Kind.HEAD)))
          .isEqualTo("1234.50 m");
    } finally {
      Locale.setDefault(before);
    }
  }
}
