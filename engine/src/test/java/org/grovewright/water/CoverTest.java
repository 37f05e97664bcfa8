package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Plants that leave ground bare, against the worked examples of chapters 9 and 10 of FAO Irrigation
 * and Drainage Paper 56 (1998), read in the paper. Equation 98 of the paper weighs full cover and
 * bare soil, {@code K = Kmin + (Kfull - Kmin) d}; the density {@code d} is what {@link Cover}
 * computes.
 */
class CoverTest {
  private static final double BARE = 0.15;

  private static double basal(double full, double density) {
    return BARE + (full - BARE) * density;
  }

  /** Page 185: tomato under 1.1 m/s and 30 %, 0.75 m high, 1.20 and 1.15 in the tables. */
  @Test
  void weatherOfExample40() {
    double shift = KcCurve.weatherShift(1.1, 0.30, 0.75);
    assertThat(shift).isCloseTo(0.02, within(0.005));
    assertThat(1.20 + shift).isCloseTo(1.22, within(0.005));
    assertThat(1.15 + shift).isCloseTo(1.17, within(0.005));
  }

  /** Page 190: plants 2 m high on three tenths of the ground, 40 degrees north on day 200. */
  @Test
  void lowSparsePlantsOfExample41() {
    SolarDay sun = SolarDay.of(40, 200);
    assertThat(sun.declinationRad()).isCloseTo(0.36, within(0.005));
    assertThat(Math.sin(sun.noonElevationRad())).isCloseTo(0.94, within(0.01));
    assertThat(sun.noonElevationRad()).isCloseTo(1.24, within(0.02));
    double full = 1.20 + KcCurve.weatherShift(1.5, 0.55, 2);
    assertThat(full).isCloseTo(1.15, within(0.005));
    // Twice the covered ground is the least of the three: 1, 0.6, 0.4 to the power of a third. The
    // paper takes the ground under the leaves for the second and the shaded ground for the third;
    // Allen and Pereira (2009), whom the program follows, the shaded ground for both.
    double density = Cover.density(0.3, 2, 2);
    assertThat(density).isCloseTo(0.6, within(1e-12)).isLessThan(Cover.density(0.4, 2, 9));
    assertThat(basal(full, density)).isCloseTo(0.75, within(0.005));
  }

  /** Page 191: the tomatoes of Example 40 in rows, which shade 0.66 of the ground. */
  @Test
  void rowsOfExample42() {
    SolarDay sun = SolarDay.of(38.5, 201);
    assertThat(sun.declinationRad()).isCloseTo(0.36, within(0.005));
    assertThat(Math.sin(sun.noonElevationRad())).isCloseTo(0.95, within(0.005));
    assertThat(sun.noonElevationRad()).isCloseTo(1.26, within(0.01));
    double full = 1.15 + KcCurve.weatherShift(1.1, 0.30, 0.75);
    assertThat(full).isCloseTo(1.17, within(0.005));
    double density = Cover.density(0.66, 0.76, 2);
    assertThat(density).isCloseTo(Math.pow(0.66, 1 / 1.76), within(1e-12));
    assertThat(basal(full, density)).isCloseTo(0.95, within(0.008));
  }

  /**
   * Page 192: olives 5 m wide and high at 10 by 10 and at 5 by 10 m, 30 degrees north on day 180,
   * before the reduction by their leaves' resistance, which the program does not compute.
   */
  @Test
  void olivesOfExample43() {
    SolarDay sun = SolarDay.of(30, 180);
    assertThat(sun.declinationRad()).isCloseTo(0.405, within(0.001));
    assertThat(Math.sin(sun.noonElevationRad())).isCloseTo(0.99, within(0.005));
    double full = 1.2 + KcCurve.weatherShift(2, 0.25, 5);
    assertThat(full).isCloseTo(1.29, within(0.005));
    double crown = Math.PI * 5 * 5 / 4;
    assertThat(crown / 100).isCloseTo(0.196, within(0.0005));
    assertThat(crown / 50).isCloseTo(0.39, within(0.005));
    double wide = Cover.effective(crown / 100, sun.noonElevationRad());
    double close = Cover.effective(crown / 50, sun.noonElevationRad());
    assertThat(wide).isCloseTo(0.20, within(0.005));
    assertThat(close).isCloseTo(0.40, within(0.005));
    assertThat(basal(full, Cover.density(wide, 5, 2))).isCloseTo(0.60, within(0.005));
    // 1.04 by the ground under the leaves, a hundredth more by the shaded ground.
    assertThat(basal(full, Cover.density(close, 5, 2))).isCloseTo(1.04, within(0.015));
    // The air of its last step, at 25 degrees and sea level.
    assertThat(Air.slopeKPaPerC(25)).isCloseTo(0.189, within(0.0005));
    assertThat(Air.psychrometricKPaPerC(Air.pressureKPa(0))).isCloseTo(0.0676, within(0.0003));
  }

  /** Page 201: palms 10 m and citrus 3 m high under 2 m/s and 20 %. */
  @Test
  void heightsOfExample47() {
    double palms = KcCurve.weatherShift(2, 0.20, 10);
    double citrus = KcCurve.weatherShift(2, 0.20, 3);
    assertThat(0.95 + palms).isCloseTo(1.09, within(0.005));
    assertThat(0.60 + citrus).isCloseTo(0.70, within(0.005));
    assertThat(1.2 + palms).isCloseTo(1.34, within(0.005));
    assertThat(1.2 + citrus).isCloseTo(1.30, within(0.005));
  }
}
