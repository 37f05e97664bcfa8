package org.grovewright.sheets;

import org.grovewright.model.Preferences.Units;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.texts.Language;

/**
 * Writes SI values in the units that the reader of a sheet is used to.
 *
 * <p>The factors are the exact definitions of the international yard and pound (1959) and of the US
 * gallon of 231 cubic inches; from memory.
 */
public final class ReaderUnits {
  private static final String SPACE = "\u00a0";
  private static final double FOOT = 0.3048;
  private static final double INCH = 0.0254;
  private static final double GALLON = 3.785411784e-3;
  private static final double POUND = 0.45359237;
  private static final double OUNCE = POUND / 16;
  private static final double PSI = 6894.757293168361;
  private static final double MILE_PER_HOUR = 0.44704;
  private static final double CUBIC_FOOT = FOOT * FOOT * FOOT;
  private static final double CUBIC_YARD = 27 * CUBIC_FOOT;
  private static final double DAY = 86_400;

  private final Units units;
  private final String currency;
  private final Language language;

  /**
   * Units of one reader of English.
   *
   * @param units system of units
   * @param currency ISO 4217 code of money
   */
  public ReaderUnits(Units units, String currency) {
    this(units, currency, Language.ENGLISH);
  }

  /**
   * Units of one reader.
   *
   * @param units system of units
   * @param currency ISO 4217 code of money
   * @param language language of the unit names and decimal mark
   */
  public ReaderUnits(Units units, String currency, Language language) {
    this.units = units;
    this.currency = currency;
    this.language = language;
  }

  /** System of units. */
  public Units system() {
    return units;
  }

  /** Language in which the reader is spoken to. */
  public Language language() {
    return language;
  }

  /** A text of ours with plain spaces in the place of those that do not break. */
  public static String plainSpaces(String text) {
    return text.replace('\u00a0', ' ').replace('\u202f', ' ');
  }

  /** A figure's value with its unit. */
  public String text(Figure figure) {
    return text(figure.value(), figure.kind());
  }

  /** A quantity with its unit. */
  public String text(Quantity quantity) {
    return text(quantity.value(), quantity.kind());
  }

  /**
   * A value with its unit, rounded to what matters in a garden.
   *
   * @param value the value in the SI unit of the kind
   * @param kind what sort of number it is
   */
  public String text(double value, Kind kind) {
    return units == Units.US ? us(value, kind) : metric(value, kind);
  }

  /**
   * A unit for the axis of a chart.
   *
   * @param symbol its symbol
   * @param size what one of it is in the SI unit of the kind
   */
  record Unit(String symbol, double size) {
    double of(double value) {
      return value / size;
    }
  }

  /**
   * The one unit in which a chart shows a kind, whatever the size.
   *
   * @throws IllegalArgumentException if no chart shows that kind
   */
  Unit chartUnit(Kind kind) {
    boolean us = units == Units.US;
    return switch (kind) {
      case PRESSURE -> us ? new Unit("psi", PSI) : new Unit("bar", 1e5);
      case FLOW -> us ? new Unit("gal/min", GALLON / 60) : new Unit("L/min", 1e-3 / 60);
      case LENGTH, HEAD -> us ? new Unit("ft", FOOT) : new Unit("m", 1);
      case WATER_DEPTH -> us ? new Unit("in", INCH) : new Unit("mm", 1e-3);
      case WATER_VOLUME -> us ? new Unit("gal", GALLON) : new Unit("m\u00b3", 1);
      default -> throw new IllegalArgumentException("no chart shows " + kind);
    };
  }

  /** A value in the SI unit of its kind with five significant digits, for workings. */
  public String si(double value, Kind kind) {
    String symbol = siSymbol(kind);
    String number = language.decimals(Decimals.significant(value, 5));
    return symbol.isEmpty() ? number : number + SPACE + symbol;
  }

  private String siSymbol(Kind kind) {
    return switch (kind) {
      case TEMPERATURE -> "\u00b0C";
      case PH -> "";
      case MONEY -> currency;
      default -> {
        String symbol = kind.symbol();
        yield symbol.equals("1") ? "" : symbol.replace("m2", "m\u00b2").replace("m3", "m\u00b3");
      }
    };
  }

  private String metric(double value, Kind kind) {
    double size = Math.abs(value);
    return switch (kind) {
      case LENGTH ->
          size < 0.995 && size > 0
              ? with(value * 100, size < 0.0995 ? 1 : 0, "cm")
              : with(value, 2, "m");
      case BORE -> with(value * 1000, size < 1e-3 ? 2 : 1, "mm");
      case WATER_DEPTH -> with(value * 1000, size < 0.1 ? 1 : 0, "mm");
      case WATER_DEPTH_RATE -> with(value * 1000 * DAY, 2, unit("mm-per-day"));
      case INFILTRATION -> with(value * 1000 * 3600, 1, "mm/h");
      case SCREEN_AREA -> with(value * 1e4, size < 1e-3 ? 1 : 0, "cm\u00b2");
      case AREA -> with(value, size < 10 ? 2 : 1, "m\u00b2");
      case BULK_VOLUME ->
          size < 0.0995 ? with(value * 1000, 1, unit("litres")) : with(value, 2, "m\u00b3");
      case WATER_VOLUME ->
          size < 9.995 ? with(value * 1000, size < 0.1 ? 1 : 0, "L") : with(value, 1, "m\u00b3");
      case DAILY_WATER ->
          with(value * DAY * 1000, value * DAY < 0.1 ? 1 : 0, unit("litres-per-day"));
      case FLOW -> with(value * 60_000, 1, "L/min");
      case EMITTER_FLOW -> with(value * 3.6e6, 2, "L/h");
      case PRESSURE -> with(value / 1e5, 2, "bar");
      case HEAD -> with(value, 2, "m");
      case MASS ->
          size < 0.9995 ? with(value * 1000, 0, "g") : with(value, massDecimals(size), "kg");
      case MASS_PER_AREA -> with(value * 1000, 1, "g/m\u00b2");
      case DENSITY -> with(value, 0, "kg/m\u00b3");
      case VELOCITY -> with(value, 2, "m/s");
      case WIND_SPEED -> with(value, 1, "m/s");
      case TEMPERATURE -> with(value, 1, "\u00b0C");
      default -> either(value, kind);
    };
  }

