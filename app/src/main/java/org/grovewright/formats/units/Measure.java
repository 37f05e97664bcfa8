package org.grovewright.formats.units;

import static javax.measure.MetricPrefix.MEGA;

import javax.measure.Unit;
import org.grovewright.texts.Sentence;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * What a field of the description measures, with the SI unit its value is handed on in.
 *
 * <p>Shares, angles and mass fractions are all pure numbers to the International System, yet nobody
 * means the one by the other; {@link #accepts} keeps them apart.
 */
public enum Measure {
  /** Length, metres. */
  LENGTH("a length", "18 m, 30 cm, 60 ft or 6 in", Units.METRE),
  /** Depth of rain, metres. */
  RAIN("a depth of rain", "20 mm or 0.8 in", Units.METRE),
  /** Volume, cubic metres. */
  VOLUME("a volume", "20 L, 5 gal or 2 m3", Units.CUBIC_METRE),
  /** Volume per time, cubic metres per second. */
  FLOW("a flow", "3 L/h, 2 gal/h or 300 gal/day", Units.CUBIC_METRE.divide(Units.SECOND)),
  /** Volume per day, cubic metres per day. */
  DAILY_VOLUME(
      "a volume per day", "1000 L/day or 300 gal/day", Units.CUBIC_METRE.divide(Units.DAY)),
  /** Mass, kilograms. */
  MASS("a weight", "25 kg or 1400 lb", Units.KILOGRAM),
  /** Pressure, pascals. */
  PRESSURE("a pressure", "45 psi, 2.5 bar or 250 kPa", Units.PASCAL),
  /** Time, seconds. */
  TIME("a time", "32 s, 5 min or 2 h", Units.SECOND),
  /** Hours of sunshine per day, hours. */
  SUN_HOURS("a time", "7.5 h", Units.HOUR),
  /** Temperature, degrees Celsius. */
  TEMPERATURE("a temperature", "20 \u00b0C or 68 F", Units.CELSIUS),
  /** Wind speed, metres per second. */
  SPEED("a speed", "2 m/s, 7 km/h or 5 mph", Units.METRE_PER_SECOND),
  /** Solar radiation, watts per square metre. */
  RADIATION("solar radiation", "220 W/m2 or 19 MJ/m2/day", Units.WATT.divide(Units.SQUARE_METRE)),
  /** Electrical conductivity, siemens per metre. */
  SALINITY("a salinity", "0.8 dS/m or 800 \u00b5S/cm", Units.SIEMENS.divide(Units.METRE)),
  /** Share of a whole, 1 for all of it. */
  SHARE("a share", "7 %", AbstractUnit.ONE),
  /** Content, milligrams per kilogram. */
  CONTENT("a content", "18 mg/kg or 18 ppm", UnitWords.MG_PER_KG),
  /** Angle, degrees. */
  ANGLE("an angle", "20 deg", UnitWords.DEGREE),
  /** Area, square metres. */
  AREA("an area", "40 m2", Units.SQUARE_METRE),
  /** Energy, joules; wanted by no field. */
  ENERGY("an energy", "3 MJ", MEGA(Units.JOULE));

  private final String nounShape;
  private final String exampleShape;

  @SuppressWarnings("ImmutableEnumChecker") // The units of the reference implementation are.
  private final Unit<?> unit;

  Measure(String nounShape, String exampleShape, Unit<?> unit) {
    this.nounShape = nounShape;
    this.exampleShape = exampleShape;
    this.unit = unit;
  }

  /** The measure with its article, as it stands in a sentence. */
  Sentence noun() {
    return Sentence.of(nounShape);
  }

  /** Two or three values as people write them. */
  public Sentence examples() {
    return Sentence.of(exampleShape);
  }

  /** What to give: the measure, and how people write it. */
  public Sentence wanted() {
    return Sentence.of("{0} such as {1}", noun(), examples());
  }

  /** The unit of the first example, as it is written. */
  String firstUnit() {
    return exampleShape.split("[ ,]", -1)[1];
  }

  /** Unit the value is handed on in. */
  public Unit<?> unit() {
    return unit;
  }

  /** Whether a number in this unit can be meant by this measure. */
  public boolean accepts(Unit<?> written) {
    if (!written.isCompatible(unit)) {
      return false;
    }
    return switch (this) {
      case SHARE -> written.equals(Units.PERCENT);
      case ANGLE -> written.equals(UnitWords.DEGREE);
      case CONTENT -> !written.equals(Units.PERCENT) && !written.equals(UnitWords.DEGREE);
      default -> true;
    };
  }

  /** What a unit measures, in words. */
  static Sentence nounOf(Unit<?> written) {
    for (Measure measure : values()) {
      if (measure.accepts(written)) {
        return measure.noun();
      }
    }
    return Sentence.of("something else");
  }
}
