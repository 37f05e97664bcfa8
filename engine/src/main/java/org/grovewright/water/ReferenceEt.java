package org.grovewright.water;

/**
 * Evapotranspiration of the grass reference crop with every step of its calculation, after FAO-56
 * (Allen and others 1998) equation 6 and chapter 3.
 *
 * @param sun the sun of the day
 * @param tmeanC mean of the extreme temperatures, degrees Celsius
 * @param pressureKPa air pressure, kPa
 * @param gammaKPaPerC psychrometric constant, kPa per degree
 * @param slopeKPaPerC slope of the saturation vapour pressure curve, kPa per degree
 * @param esKPa saturation vapour pressure, mean of those at the extreme temperatures, kPa
 * @param eaKPa actual vapour pressure, kPa
 * @param rsMj solar radiation at the ground, MJ per m2 and day
 * @param rsoMj solar radiation under a clear sky, MJ per m2 and day
 * @param rnsMj net short-wave radiation, MJ per m2 and day
 * @param rnlMj net outgoing long-wave radiation, MJ per m2 and day
 * @param rnMj net radiation, MJ per m2 and day
 * @param gMj heat flux into the soil, MJ per m2 and day
 * @param u2MPerS wind speed 2 m above ground as used, m/s
 * @param penmanMonteithMm reference evapotranspiration by the combination equation, mm per day
 * @param hargreavesMm reference evapotranspiration from temperatures alone, mm per day
 * @param formula which of the two is taken
 * @param radiation where the radiation comes from
 * @param moisture where the vapour pressure comes from
 * @param wind where the wind speed comes from
 */