  private String us(double value, Kind kind) {
    double size = Math.abs(value);
    return switch (kind) {
      case LENGTH -> feetAndInches(value);
      case BORE -> with(value / INCH, 3, "in");
      case WATER_DEPTH -> with(value / INCH, 2, "in");
      case WATER_DEPTH_RATE -> with(value / INCH * DAY, 3, unit("inches-per-day"));
      case INFILTRATION -> with(value / INCH * 3600, 2, "in/h");
      case SCREEN_AREA -> with(value / (INCH * INCH), 1, "in\u00b2");
      case AREA -> with(value / (FOOT * FOOT), size < 10 ? 1 : 0, "ft\u00b2");
      case BULK_VOLUME ->
          size < 0.5 * CUBIC_YARD
              ? with(value / CUBIC_FOOT, 1, "ft\u00b3")
              : with(value / CUBIC_YARD, 2, "yd\u00b3");
      case WATER_VOLUME -> with(value / GALLON, size < 0.1 ? 1 : 0, "gal");
      case DAILY_WATER -> with(value * DAY / GALLON, 1, unit("gallons-per-day"));
      case FLOW -> with(value * 60 / GALLON, 2, "gal/min");
      case EMITTER_FLOW -> with(value * 3600 / GALLON, 2, "gal/h");
      case PRESSURE -> with(value / PSI, 1, "psi");
      case HEAD -> with(value / FOOT, 1, "ft");
      case MASS ->
          size < 0.4995 * POUND
              ? with(value / OUNCE, 1, "oz")
              : with(value / POUND, massDecimals(size / POUND), "lb");
      case MASS_PER_AREA -> with(value / POUND * FOOT * FOOT * 100, 2, "lb/100\u00a0ft\u00b2");
      case DENSITY -> with(value / POUND * CUBIC_FOOT, 1, "lb/ft\u00b3");
      case VELOCITY -> with(value / FOOT, 1, "ft/s");
      case WIND_SPEED -> with(value / MILE_PER_HOUR, 1, "mph");
      case TEMPERATURE -> with(value * 9 / 5 + 32, 1, "\u00b0F");
      default -> either(value, kind);
    };
  }

  /** Kinds that are written alike in both systems. */
  private String either(double value, Kind kind) {
    return switch (kind) {
      case RUN_TIME -> runTime(value);
      case WORK_TIME -> hoursAndMinutes(value);
      case DAYS -> with(value / DAY, value < 10 * DAY ? 1 : 0, unit("days"));
      case RADIATION -> with(value * DAY / 1e6, 1, unit("megajoules-per-day"));
      case SHARE -> with(value * 100, Math.abs(value) < 0.1 ? 1 : 0, "%");
      case SLOPE -> with(value * 100, 1, "%");
      case ANGLE -> with(Math.toDegrees(value), 1, "\u00b0");
      case SALINITY -> with(value * 10, 2, "dS/m");
      case PH -> language.decimals(Decimals.fixed(value, 1));
      case COUNT, YEAR ->
          language.decimals(
              isWhole(value) ? Decimals.fixed(value, 0) : Decimals.significant(value, 3));
      case NUMBER -> language.decimals(Decimals.significant(value, 4));
      case MONEY ->
          language.text("unit.money", currency, language.decimals(Decimals.fixed(value, 2)));
      default -> throw new IllegalStateException("no unit for " + kind);
    };
  }

  private static int massDecimals(double size) {
    return size < 9.995 ? 2 : size < 99.95 ? 1 : 0;
  }

  private static boolean isWhole(double value) {
    return Math.abs(value - Math.rint(value)) < 1e-9;
  }

  private String with(double value, int decimals, String unit) {
    return language.decimals(Decimals.fixed(value, decimals)) + SPACE + unit;
  }

  private String unit(String key) {
    return language.text("unit." + key);
  }

  private String feetAndInches(double metres) {
    double inches = Math.abs(metres) / INCH;
    String sign = metres < 0 ? "-" : "";
    if (inches < 3.95) {
      return sign + with(inches, 1, "in");
    }
    long whole = Math.round(inches);
    if (whole < 36) {
      return sign + whole + SPACE + "in";
    }
    if (inches >= 1200) {
      return sign + with(inches / 12, 0, "ft");
    }
    String feet = sign + whole / 12 + SPACE + "ft";
    return whole % 12 == 0 ? feet : feet + SPACE + whole % 12 + SPACE + "in";
  }

  /** Valves are set in whole minutes, so a run under an hour and a half is written in them. */
  private String runTime(double seconds) {
    if (seconds < 5400) {
      double minutes = seconds / 60;
      return with(minutes, minutes < 10 && !isWhole(minutes) ? 1 : 0, "min");
    }
    return hoursAndMinutes(seconds);
  }

  private static String hoursAndMinutes(double seconds) {
    long minutes = Math.round(seconds / 60);
    if (minutes < 60) {
      return minutes + SPACE + "min";
    }
    String hours = Decimals.fixed(Math.floorDiv(minutes, 60), 0) + SPACE + "h";
    return minutes % 60 == 0 ? hours : hours + SPACE + minutes % 60 + SPACE + "min";
  }
}
