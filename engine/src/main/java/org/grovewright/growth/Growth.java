package org.grovewright.growth;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Planting;

/**
 * Size of one plant by time since planting.
 *
 * <p>Crown spread follows the curve of Gompertz (1825), {@code S(t) = M exp(ln(S0/M) exp(-k t))},
 * from the spread {@code S0} in the container towards the mature spread {@code M}, with {@code k}
 * such that 95 % of {@code M} is reached at the species' years to maturity. That orchard trees keep
 * to such a curve is common practice without a source. Height follows the same progress.
 *
 * <p>What the owner has measured goes before the curve, which is moved in time so that it passes
 * through it. A measured spread moves the crown and the roots, and the height too unless that was
 * measured as well; a measured height without a spread moves them all.
 */
public final class Growth {
  private static final double MATURE_SHARE = 0.95;
  private static final double DAYS_PER_YEAR = 365.25;

  private final Species species;
  private final double startSpreadM;
  private final double startHeightM;
  private final double fullSpreadM;
  private final double fullHeightM;
  private final double rate;
  private final double shiftYears;
  private final double heightShiftYears;
  private final double keptSpreadM;
  private final double keptHeightM;
  private final double ballRadiusM;
  private final double ballDepthM;
  private final double rootRateMPerYear;
  private final LocalDate plantedOn;

  private Growth(Planting planting, Species species, LocalDate asOf, Map<String, Constant> known) {
    this.species = species;
    this.plantedOn = planting.plantedOn();
    // A bare-rooted plant has the top, and spreads the roots, of one from a usual container.
    double container =
        planting.containerM3() > 0
            ? planting.containerM3()
            : value(known, "growth.bare-root-as-container");
    double edge = Math.cbrt(container);
    double mature = species.matureSpreadM();
    OptionalDouble spread = planting.measured().spreadM();
    OptionalDouble height = planting.measured().heightM();
    // A plant that was measured smaller than plants come from such a container came smaller.
    startSpreadM =
        least(
            value(known, "growth.crown-per-container") * edge,
            MATURE_SHARE * mature * 0.9,
            spread.orElse(Double.POSITIVE_INFINITY));
    startHeightM =
        least(
            value(known, "growth.height-per-container") * edge,
            species.matureHeightM(),
            height.orElse(Double.POSITIVE_INFINITY));
    fullSpreadM = Math.max(mature, spread.orElse(0) / MATURE_SHARE);
    fullHeightM = Math.max(species.matureHeightM(), height.orElse(0) / MATURE_SHARE);
    double toGrow = Math.log(startSpreadM / mature);
    rate = Math.log(toGrow / Math.log(MATURE_SHARE)) / species.yearsToMature();
    double then = yearsAt(planting.measured().on().orElse(asOf));
    double bySpread = spread.isPresent() ? curveAge(spread.getAsDouble()) - then : 0;
    double byHeight = height.isPresent() ? heightAge(height.getAsDouble()) - then : bySpread;
    shiftYears = spread.isPresent() ? bySpread : byHeight;
    heightShiftYears = byHeight;
    keptSpreadM = planting.keptSpreadM().orElse(Double.POSITIVE_INFINITY);
    keptHeightM = planting.keptHeightM().orElse(Double.POSITIVE_INFINITY);
    // A nursery container is taken as a cylinder as deep as it is wide.
    ballDepthM = Math.cbrt(4 * container / Math.PI);
    ballRadiusM = ballDepthM / 2;
    rootRateMPerYear = value(known, "growth.root-rate");
  }

  /**
   * The growth of a plant.
   *
   * @param planting the plant
   * @param species its species
   * @param asOf the day for which a measured size holds that has no day of its own
   * @param constants the catalogue's constants, of which those under {@code growth.} are used
   * @throws IllegalStateException if a constant is missing
   */
  public static Growth of(
      Planting planting, Species species, LocalDate asOf, Map<String, Constant> constants) {
    return new Growth(planting, species, asOf, constants);
  }

  private static double value(Map<String, Constant> constants, String key) {
    Constant constant = constants.get(key);
    if (constant == null) {
      throw new IllegalStateException("the catalogue has no constant " + key);
    }
    return constant.value();
  }

  /** Years since planting on a day; 0 before planting. */
  public double yearsAt(LocalDate day) {
    return Math.max(0, ChronoUnit.DAYS.between(plantedOn, day) / DAYS_PER_YEAR);
  }

  /** Crown spread (diameter), metres, so many years after planting. */
  public double spreadM(double years) {
    return Math.min(keptSpreadM, freeSpreadM(years + shiftYears));
  }

  /** Height, metres, so many years after planting. */
  public double heightM(double years) {
    double way = progress(years, heightShiftYears);
    double free = startHeightM + way * (fullHeightM - startHeightM);
    return Math.min(keptHeightM, free);
  }

  /** Area of ground under the crown, m2. */
  public double crownAreaM2(double years) {
    double spread = spreadM(years);
    return Math.PI / 4 * spread * spread;
  }

  /** Depth of the roots that take up water, metres, in soil that sets no limit. */
  public double rootDepthM(double years) {
    double start = Math.min(ballDepthM, species.rootDepthM());
    return start + progress(years, shiftYears) * (species.rootDepthM() - start);
  }

  /**
   * Distance from the stem to which roots reach, metres: from the edge of the ball they spread by
   * the same distance each year until they reach below the drip line of the mature, unpruned crown.
   */
  public double rootRadiusM(double years) {
    double outward = ballRadiusM + rootRateMPerYear * Math.max(0, years + shiftYears);
    return Math.min(Math.max(fullSpreadM / 2, ballRadiusM), outward);
  }

  /**
   * Radius of the root ball, metres; for a bare-rooted plant that to which its roots are spread.
   */
  public double ballRadiusM() {
    return ballRadiusM;
  }

  /** Depth of the root ball, metres; for a bare-rooted plant that to which its roots are spread. */
  public double ballDepthM() {
    return ballDepthM;
  }

  /** The curve of the spread, so many years along it. */
  private double freeSpreadM(double age) {
    double t = Math.max(0, age);
    return fullSpreadM * Math.exp(Math.log(startSpreadM / fullSpreadM) * Math.exp(-rate * t));
  }

  /** Share of the way from planting size to mature size, 0 to 1. */
  private double progress(double years, double shift) {
    double way = (freeSpreadM(years + shift) - startSpreadM) / (fullSpreadM - startSpreadM);
    return Math.max(0, Math.min(1, way));
  }

  private static double least(double a, double b, double c) {
    return Math.min(a, Math.min(b, c));
  }

  /** Where on the curve a plant is that has a height. */
  private double heightAge(double heightM) {
    double way = (heightM - startHeightM) / Math.max(1e-9, fullHeightM - startHeightM);
    return curveAge(startSpreadM + way * (fullSpreadM - startSpreadM));
  }

  /** Where on the curve a plant is that has a spread. */
  private double curveAge(double spreadM) {
    double inside = Math.max(startSpreadM * 1.000001, spreadM);
    double left = Math.log(inside / fullSpreadM) / Math.log(startSpreadM / fullSpreadM);
    return -Math.log(left) / rate;
  }
}
