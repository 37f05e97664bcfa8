package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.water.ReferenceEt.Formula;
import org.grovewright.water.ReferenceEt.MoistureFrom;
import org.grovewright.water.ReferenceEt.RadiationFrom;
import org.grovewright.water.ReferenceEt.WindFrom;
import org.junit.jupiter.api.Test;

/**
 * The worked examples of FAO Irrigation and Drainage Paper 56 (1998), read in the paper or, for
 * Examples 2 to 10, 14, 17 and 18, as restated in the test data of public hydrology libraries.
 */
class ReferenceEtTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final Catalogue CATALOGUE = TestCatalogue.of();

  private static EtSettings at(double latitudeDeg, double elevationM, double windHeightM) {
    return EtSettings.of(latitudeDeg, elevationM, windHeightM, CATALOGUE);
  }

  private static Weather.Humidity dewPoint(double celsius) {
    return new Weather.Humidity(OptionalDouble.of(celsius), NONE, NONE, NONE);
  }

  private static Weather.Humidity extremes(double max, double min) {
    return new Weather.Humidity(NONE, OptionalDouble.of(max), OptionalDouble.of(min), NONE);
  }

  private static Weather sunny(
      double tmin, double tmax, Weather.Humidity humidity, double wind, double sunshine) {
    return new Weather(
        tmin, tmax, humidity, OptionalDouble.of(wind), NONE, OptionalDouble.of(sunshine));
  }

  private static Weather temperatures(double tmin, double tmax) {
    return new Weather(tmin, tmax, Weather.Humidity.UNKNOWN, NONE, NONE, NONE);
  }

  @Test
  void pressureAndPsychrometricConstant() {
    // FAO-56 Example 2 (1800 m); the pressure at 1200 m is of Example 4.
    assertThat(Air.pressureKPa(1800)).isCloseTo(81.8, within(0.05));
    assertThat(Air.psychrometricKPaPerC(81.8)).isCloseTo(0.054, within(0.0005));
    assertThat(Air.pressureKPa(1200)).isCloseTo(87.9, within(0.05));
  }

  @Test
  void saturationVapourPressure() {
    // FAO-56 Example 3: 24.5 and 15 degrees.
    assertThat(Air.saturationKPa(24.5)).isCloseTo(3.075, within(0.0005));
    assertThat(Air.saturationKPa(15)).isCloseTo(1.705, within(0.0005));
    double es = ReferenceEt.daily(at(0, 0, 2), 100, temperatures(15, 24.5)).esKPa();
    assertThat(es).isCloseTo(2.39, within(0.005));
  }

  @Test
  void slopeOfSaturationCurve() {
    // ASCE-EWRI (2005) appendix C, table C-3; its mean temperatures are rounded.
    assertThat(Air.slopeKPaPerC(21.65)).isCloseTo(0.1585, within(0.0005));
    assertThat(Air.slopeKPaPerC(26.4)).isCloseTo(0.2027, within(0.0005));
  }

  @Test
  void actualVapourPressureFromEachKindOfHumidity() {
    // FAO-56 Example 5: 18 to 25 degrees, 82 to 54 %.
    Weather weather = sunny(18, 25, extremes(0.82, 0.54), 2, 8);
    ReferenceEt et = ReferenceEt.daily(at(0, 0, 2), 100, weather);
    assertThat(et.eaKPa()).isCloseTo(1.70, within(0.005));
    assertThat(et.moisture()).isEqualTo(MoistureFrom.RELATIVE_EXTREMES);

    Weather.Humidity mean = new Weather.Humidity(NONE, NONE, NONE, OptionalDouble.of(0.68));
    ReferenceEt fromMean = ReferenceEt.daily(at(0, 0, 2), 100, sunny(18, 25, mean, 2, 8));
    assertThat(fromMean.eaKPa()).isCloseTo(1.78, within(0.005));
    assertThat(fromMean.moisture()).isEqualTo(MoistureFrom.RELATIVE_MEAN);

    Weather.Humidity max = new Weather.Humidity(NONE, OptionalDouble.of(0.82), NONE, NONE);
    ReferenceEt fromMax = ReferenceEt.daily(at(0, 0, 2), 100, sunny(18, 25, max, 2, 8));
    // FAO-56 Example 5 gives e(18) = 2.064 kPa; equation 18.
    assertThat(fromMax.eaKPa()).isCloseTo(2.064 * 0.82, within(0.001));
    assertThat(fromMax.moisture()).isEqualTo(MoistureFrom.RELATIVE_MAXIMUM);
  }

  @Test
  void dewPointTurnsVapourPressureRound() {
    assertThat(Air.dewPointC(Air.saturationKPa(17.2))).isCloseTo(17.2, within(1e-9));
  }

  @Test
  void sunOfSeptemberInTheSouth() {
    // FAO-56 Examples 8 and 9: 20 degrees south, 3 September.
    SolarDay sun = SolarDay.of(-20, 246);
    assertThat(sun.inverseDistance()).isCloseTo(0.985, within(0.0005));
    assertThat(sun.declinationRad()).isCloseTo(0.120, within(0.0005));
    assertThat(sun.sunsetHourAngleRad()).isCloseTo(1.527, within(0.0005));
    assertThat(sun.raMjPerM2Day()).isCloseTo(32.2, within(0.05));
    assertThat(sun.daylightHours()).isCloseTo(11.7, within(0.05));
  }

  @Test
  void radiationOfRioInMay() {
    // FAO-56 Examples 10 to 12: Rio de Janeiro, 22.90 S, 7.1 h/day in May; 19.1 to 25.1 degrees,
    // vapour pressure 2.1 kPa. Ra 25.1, N 10.9, Rs 14.5, Rso 18.8, Rnl 3.5, Rns 11.1, Rn 7.6.
    Weather weather = sunny(19.1, 25.1, dewPoint(Air.dewPointC(2.1)), 2, 7.1);
    ReferenceEt et = ReferenceEt.daily(at(-22.9, 0, 2), 135, weather);
    assertThat(et.sun().raMjPerM2Day()).isCloseTo(25.1, within(0.05));
    assertThat(et.sun().daylightHours()).isCloseTo(10.9, within(0.05));
    assertThat(et.rsMj()).isCloseTo(14.5, within(0.07));
    assertThat(et.rsoMj()).isCloseTo(18.8, within(0.05));
    assertThat(et.rnlMj()).isCloseTo(3.5, within(0.1));
    assertThat(et.rnsMj()).isCloseTo(11.1, within(0.07));
    assertThat(et.rnMj()).isCloseTo(7.6, within(0.1));
    assertThat(et.radiation()).isEqualTo(RadiationFrom.SUNSHINE);
  }

  @Test
  void soilHeatOfMonths() {
    // FAO-56 Example 13: Algiers, 14.1, 16.1 and 18.8 degrees.
    assertThat(ReferenceEt.soilHeatMj(14.1, 18.8)).isCloseTo(0.33, within(0.005));
    assertThat(ReferenceEt.soilHeatFromPreviousMj(14.1, 16.1)).isCloseTo(0.28, within(0.005));
  }

  @Test
  void windBroughtDownToTwoMetres() {
    // FAO-56 Example 14: 3.2 m/s at 10 m is 2.4 m/s at 2 m.
    assertThat(Air.windAt2m(3.2, 10)).isCloseTo(2.4, within(0.05));
    assertThat(Air.windAt2m(3.2, 2)).isEqualTo(3.2);
    // A calm is lifted to the floor of FAO-56 chapter 3.
    Weather calm = sunny(18, 25, Weather.Humidity.UNKNOWN, 0, 8);
    assertThat(ReferenceEt.daily(at(0, 0, 2), 100, calm).u2MPerS()).isEqualTo(0.5);
  }

  @Test
  void radiationFromTemperatures() {
    // FAO-56 Example 15: Lyon, 45.72 N, 200 m, July, 14.8 to 26.6 degrees, inland: Ra 40.6 and Rs
    // 22.3 MJ/m2/day.
    ReferenceEt et = ReferenceEt.monthly(at(45.72, 200, 2), 7, temperatures(14.8, 26.6), 0);
    assertThat(et.sun().dayOfYear()).isEqualTo(196);
    assertThat(et.sun().raMjPerM2Day()).isCloseTo(40.6, within(0.06));
    assertThat(et.rsMj()).isCloseTo(22.3, within(0.05));
    assertThat(et.radiation()).isEqualTo(RadiationFrom.TEMPERATURE_RANGE);
    double coastal =
        ReferenceEt.monthly(at(45.72, 200, 2).coastal(CATALOGUE), 7, temperatures(14.8, 26.6), 0)
            .rsMj();
    assertThat(coastal / et.rsMj()).isCloseTo(0.19 / 0.16, within(1e-9));
  }

  @Test
  void netRadiationWithoutMeasuredRadiation() {
    // FAO-56 Example 16: Bangkok in April, on the coast: Ra 38.1, Rs 21.9, Rso 28.5, Rns 16.9, Rnl
    // 3.0, Rn 13.9.
    Weather weather = new Weather(25.6, 34.8, dewPoint(Air.dewPointC(2.85)), NONE, NONE, NONE);
    ReferenceEt et = ReferenceEt.monthly(at(13.73, 2, 2).coastal(CATALOGUE), 4, weather, 0);
    assertThat(et.sun().raMjPerM2Day()).isCloseTo(38.1, within(0.05));
    assertThat(et.rsMj()).isCloseTo(21.9, within(0.05));
    assertThat(et.rsoMj()).isCloseTo(28.5, within(0.05));
    assertThat(et.rnsMj()).isCloseTo(16.9, within(0.05));
    assertThat(et.rnlMj()).isCloseTo(3.0, within(0.05));
    assertThat(et.rnMj()).isCloseTo(13.9, within(0.05));
  }

  @Test
  void monthOfBangkok() {
    // FAO-56 Example 17: Bangkok, 13.73 N, 2 m, April.
    Weather weather = sunny(25.6, 34.8, dewPoint(Air.dewPointC(2.85)), 2, 8.5);
    ReferenceEt et =
        ReferenceEt.monthly(
            at(13.73, 2, 2), 4, weather, ReferenceEt.soilHeatFromPreviousMj(29.2, 30.2));
    assertThat(et.sun().dayOfYear()).isEqualTo(105);
    assertThat(et.tmeanC()).isCloseTo(30.2, within(0.005));
    assertThat(et.slopeKPaPerC()).isCloseTo(0.246, within(0.0005));
    assertThat(et.pressureKPa()).isCloseTo(101.3, within(0.05));
    // The example rounds the pressure to 101.3 first.
    assertThat(et.gammaKPaPerC()).isCloseTo(0.0674, within(0.0001));
    assertThat(et.esKPa()).isCloseTo(4.42, within(0.005));
    assertThat(et.eaKPa()).isCloseTo(2.85, within(1e-9));
    assertThat(et.sun().raMjPerM2Day()).isCloseTo(38.06, within(0.02));
    assertThat(et.sun().daylightHours()).isCloseTo(12.31, within(0.005));
    assertThat(et.rsMj()).isCloseTo(22.65, within(0.02));
    assertThat(et.rsoMj()).isCloseTo(28.54, within(0.02));
    assertThat(et.rnsMj()).isCloseTo(17.44, within(0.02));
    assertThat(et.rnlMj()).isCloseTo(3.11, within(0.02));
    assertThat(et.rnMj()).isCloseTo(14.33, within(0.02));
    assertThat(et.gMj()).isCloseTo(0.14, within(0.005));
    assertThat(et.et0MmPerDay()).isCloseTo(5.72, within(0.01));
    assertThat(et.formula()).isEqualTo(Formula.PENMAN_MONTEITH);
  }

  @Test
  void dayOfBrussels() {
    // FAO-56 Example 18: Uccle, 50.80 N, 100 m, 6 July.
    Weather weather = sunny(12.3, 21.5, extremes(0.84, 0.63), 10 / 3.6, 9.25);
    ReferenceEt et = ReferenceEt.daily(at(50.80, 100, 10), 187, weather);
    assertThat(et.u2MPerS()).isCloseTo(2.078, within(0.0005));
    assertThat(et.pressureKPa()).isCloseTo(100.1, within(0.05));
    assertThat(et.gammaKPaPerC()).isCloseTo(0.0666, within(0.00005));
    assertThat(et.slopeKPaPerC()).isCloseTo(0.122, within(0.0005));
    assertThat(et.esKPa()).isCloseTo(1.997, within(0.001));
    assertThat(et.eaKPa()).isCloseTo(1.409, within(0.001));
    assertThat(et.sun().raMjPerM2Day()).isCloseTo(41.09, within(0.01));
    assertThat(et.sun().daylightHours()).isCloseTo(16.1, within(0.05));
    assertThat(et.rsMj()).isCloseTo(22.07, within(0.01));
    assertThat(et.rsoMj()).isCloseTo(30.90, within(0.01));
    assertThat(et.rnsMj()).isCloseTo(17.00, within(0.01));
    assertThat(et.rnlMj()).isCloseTo(3.71, within(0.005));
    assertThat(et.rnMj()).isCloseTo(13.28, within(0.01));
    assertThat(et.gMj()).isZero();
    assertThat(et.et0MmPerDay()).isCloseTo(3.88, within(0.005));
    assertThat(et.et0MPerS()).isCloseTo(3.88e-3 / 86_400, within(0.005e-3 / 86_400));
  }

  @Test
  void julyOfLyonFromTemperaturesOnly() {
    // FAO-56 Example 20: Lyon as in Example 15 with wind 2 m/s and the dew point at the minimum;
    // 4.56 mm/day by equation 6 and 5.0 by equation 52.
    ReferenceEt et = ReferenceEt.monthly(at(45.72, 200, 2), 7, temperatures(14.8, 26.6), 0);
    assertThat(et.slopeKPaPerC()).isCloseTo(0.150, within(0.0005));
    assertThat(et.gammaKPaPerC()).isCloseTo(0.0658, within(0.00005));
    assertThat(et.eaKPa()).isCloseTo(1.68, within(0.005));
    assertThat(et.esKPa()).isCloseTo(2.58, within(0.005));
    assertThat(et.relativeMin(26.6)).isCloseTo(0.48, within(0.005));
    assertThat(et.rsMj()).isCloseTo(22.29, within(0.02));
    assertThat(et.rsoMj()).isCloseTo(30.58, within(0.02));
    assertThat(et.rnsMj()).isCloseTo(17.16, within(0.02));
    // The paper rounds its factors to two decimals on the way.
    assertThat(et.rnlMj()).isCloseTo(3.68, within(0.07));
    assertThat(et.rnMj()).isCloseTo(13.48, within(0.08));
    assertThat(et.penmanMonteithMm()).isCloseTo(4.56, within(0.03));
    assertThat(et.hargreavesMm()).isCloseTo(5.0, within(0.05));
    assertThat(et.formula()).isEqualTo(Formula.HARGREAVES_SAMANI);
    assertThat(et.moisture()).isEqualTo(MoistureFrom.MINIMUM_TEMPERATURE);
    assertThat(et.wind()).isEqualTo(WindFrom.DEFAULT);
    assertThat(et.et0MmPerDay()).isEqualTo(et.hargreavesMm());
  }

  @Test
  void dryAirLowersTheDewPoint() {
    ReferenceEt humid = ReferenceEt.daily(at(35, 0, 2), 200, temperatures(16, 34));
    ReferenceEt arid = ReferenceEt.daily(at(35, 0, 2).arid(CATALOGUE), 200, temperatures(16, 34));
    assertThat(humid.eaKPa()).isCloseTo(Air.saturationKPa(16), within(1e-12));
    assertThat(arid.eaKPa()).isCloseTo(Air.saturationKPa(14), within(1e-12));
    assertThat(arid.penmanMonteithMm()).isGreaterThan(humid.penmanMonteithMm());
  }

  @Test
  void measuredRadiationGoesBeforeSunshine() {
    Weather weather =
        new Weather(
            12,
            25,
            Weather.Humidity.UNKNOWN,
            NONE,
            OptionalDouble.of(20 * ReferenceEt.W_PER_MJ_DAY),
            OptionalDouble.of(2));
    ReferenceEt et = ReferenceEt.daily(at(40, 0, 2), 180, weather);
    assertThat(et.rsMj()).isCloseTo(20, within(1e-9));
    assertThat(et.radiation()).isEqualTo(RadiationFrom.MEASURED);
    assertThat(et.formula()).isEqualTo(Formula.PENMAN_MONTEITH);
  }

  @Test
  void polarNightAndDayGiveFiniteNumbers() {
    for (double latitude : new double[] {90, 80, -80, -90}) {
      for (int day : new int[] {1, 172, 355, 366}) {
        ReferenceEt et =
            ReferenceEt.daily(at(latitude, 0, 2), day, sunny(-30, -20, dewPoint(-31), 3, 4));
        assertThat(et.et0MmPerDay()).isFinite().isNotNegative();
        assertThat(et.rnMj()).isFinite();
        assertThat(et.sun().daylightHours()).isIn(0.0, 24.0);
      }
    }
  }

  @Test
  void seasonsAreTurnedRoundInTheSouth() {
    assertThat(SolarDay.of(-35, 355).daylightHours())
        .isCloseTo(SolarDay.of(35, 172).daylightHours(), within(0.05));
    assertThat(SolarDay.of(-35, 172).raMjPerM2Day())
        .isLessThan(SolarDay.of(-35, 355).raMjPerM2Day());
  }

  @Test
  void placesThatDoNotExistAreRefused() {
    assertThatThrownBy(() -> at(91, 0, 2)).hasMessageContaining("latitude");
    assertThatThrownBy(() -> at(Double.NaN, 0, 2)).hasMessageContaining("latitude");
    assertThatThrownBy(() -> at(0, 10_000, 2)).hasMessageContaining("elevation");
    assertThatThrownBy(() -> at(0, 0, 0)).hasMessageContaining("wind");
  }
}
