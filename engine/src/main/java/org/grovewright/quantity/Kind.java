package org.grovewright.quantity;

/**
 * The kind of a number: its physical dimension together with what it is used for. Two kinds may
 * share a dimension (a pipe bore and a row length are both metres) because a gardener reads them in
 * different units; the faces choose the unit, the engine always holds the SI value.
 */
public enum Kind {
  /** Distance along the ground, in metres. */
  LENGTH("m"),
  /** Small distance such as a pipe bore or a screen opening, in metres. */
  BORE("m"),
  /** Depth of water over an area, in metres. */
  WATER_DEPTH("m"),
  /** Depth of water per time read by the day (rain, evapotranspiration), in metres per second. */
  WATER_DEPTH_RATE("m/s"),
  /** Depth of water per time read by the hour (infiltration, application), in metres per second. */
  INFILTRATION("m/s"),
  /** Small area such as that of a filter screen, in square metres. */
  SCREEN_AREA("m2"),
  /** Area, in square metres. */
  AREA("m2"),
  /** Volume of soil, mulch or other bulk goods, in cubic metres. */
  BULK_VOLUME("m3"),
  /** Volume of water, in cubic metres. */
  WATER_VOLUME("m3"),
  /** Volume of water used each day, in cubic metres per second. */
  DAILY_WATER("m3/s"),
  /** Flow in a pipe or from the supply, in cubic metres per second. */
  FLOW("m3/s"),
  /** Flow of one emitter, in cubic metres per second. */
  EMITTER_FLOW("m3/s"),
  /** Gauge pressure, in pascals. */
  PRESSURE("Pa"),
  /** Head of water or an elevation, in metres. */
  HEAD("m"),
  /** Mass, in kilograms. */
  MASS("kg"),
  /** Mass per area, in kilograms per square metre. */
  MASS_PER_AREA("kg/m2"),
  /** Bulk density, in kilograms per cubic metre. */
  DENSITY("kg/m3"),
  /** A span of time read in minutes (a valve's run time), in seconds. */
  RUN_TIME("s"),
  /** A span of time read in hours (work), in seconds. */
  WORK_TIME("s"),
  /** A span of time read in days, in seconds. */
  DAYS("s"),
  /** Speed of water in a pipe, in metres per second. */
  VELOCITY("m/s"),
  /** Wind speed, in metres per second. */
  WIND_SPEED("m/s"),
  /** Temperature, in degrees Celsius (the one kind that is not in its SI base unit). */
  TEMPERATURE("Cel"),
  /** Radiant energy per area and day, in joules per square metre and second. */
  RADIATION("W/m2"),
  /** A share or ratio read as per cent; 1 is the whole. */
  SHARE("1"),
  /** A pure number. */
  NUMBER("1"),
  /** A count of whole things. */
  COUNT("1"),
  /** A year of growth; 0 is the planting year. */
  YEAR("1"),
  /** Angle, in radians. */
  ANGLE("rad"),
  /** Slope as rise over run. */
  SLOPE("1"),
  /** Electrical conductivity of soil or water, in siemens per metre. */
  SALINITY("S/m"),
  /** Soil reaction. */
  PH("[pH]"),
  /** Money in the currency of the plan. */
  MONEY("money");

  private final String symbol;

  Kind(String symbol) {
    this.symbol = symbol;
  }

  /** Unit symbol of the value, written as in the Unified Code for Units of Measure. */
  public String symbol() {
    return symbol;
  }
}
