package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import net.e175.klaus.solarpositioning.SPA;
import net.e175.klaus.solarpositioning.SunriseResult;
import org.junit.jupiter.api.Test;

/** Against the solar position algorithm of Reda and Andreas (NREL, 2004) in a general library. */
class SolarDayTest {
  private static final double DELTA_T = 69;

  @Test
  void declinationIsThatOfTheAlmanac() {
    for (LocalDate day = LocalDate.of(2025, 1, 1); day.getYear() == 2025; day = day.plusDays(5)) {
      SunriseResult result = SPA.calculateSunriseTransitSet(noon(day), 0, 0, DELTA_T, 0.0);
      ZonedDateTime transit = ((SunriseResult.RegularDay) result).transit();
      // Seen from 50 degrees south the sun never passes the zenith, so its height tells its
      // declination without doubt about the side.
      double zenithDeg = SPA.calculateSolarPosition(transit, -50, 0, 0, DELTA_T).zenithAngle();
      double declinationDeg = zenithDeg - 50;
      double ours = Math.toDegrees(SolarDay.of(0, day.getDayOfYear()).declinationRad());
      // FAO-56 equation 24 is a single sine; a degree is what it can do.
      assertThat(ours).as("%s", day).isCloseTo(declinationDeg, within(1.0));
    }
  }

  @Test
  void daylightIsThatOfTheAlmanac() {
    for (double latitude : new double[] {-55, -33, -10, 0, 21, 40, 52, 60}) {
      for (LocalDate day = LocalDate.of(2025, 1, 3); day.getYear() == 2025; day = day.plusDays(7)) {
        SunriseResult result = SPA.calculateSunriseTransitSet(noon(day), latitude, 0, DELTA_T, 0.0);
        SunriseResult.RegularDay regular = (SunriseResult.RegularDay) result;
        double hours =
            java.time.Duration.between(regular.sunrise(), regular.sunset()).toSeconds() / 3600.0;
        // The error of the declination weighs most at high latitudes.
        assertThat(SolarDay.of(latitude, day.getDayOfYear()).daylightHours())
            .as("%s at %s", day, latitude)
            .isCloseTo(hours, within(0.25));
      }
    }
  }

  @Test
  void noonHeightIsThatOfTheAlmanac() {
    for (LocalDate day = LocalDate.of(2025, 1, 2); day.getYear() == 2025; day = day.plusDays(11)) {
      SunriseResult result = SPA.calculateSunriseTransitSet(noon(day), 38, 0, DELTA_T, 0.0);
      ZonedDateTime transit = ((SunriseResult.RegularDay) result).transit();
      double zenithDeg = SPA.calculateSolarPosition(transit, 38, 0, 0, DELTA_T).zenithAngle();
      double ours = Math.toDegrees(SolarDay.of(38, day.getDayOfYear()).noonElevationRad());
      assertThat(ours).isCloseTo(90 - zenithDeg, within(1.0));
    }
  }

  private static ZonedDateTime noon(LocalDate day) {
    return day.atTime(12, 0).atZone(ZoneOffset.UTC);
  }
}
