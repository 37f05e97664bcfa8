package org.grovewright.formats.units;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.DECI;
import static javax.measure.MetricPrefix.HECTO;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.measure.Unit;
import javax.measure.quantity.Pressure;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/**
 * The unit words gardeners write. The gallon, quart and ounce are those of the United States. Words
 * join with a slash or "per": {@code gal/h}, {@code mm/day}, {@code MJ/m2/day}.
 */
public final class UnitWords {
  /** Millimetre. */
  static final Unit<?> MILLIMETRE = MILLI(Units.METRE);

  /** Pound-force per square inch, from the pound, standard gravity (9.80665 m/s2) and the inch. */
  static final Unit<Pressure> PSI =
      USCustomary.POUND
          .multiply(980_665)
          .divide(100_000)
          .multiply(Units.METRE_PER_SQUARE_SECOND)
          .divide(USCustomary.INCH.pow(2))
          .asType(Pressure.class);

  /** A hundred thousand pascals. */
  static final Unit<Pressure> BAR = Units.PASCAL.multiply(100_000);

  /** Cubic foot. */
  static final Unit<?> CUBIC_FOOT = USCustomary.FOOT.pow(3);

  /** Cubic yard. */
  static final Unit<?> CUBIC_YARD = USCustomary.YARD.pow(3);

  /** Degree of angle. */
  static final Unit<?> DEGREE = USCustomary.DEGREE_ANGLE;

  /** Milligram per kilogram. */
  static final Unit<?> MG_PER_KG = MILLI(Units.GRAM).divide(Units.KILOGRAM);

  private static final Map<String, Unit<?>> WORDS = words();
  private static final Map<String, Unit<?>> LOWER_CASE = lowerCase();
  private static final Pattern JOIN = Pattern.compile("\\s*/\\s*|\\s+per\\s+");

  private UnitWords() {}

  /** All single words in the order of the table. */
  public static List<String> all() {
    return List.copyOf(WORDS.keySet());
  }

  /**
   * The unit a text stands for, if every word of it is known. Case matters only where two words
   * differ by nothing else (S is siemens, s is second).
   */
  public static Optional<Unit<?>> find(String text) {
    Unit<?> whole = WORDS.get(text);
    if (whole != null) {
      return Optional.of(whole);
    }
    Unit<?> unit = null;
    for (String part : JOIN.split(tidy(text), -1)) {
      Optional<Unit<?>> next = word(part);
      if (next.isEmpty()) {
        return Optional.empty();
      }
      unit = unit == null ? next.get() : unit.divide(next.get());
    }
    return Optional.ofNullable(unit);
  }

  private static Optional<Unit<?>> word(String word) {
    Unit<?> exact = WORDS.get(word);
    return Optional.ofNullable(
        exact != null ? exact : LOWER_CASE.get(word.toLowerCase(Locale.ROOT)));
  }

  private static String tidy(String text) {
    return text.strip()
        .replaceAll("\\s+", " ")
        .replace("\u00b2", "2")
        .replace("\u00b3", "3")
        .replace("^", "")
        .replace("\u03bc", "\u00b5")
        .replaceAll("\\.$", "");
  }

  private static Map<String, Unit<?>> lowerCase() {
    Map<String, Unit<?>> lower = new LinkedHashMap<>();
    WORDS.forEach((word, unit) -> lower.putIfAbsent(word.toLowerCase(Locale.ROOT), unit));
    return lower;
  }

