package org.grovewright.model;

import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the water comes from.
 *
 * @param kind sort of supply
 * @param at where it is tapped
 * @param outletHeightM height of the outlet above the ground there, metres
 * @param staticPressurePa gauge pressure with nothing flowing; for a tap or pump
 * @param tankLevelM usual height of the water surface above the outlet, metres; for a tank
 * @param tankVolumeM3 usable volume of the tank, m3; for a tank
 * @param flowTests bucket tests, at least one for a tap or pump
 * @param pipe the pipe between the tested outlet and the start of the watering system, if any
 * @param dailyLimitM3 most water per day, m3, if limited
 * @param allowedHours times of day at which watering is allowed; empty means always
 * @param weeklyLimitM3 most water in any seven days, m3, if limited
 * @param allowedDays days on which watering is allowed
 * @param salinitySPerM electrical conductivity of the water, S/m, if known
 * @param roof the roof that fills the tank, if there is one
 */
public record Supply(
    SupplyKind kind,
    Point at,
    double outletHeightM,
    OptionalDouble staticPressurePa,
    OptionalDouble tankLevelM,
    OptionalDouble tankVolumeM3,
    List<FlowTest> flowTests,
    Optional<SupplyPipe> pipe,
    OptionalDouble dailyLimitM3,
    OptionalDouble weeklyLimitM3,
    List<Hours> allowedHours,
    WateringDays allowedDays,
    OptionalDouble salinitySPerM,
    Optional<Roof> roof) {
  /** Copies the lists. */
  public Supply {
    flowTests = List.copyOf(flowTests);
    allowedHours = List.copyOf(allowedHours);
  }

  /** Sorts of supply. */
  public enum SupplyKind {
    HOUSE_TAP,
    WELL_PUMP,
    GRAVITY_TANK
  }

  /**
   * A bucket test.
   *
   * @param volumeM3 water caught, m3
   * @param seconds time it took
   * @param residualPressurePa gauge pressure at the outlet while it flowed; 0 for an open outlet
   */
  public record FlowTest(double volumeM3, double seconds, double residualPressurePa) {
    /** Flow of the test, m3/s. */
    public double flowM3PerS() {
      return volumeM3 / seconds;
    }
  }

  /**
   * A pipe that the water passes after the tested outlet.
   *
   * @param pipeKey catalogue key of the pipe
   * @param lengthM its length, metres
   */
  public record SupplyPipe(String pipeKey, double lengthM) {}

  /**
   * A roof whose rain runs into the tank.
   *
   * @param areaM2 area of the roof seen from above, m2
   * @param runoff share of its rain that reaches the gutter, if known
   * @param firstFlushM3 dirty first water of each rain that is kept out of the tank, m3
   */
  public record Roof(double areaM2, OptionalDouble runoff, double firstFlushM3) {}

  /**
   * A span of the day; {@code until} before {@code from} runs over midnight.
   *
   * @param from first minute
   * @param until end
   */
  public record Hours(LocalTime from, LocalTime until) {
    /** Length of the span, seconds; a span that ends where it begins is a whole day. */
    public int seconds() {
      int span = until.toSecondOfDay() - from.toSecondOfDay();
      return span <= 0 ? span + 86_400 : span;
    }
  }
}
