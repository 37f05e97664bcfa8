package org.grovewright.formats.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.grovewright.model.Preferences.Units;
import org.grovewright.quantity.Kind;
import org.grovewright.sheets.ReaderUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTextTest {
  /**
   * Conversion factors: NIST Special Publication 811 (2008), appendix B.8, from memory; those in
   * exact figures are exact by definition there.
   */
  @ParameterizedTest
  @CsvSource({
    "18 m, LENGTH, 18",
    "60 ft, LENGTH, 18.288",
    "6 in, LENGTH, 0.1524",
    "3/4 in, LENGTH, 0.01905",
    "1 1/2 in, LENGTH, 0.0381",
    "6 ft 3 in, LENGTH, 1.905",
    "-6 ft 3 in, LENGTH, -1.905",
    "1 yd, LENGTH, 0.9144",
    "30cm, LENGTH, 0.3",
    "5 gal, VOLUME, 0.01892705892",
    "1 qt, VOLUME, 0.000946352946",
    "1 ft3, VOLUME, 0.028316846592",
    "1 cubic yard, VOLUME, 0.764554857984",
    "20 L, VOLUME, 0.02",
    "2 gal/h, FLOW, 2.103006546666667e-6",
    "2 gph, FLOW, 2.103006546666667e-6",
    "1 gpm, FLOW, 6.30901964e-5",
    "3.6 L/h, FLOW, 1e-6",
    "300 gal/day, DAILY_VOLUME, 1.1356235352",
    "1400 lb, MASS, 635.029318",
    "16 oz, MASS, 0.45359237",
    "45 psi, PRESSURE, 310264.0781925762",
    "2.5 bar, PRESSURE, 250000",
    "32 s, TIME, 32",
    "1 h 30 min, TIME, 5400",
    "68 F, TEMPERATURE, 20",
    "-40 °F, TEMPERATURE, -40",
    "20 °C, TEMPERATURE, 20",
    "5 mph, SPEED, 2.2352",
    "7.2 km/h, SPEED, 2",
    "8.64 MJ/m2/day, RADIATION, 100",
    "0.8 dS/m, SALINITY, 0.08",
    "800 µS/cm, SALINITY, 0.08",
    "0.8 mmho/cm, SALINITY, 0.08",
    "7 %, SHARE, 0.07",
    "18 ppm, CONTENT, 18",
    "0.018 g/kg, CONTENT, 18",
    "20 deg, ANGLE, 20",
    "0, LENGTH, 0",
    "2 acres, AREA, 8093.712845",
  })
  void readsWhatPeopleWrite(String text, Measure measure, double value) throws Exception {
    assertThat(QuantityText.read(text, measure).value())
        .isCloseTo(value, within(Math.max(1e-12, Math.abs(value) * 1e-9)));
  }

  @ParameterizedTest
  @CsvSource({
    "20, LENGTH, has no unit",
    "0, TEMPERATURE, has no unit",
    "20 gal, LENGTH, is a volume; give a length",
    "20 gal/h, VOLUME, is a flow; give a volume",
    "20 %, ANGLE, is a share; give an angle",
    "20 deg, SHARE, is an angle; give a share",
    "20 furlongs, LENGTH, unknown unit",
    "6 ft 3 gal, LENGTH, is a volume",
    "6 ft -3 in, LENGTH, not understood",
    "20 F 3 F, TEMPERATURE, not understood",
    "1/0 in, LENGTH, divides by zero",
    "a lot, LENGTH, not understood",
    "m, LENGTH, not understood",
    "--3 m, LENGTH, not understood",
    "1e400 m, LENGTH, too large",
    "NaN m, LENGTH, not a number",
    "٣ m, LENGTH, not understood",
  })
  void refusesTheRest(String text, Measure measure, String words) {
    assertThatThrownBy(() -> QuantityText.read(text, measure))
        .isInstanceOf(NotAQuantityException.class)
        .hasMessageContaining(words);
  }

  @Property
  void noTextBreaksIt(@ForAll String text, @ForAll Measure measure) {
    try {
      assertThat(QuantityText.read(text, measure).value()).isFinite();
    } catch (NotAQuantityException e) {
      assertThat(e.getMessage()).isNotBlank();
    }
  }

  @Property
  void decimalUnitsKeepEveryDigit(
      @ForAll @DoubleRange(min = -5000, max = 5000) @Scale(12) double value) throws Exception {
    BigDecimal decimal = new BigDecimal(Double.toString(value));
    assertThat(QuantityText.read(decimal.toPlainString() + " m", Measure.LENGTH).value())
        .isEqualTo(value);
    String percent = decimal.movePointRight(2).toPlainString();
    assertThat(QuantityText.read(percent + " %", Measure.SHARE).value()).isEqualTo(value);
    String litres = decimal.movePointRight(3).toPlainString();
    assertThat(QuantityText.read(litres + " L", Measure.VOLUME).value()).isEqualTo(value);
  }

  @Property(tries = 300)
  void everyWordConvertsThereAndBack(
      @ForAll("words") String word,
      @ForAll @DoubleRange(min = 0.01, max = 1e6) @Scale(6) double number)
      throws Exception {
    for (Measure measure : Measure.values()) {
      if (measure.accepts(UnitWords.find(word).orElseThrow())) {
        String text = new BigDecimal(Double.toString(number)).toPlainString() + " " + word;
        QuantityText read = QuantityText.read(text, measure);
        double back = measure.unit().getConverterToAny(read.unit()).convert(read.value());
        assertThat(back).isCloseTo(number, within(number * 1e-9 + 1e-9));
      }
    }
  }

  @Provide
  Arbitrary<String> words() {
    return Arbitraries.of(UnitWords.all());
  }

  @Test
  void everyWordHasAMeasure() {
    // Words that stand only behind or before a slash: joules, watts and siemens.
    List<String> parts = List.of("W", "kW", "S", "dS", "mS", "mmho", "\u00b5S", "uS");
    assertThat(UnitWords.all())
        .allSatisfy(
            word ->
                assertThat(
                        parts.contains(word)
                            || !Measure.nounOf(UnitWords.find(word).orElseThrow())
                                .equals("something else"))
                    .as(word)
                    .isTrue());
  }

  /** Kinds the sheets write in a unit that a measure reads, with a usual value in SI. */
  private enum Written {
    LENGTH(Measure.LENGTH, 1),
    BORE(Measure.LENGTH, 1e-3),
    HEAD(Measure.LENGTH, 1),
    WATER_DEPTH(Measure.RAIN, 1e-2),
    WATER_DEPTH_RATE(Measure.SPEED, 1e-8),
    AREA(Measure.AREA, 10),
    BULK_VOLUME(Measure.VOLUME, 0.1),
    WATER_VOLUME(Measure.VOLUME, 0.1),
    DAILY_WATER(Measure.FLOW, 1e-8),
    FLOW(Measure.FLOW, 1e-5),
    EMITTER_FLOW(Measure.FLOW, 1e-7),
    PRESSURE(Measure.PRESSURE, 1e4),
    MASS(Measure.MASS, 1),
    RUN_TIME(Measure.TIME, 60),
    WORK_TIME(Measure.TIME, 60),
    DAYS(Measure.TIME, 86_400),
    VELOCITY(Measure.SPEED, 0.1),
    WIND_SPEED(Measure.SPEED, 0.1),
    TEMPERATURE(Measure.TEMPERATURE, 0.1),
    RADIATION(Measure.RADIATION, 1),
    SALINITY(Measure.SALINITY, 1e-2),
    SHARE(Measure.SHARE, 1e-3);

    private final Measure measure;
    private final double usual;

    Written(Measure measure, double usual) {
      this.measure = measure;
      this.usual = usual;
    }
  }

  /**
   * The sheets write numbers by factors of their own, for speed. What they write, read back by the
   * units library, is the number within half of its last digit.
   */
  @Property
  void whatTheSheetsWriteReadsBack(
      @ForAll Written kind,
      @ForAll Units units,
      @ForAll @DoubleRange(min = 0.001, max = 1000) @Scale(5) double size)
      throws Exception {
    double value = size * kind.usual;
    String text =
        new ReaderUnits(units, "USD")
            .text(value, Kind.valueOf(kind.name()))
            .replace('\u00a0', ' ')
            .replace("\u202f", "")
            .replace(" a day", "/day");
    double read = QuantityText.read(text, kind.measure).value();
    assertThat(read).as(text).isCloseTo(value, within(halfOfLastDigit(text, kind.measure)));
  }

  private static double halfOfLastDigit(String text, Measure measure) throws Exception {
    Matcher last = Pattern.compile("([\\d.]+) ([^\\d\\s].*)").matcher(text);
    String number = "";
    String word = "";
    while (last.find()) {
      number = last.group(1);
      word = last.group(2);
    }
    if (word.matches(".* \\d.*")) {
      number = word.replaceAll(".* ([\\d.]+) .*", "$1");
      word = word.replaceAll(".* ", "");
    }
    int decimals = number.contains(".") ? number.length() - number.indexOf('.') - 1 : 0;
    double step =
        QuantityText.read(
                    BigDecimal.ONE.movePointLeft(decimals).toPlainString() + " " + word, measure)
                .value()
            - QuantityText.read("0.0 " + word, measure).value();
    return step / 2 * 1.000001 + 1e-15;
  }
}