  private static Map<String, Unit<?>> words() {
    Map<String, Unit<?>> words = new LinkedHashMap<>();
    put(words, Units.METRE, "m", "metre", "metres", "meter", "meters");
    put(words, CENTI(Units.METRE), "cm", "centimetre", "centimetres", "centimeter", "centimeters");
    put(words, MILLIMETRE, "mm", "millimetre", "millimetres", "millimeter", "millimeters");
    put(words, KILO(Units.METRE), "km");
    put(words, USCustomary.FOOT, "ft", "foot", "feet", "'");
    put(words, USCustomary.INCH, "in", "inch", "inches", "\"");
    put(words, USCustomary.YARD, "yd", "yard", "yards");

    put(words, Units.SQUARE_METRE, "m2", "sq m");
    put(words, CENTI(Units.METRE).pow(2), "cm2");
    put(words, HECTO(Units.METRE).pow(2), "ha", "hectare", "hectares");
    put(words, USCustomary.FOOT.pow(2), "ft2", "sq ft", "square feet");
    put(words, USCustomary.ACRE, "acre", "acres");

    put(words, Units.LITRE, "L", "l", "litre", "litres", "liter", "liters");
    put(words, MILLI(Units.LITRE), "mL", "ml");
    put(words, Units.CUBIC_METRE, "m3", "cubic metre", "cubic metres", "cubic meters");
    put(words, USCustomary.GALLON_LIQUID, "gal", "gallon", "gallons");
    put(words, USCustomary.GALLON_LIQUID.divide(4), "qt", "quart", "quarts");
    put(words, CUBIC_FOOT, "ft3", "cu ft", "cubic foot", "cubic feet");
    put(words, CUBIC_YARD, "yd3", "cu yd", "cubic yard", "cubic yards");

    put(words, Units.KILOGRAM, "kg", "kilogram", "kilograms");
    put(words, Units.GRAM, "g", "gram", "grams");
    put(words, MILLI(Units.GRAM), "mg");
    put(words, Units.KILOGRAM.multiply(1000), "t", "tonne", "tonnes");
    put(words, USCustomary.POUND, "lb", "lbs", "pound", "pounds");
    put(words, USCustomary.OUNCE, "oz", "ounce", "ounces");

    put(words, Units.SECOND, "s", "sec", "second", "seconds");
    put(words, Units.MINUTE, "min", "minute", "minutes");
    put(words, Units.HOUR, "h", "hr", "hour", "hours");
    put(words, Units.DAY, "d", "day", "days");

    put(words, Units.PASCAL, "Pa");
    put(words, KILO(Units.PASCAL), "kPa");
    put(words, MEGA(Units.PASCAL), "MPa");
    put(words, BAR, "bar");
    put(words, MILLI(BAR), "mbar");
    put(words, PSI, "psi");

    put(words, USCustomary.GALLON_LIQUID.divide(Units.HOUR), "gph");
    put(words, USCustomary.GALLON_LIQUID.divide(Units.MINUTE), "gpm");
    put(words, Units.LITRE.divide(Units.HOUR), "lph");
    put(words, Units.LITRE.divide(Units.MINUTE), "lpm");

    put(words, Units.KILOMETRE_PER_HOUR, "kph");
    put(words, USCustomary.MILE.divide(Units.HOUR), "mph");
    put(words, USCustomary.KNOT, "knot", "knots");

    put(words, Units.CELSIUS, "\u00b0C", "C", "\u2103", "Celsius");
    put(words, USCustomary.FAHRENHEIT, "\u00b0F", "F", "\u2109", "Fahrenheit");

    put(words, Units.PERCENT, "%", "percent", "per cent");
    put(words, MG_PER_KG, "ppm");
    put(words, DEGREE, "deg", "\u00b0", "degree", "degrees");

    put(words, Units.JOULE, "J");
    put(words, MEGA(Units.JOULE), "MJ");
    put(words, Units.WATT, "W");
    put(words, KILO(Units.WATT).multiply(Units.HOUR), "kWh");
    put(words, KILO(Units.WATT), "kW");

    put(words, Units.SIEMENS, "S");
    put(words, DECI(Units.SIEMENS), "dS");
    put(words, MILLI(Units.SIEMENS), "mS", "mmho");
    put(words, MICRO(Units.SIEMENS), "\u00b5S", "uS");
    return Collections.unmodifiableMap(words);
  }

  private static void put(Map<String, Unit<?>> words, Unit<?> unit, String... names) {
    for (String name : names) {
      if (words.put(name, unit) != null) {
        throw new IllegalStateException("two units are written " + name);
      }
    }
  }
}
