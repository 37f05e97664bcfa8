package org.grovewright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.grovewright.model.Point;
import org.grovewright.model.Site;
import org.grovewright.model.SpotHeight;
import org.junit.jupiter.api.Test;

class TerrainTest {
  private static SpotHeight spot(double x, double y, double height) {
    return new SpotHeight(new Point(x, y), height);
  }

  private static Terrain terrain(double northBearingDeg, List<SpotHeight> spots) {
    return Terrain.of(new Site("invented", 0, 0, 0, List.of(), northBearingDeg, List.of(), spots));
  }

  private static Terrain terrain(SpotHeight... spots) {
    return terrain(0, List.of(spots));
  }

  @Test
  void isLevelWithoutMeasurement() {
    Terrain none = terrain();
    assertThat(none.heightAt(new Point(7, -3))).isZero();
    assertThat(none.slope().gradient()).isZero();
    assertThat(none.slope().aspectDeg()).isEmpty();
    Terrain one = terrain(spot(5, 5, 2.5));
    assertThat(one.heightAt(new Point(-100, 40))).isEqualTo(2.5);
    assertThat(one.slopeAt(new Point(0, 0)).gradient()).isZero();
  }

  @Test
  void slopesAlongTwoSpotsAndIsLevelAcross() {
    Terrain two = terrain(spot(0, 0, 1), spot(30, 40, 3.5));
    assertThat(two.heightAt(new Point(15, 20))).isCloseTo(2.25, within(1e-12));
    // A step of 5 m at a right angle to the line.
    assertThat(two.heightAt(new Point(15 - 4, 20 + 3))).isCloseTo(2.25, within(1e-12));
    assertThat(two.slope().gradient()).isCloseTo(2.5 / 50, within(1e-12));
  }

  @Test
  void fallsTowardsItsAspect() {
    // Rises to the right of the sketch, so it falls to the left: west where y points north.
    List<SpotHeight> spots = List.of(spot(0, 0, 0), spot(10, 0, 1), spot(0, 10, 0));
    assertThat(terrain(0, spots).slope().aspectDeg().orElseThrow()).isCloseTo(270, within(1e-9));
    // With y pointing east the left of the sketch is north.
    assertThat(terrain(90, spots).slope().aspectDeg().orElseThrow() % 360)
        .isCloseTo(0, within(1e-9));
    assertThat(terrain(0, spots).slope().gradient()).isCloseTo(0.1, within(1e-12));
    assertThat(terrain(0, spots).slopeAt(new Point(3, 3)).gradient()).isCloseTo(0.1, within(1e-9));
  }

  @Test
  void doesNotTipOverSpotsNearlyInALine() {
    // A row levelled along its length, each spot a hand off the line and a centimetre out: fitted
    // in full, the plane would fall by a tenth across the row.
    Terrain row = terrain(spot(0, 0.1, 0.01), spot(20, -0.1, 0.99), spot(40, 0.1, 2.01));
    assertThat(row.slope().gradient()).isCloseTo(0.05, within(1e-3));
    assertThat(row.slopeAt(new Point(20, 15)).gradient()).isCloseTo(0.05, within(5e-3));
  }

  @Test
  void takesTheMeanOfTwoHeightsAtOnePlace() {
    Terrain terrain = terrain(spot(0, 0, 1), spot(0, 0, 1.2), spot(0, 0, 1.4), spot(10, 0, 2));
    assertThat(terrain.spotCount()).isEqualTo(2);
    assertThat(terrain.heightAt(new Point(0, 0))).isCloseTo(1.2, within(1e-12));
  }

  @Test
  void tellsHowFarOffItMayBe() {
    List<SpotHeight> plane = new ArrayList<>();
    List<SpotHeight> bumpy = new ArrayList<>();
    Random random = new Random(5);
    for (int i = 0; i < 12; i++) {
      double x = 10 * (i % 4);
      double y = 10 * (i / 4);
      plane.add(spot(x, y, 0.03 * x - 0.02 * y));
      bumpy.add(spot(x, y, 0.03 * x - 0.02 * y + 0.1 * random.nextGaussian()));
    }
    assertThat(terrain(0, plane).typicalErrorM().orElseThrow()).isCloseTo(0, within(1e-12));
    assertThat(terrain(0, bumpy).typicalErrorM().orElseThrow()).isBetween(0.05, 0.3);
    assertThat(terrain(spot(0, 0, 0), spot(1, 0, 0), spot(0, 1, 0)).typicalErrorM()).isEmpty();
  }

  @Test
  void knowsHowFarAPlaceIsFromTheSpots() {
    Terrain square = terrain(spot(0, 0, 0), spot(10, 0, 0), spot(10, 10, 0), spot(0, 10, 0));
    assertThat(square.beyondM(new Point(5, 5))).isZero();
    assertThat(square.beyondM(new Point(13, 14))).isCloseTo(5, within(1e-12));
    assertThat(square.extentM()).isCloseTo(Math.hypot(10, 10), within(1e-12));
  }

  @Property(tries = 200)
  void givesBackAnyPlane(
      @ForAll @DoubleRange(min = -0.5, max = 0.5) double riseX,
      @ForAll @DoubleRange(min = -0.5, max = 0.5) double riseY,
      @ForAll @DoubleRange(min = -1e5, max = 1e5) double shift,
      @ForAll @IntRange(min = 0, max = 1000) int seed) {
    Random random = new Random(seed);
    List<SpotHeight> spots = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      double x = shift + 50 * random.nextDouble();
      double y = 50 * random.nextDouble();
      spots.add(spot(x, y, 2 + riseX * (x - shift) + riseY * y));
    }
    Terrain terrain = terrain(0, spots);
    Point place = new Point(shift + 80 * random.nextDouble(), -30 * random.nextDouble());
    double expected = 2 + riseX * (place.x() - shift) + riseY * place.y();
    assertThat(terrain.heightAt(place)).isCloseTo(expected, within(1e-6));
    assertThat(terrain.slope().gradient()).isCloseTo(Math.hypot(riseX, riseY), within(1e-8));
  }

  @Property(tries = 200)
  void passesThroughEverySpotAndStaysWithinTheirDepartures(
      @ForAll @IntRange(min = 3, max = 12) int count,
      @ForAll @IntRange(min = 0, max = 10_000) int seed) {
    Random random = new Random(seed);
    List<SpotHeight> spots = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      spots.add(spot(60 * random.nextDouble(), 60 * random.nextDouble(), 3 * random.nextDouble()));
    }
    Terrain terrain = terrain(0, spots);
    for (SpotHeight spot : spots) {
      assertThat(terrain.heightAt(spot.at())).isCloseTo(spot.heightM(), within(1e-9));
      // Continuous: a millimetre away the height is nearly the spot's.
      Point near = new Point(spot.at().x() + 1e-3, spot.at().y());
      assertThat(terrain.heightAt(near)).isCloseTo(spot.heightM(), within(0.02));
    }
    Point place = new Point(80 * random.nextDouble() - 10, 80 * random.nextDouble() - 10);
    assertThat(terrain.heightAt(place)).isFinite();
  }
}