public record ReferenceEt(
    SolarDay sun,
    double tmeanC,
    double pressureKPa,
    double gammaKPaPerC,
    double slopeKPaPerC,
    double esKPa,
    double eaKPa,
    double rsMj,
    double rsoMj,
    double rnsMj,
    double rnlMj,
    double rnMj,
    double gMj,
    double u2MPerS,
    double penmanMonteithMm,
    double hargreavesMm,
    Formula formula,
    RadiationFrom radiation,
    MoistureFrom moisture,
    WindFrom wind) {
  /** Watts per square metre in a megajoule per square metre and day. */
  public static final double W_PER_MJ_DAY = 1e6 / 86_400;

  private static final double ALBEDO = 0.23;
  private static final double STEFAN_BOLTZMANN_MJ = 4.903e-9;
  private static final double MM_PER_MJ = 0.408;

  /** The formula of the result. */
  public enum Formula {
    /** FAO-56 equation 6. */
    PENMAN_MONTEITH,
    /** FAO-56 equation 52, where only temperatures are known. */
    HARGREAVES_SAMANI
  }

  /** Where the solar radiation comes from. */
  public enum RadiationFrom {
    MEASURED,
    /** From hours of sunshine, FAO-56 equation 35. */
    SUNSHINE,
    /** From the range of temperature, FAO-56 equation 50. */
    TEMPERATURE_RANGE
  }

  /** Where the vapour pressure comes from. */
  public enum MoistureFrom {
    /** FAO-56 equation 14. */
    DEW_POINT,
    /** FAO-56 equation 17. */
    RELATIVE_EXTREMES,
    /** FAO-56 equation 18. */
    RELATIVE_MAXIMUM,
    /** FAO-56 equation 19. */
    RELATIVE_MEAN,
    /** Dew point taken from the minimum temperature, FAO-56 equation 48. */
    MINIMUM_TEMPERATURE
  }

  /** Where the wind speed comes from. */
  public enum WindFrom {
    MEASURED,
    DEFAULT
  }

  /** The reference evapotranspiration, mm per day, not below 0. */
  public double et0MmPerDay() {
    double chosen = formula == Formula.PENMAN_MONTEITH ? penmanMonteithMm : hargreavesMm;
    return Math.max(0, chosen);
  }

  /** The reference evapotranspiration, m/s. */
  public double et0MPerS() {
    return et0MmPerDay() / 1000 / 86_400;
  }

  /** Least relative humidity of the day, share, from the vapour pressure; FAO-56 equation 64. */
  public double relativeMin(double tmaxC) {
    return Math.min(1, eaKPa / Air.saturationKPa(tmaxC));
  }

  /**
   * The reference evapotranspiration of one day; the soil keeps as much heat as it gives back.
   *
   * @param dayOfYear 1 to 366
   */
  public static ReferenceEt daily(EtSettings settings, int dayOfYear, Weather weather) {
    return of(settings, dayOfYear, weather, 0);
  }

  /**
   * The mean reference evapotranspiration of one month.
   *
   * @param month 1 to 12; the sun is that of its 15th
   * @param soilHeatMj mean heat flux into the soil, MJ per m2 and day
   */
  public static ReferenceEt monthly(
      EtSettings settings, int month, Weather weather, double soilHeatMj) {
    int dayOfYear = java.time.LocalDate.of(2001, month, 15).getDayOfYear();
    return of(settings, dayOfYear, weather, soilHeatMj);
  }

  /** Monthly soil heat flux from the mean temperatures before and after; FAO-56 equation 43. */
  public static double soilHeatMj(double previousMonthC, double nextMonthC) {
    return 0.07 * (nextMonthC - previousMonthC);
  }

  /** Monthly soil heat flux where the month after is not known; FAO-56 equation 44. */
  public static double soilHeatFromPreviousMj(double previousMonthC, double thisMonthC) {
    return 0.14 * (thisMonthC - previousMonthC);
  }

  private static ReferenceEt of(EtSettings settings, int day, Weather weather, double gMj) {
    SolarDay sun = SolarDay.of(settings.latitudeDeg(), day);
    double ra = sun.raMjPerM2Day();
    double tmin = weather.tminC();
    double tmax = weather.tmaxC();
    double tmean = weather.tmeanC();
    double pressure = Air.pressureKPa(settings.elevationM());
    double gamma = Air.psychrometricKPaPerC(pressure);
    double slope = Air.slopeKPaPerC(tmean);
    double atMin = Air.saturationKPa(tmin);
    double atMax = Air.saturationKPa(tmax);
    double es = (atMin + atMax) / 2;

    MoistureFrom moisture = moistureFrom(weather.humidity());
    double ea = Math.min(es, vapourKPa(moisture, weather, settings, atMin, atMax));

    double rso = (0.75 + 2e-5 * settings.elevationM()) * ra;
    RadiationFrom radiation = radiationFrom(weather);
    double rs = solarMj(radiation, weather, settings, sun, rso);

    boolean windKnown = weather.windMPerS().isPresent();
    double u2 =
        windKnown
            ? Air.windAt2m(weather.windMPerS().getAsDouble(), settings.windHeightM())
            : settings.windDefaultMPerS();
    u2 = Math.max(settings.windFloorMPerS(), u2);

    double rns = (1 - ALBEDO) * rs;
    double rnl = longWaveMj(tmin, tmax, ea, rs, rso);
    double rn = rns - rnl;
    double penmanMonteith =
        (MM_PER_MJ * slope * (rn - gMj) + gamma * 900 / (tmean + 273) * u2 * (es - ea))
            / (slope + gamma * (1 + 0.34 * u2));
    double hargreaves =
        0.0023 * (tmean + 17.8) * Math.sqrt(Math.max(0, tmax - tmin)) * MM_PER_MJ * ra;
    boolean onlyTemperatures =
        radiation == RadiationFrom.TEMPERATURE_RANGE
            && moisture == MoistureFrom.MINIMUM_TEMPERATURE
            && !windKnown;
    return new ReferenceEt(
        sun,
        tmean,
        pressure,
        gamma,
        slope,
        es,
        ea,
        rs,
        rso,
        rns,
        rnl,
        rn,
        gMj,
        u2,
        penmanMonteith,
        hargreaves,
        onlyTemperatures ? Formula.HARGREAVES_SAMANI : Formula.PENMAN_MONTEITH,
        radiation,
        moisture,
        windKnown ? WindFrom.MEASURED : WindFrom.DEFAULT);
  }

  private static MoistureFrom moistureFrom(Weather.Humidity humidity) {
    if (humidity.dewPointC().isPresent()) {
      return MoistureFrom.DEW_POINT;
    }
    if (humidity.relativeMax().isPresent()) {
      return humidity.relativeMin().isPresent()
          ? MoistureFrom.RELATIVE_EXTREMES
          : MoistureFrom.RELATIVE_MAXIMUM;
    }
    return humidity.relativeMean().isPresent()
        ? MoistureFrom.RELATIVE_MEAN
        : MoistureFrom.MINIMUM_TEMPERATURE;
  }

  private static double vapourKPa(
      MoistureFrom from, Weather weather, EtSettings settings, double atMin, double atMax) {
    Weather.Humidity humidity = weather.humidity();
    return switch (from) {
      case DEW_POINT -> Air.saturationKPa(humidity.dewPointC().getAsDouble());
      case RELATIVE_EXTREMES ->
          (atMin * humidity.relativeMax().getAsDouble()
                  + atMax * humidity.relativeMin().getAsDouble())
              / 2;
      case RELATIVE_MAXIMUM -> atMin * humidity.relativeMax().getAsDouble();
      case RELATIVE_MEAN -> humidity.relativeMean().getAsDouble() * (atMin + atMax) / 2;
      case MINIMUM_TEMPERATURE ->
          Air.saturationKPa(weather.tminC() - settings.dewPointBelowTminC());
    };
  }

  private static RadiationFrom radiationFrom(Weather weather) {
    if (weather.solarWPerM2().isPresent()) {
      return RadiationFrom.MEASURED;
    }
    return weather.sunshineHours().isPresent()
        ? RadiationFrom.SUNSHINE
        : RadiationFrom.TEMPERATURE_RANGE;
  }

  private static double solarMj(
      RadiationFrom from, Weather weather, EtSettings settings, SolarDay sun, double rso) {
    double ra = sun.raMjPerM2Day();
    return switch (from) {
      case MEASURED -> weather.solarWPerM2().getAsDouble() / W_PER_MJ_DAY;
      case SUNSHINE -> {
        double possible = sun.daylightHours();
        double share =
            possible > 0 ? Math.min(1, weather.sunshineHours().getAsDouble() / possible) : 0;
        yield (settings.angstromA() + settings.angstromB() * share) * ra;
      }
      case TEMPERATURE_RANGE -> {
        double range = Math.sqrt(Math.max(0, weather.tmaxC() - weather.tminC()));
        yield Math.min(rso, settings.temperatureRangeKrs() * range * ra);
      }
    };
  }

  /** Net outgoing long-wave radiation; FAO-56 equation 39. */
  private static double longWaveMj(double tmin, double tmax, double ea, double rs, double rso) {
    double body =
        STEFAN_BOLTZMANN_MJ * (Math.pow(tmax + 273.16, 4) + Math.pow(tmin + 273.16, 4)) / 2;
    // FAO-56 limits the ratio to 1; where the sun does not rise there is none, and a sky of
    // middling
    // cloud is taken. The floor on the factor is that of ASCE-EWRI (2005).
    double clear = rso > 0 ? Math.min(1, rs / rso) : 0.7;
    return body * (0.34 - 0.14 * Math.sqrt(ea)) * Math.max(0.05, 1.35 * clear - 0.35);
  }
}
