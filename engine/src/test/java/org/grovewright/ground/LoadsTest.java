package org.grovewright.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class LoadsTest {
  private static final double POUND = 0.45359237;
  private static final double CUBIC_YARD = 0.9144 * 0.9144 * 0.9144;

  @Test
  void hauledLoadsOfAHandbookExample() {
    // Estimating in Building Construction (Dagostino), Example 9-2: 1,000 bank cubic yards of dense
    // clay that swells by 30 % fill 1,300 loose yards, 186 lorries of 7 yards.
    double loose = 1000 * CUBIC_YARD * (1 + 0.30);
    assertThat(loose / CUBIC_YARD).isCloseTo(1300, within(1e-9));
    Carrier lorry = new Carrier(7 * CUBIC_YARD, 1e9);
    assertThat(lorry.trips(BulkLoad.ofVolume(loose, 1))).isEqualTo(186);
  }

  @Test
  void densityOfACommercialTable() {
    // Woodmaterials bulk densities, wet: sandy loam 2056 lb and mixed wood mulch 628 lb a cubic
    // yard.
    BulkLoad loam = BulkLoad.ofMass(2056 * POUND, 2056 * POUND / CUBIC_YARD);
    assertThat(loam.volumeM3()).isCloseTo(CUBIC_YARD, within(1e-12));
    BulkLoad mulch = BulkLoad.ofVolume(3 * CUBIC_YARD, 628 * POUND / CUBIC_YARD);
    assertThat(mulch.massKg() / POUND).isCloseTo(3 * 628, within(1e-9));
  }

  @Property
  void goesBothWays(
      @ForAll @DoubleRange(min = 0.01, max = 10_000) double volume,
      @ForAll @DoubleRange(min = 20, max = 3000) double density) {
    BulkLoad there = BulkLoad.ofVolume(volume, density);
    BulkLoad back = BulkLoad.ofMass(there.massKg(), density);
    assertThat(back.volumeM3()).isCloseTo(volume, within(1e-12 * volume));
  }

  @Test
  void theScarcerOfRoomAndStrengthCounts() {
    Carrier barrow = new Carrier(0.085, 80);
    assertThat(barrow.trips(new BulkLoad(0.85, 100))).isEqualTo(10);
    assertThat(barrow.trips(new BulkLoad(0.85, 1600))).isEqualTo(20);
    assertThat(barrow.trips(new BulkLoad(0.86, 100))).isEqualTo(11);
    assertThat(barrow.trips(BulkLoad.NONE)).isZero();
  }

  @Test
  void refusesWhatCannotBe() {
    assertThatThrownBy(() -> BulkLoad.ofMass(5, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new BulkLoad(-1, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new BulkLoad(Double.NaN, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Carrier(0, 10)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void frustumBetweenConeAndCylinder() {
    assertThat(new Frustum(2, 2, 3).volumeM3()).isCloseTo(3 * Math.PI, within(1e-12));
    assertThat(new Frustum(2, 0, 3).volumeM3()).isCloseTo(Math.PI, within(1e-12));
    // Difference of two cones: widths 4 and 2, so the whole cone is twice as high.
    double cones = Math.PI / 3 * (4 * 2.0 - 1 * 1.0);
    assertThat(new Frustum(4, 2, 1).volumeM3()).isCloseTo(cones, within(1e-12));
  }

  @Property
  void frustumHoldsTheVolumeItWasMadeOf(
      @ForAll @DoubleRange(min = 0.01, max = 5000) double litres,
      @ForAll @DoubleRange(min = 0.3, max = 2) double ratio,
      @ForAll @DoubleRange(min = 0.1, max = 1) double taper) {
    double volume = litres / 1000;
    Frustum frustum = Frustum.of(volume, ratio, taper);
    assertThat(frustum.volumeM3()).isCloseTo(volume, within(1e-12 * volume));
    assertThat(frustum.heightM() / frustum.topM()).isCloseTo(ratio, within(1e-12));
  }
}
