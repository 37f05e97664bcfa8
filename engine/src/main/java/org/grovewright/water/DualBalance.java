package org.grovewright.water;

/**
 * The water in the soil of one plant, moved on day by day with the dual crop coefficient of FAO-56
 * chapters 7 and 8.
 *
 * <p>Two stores are kept as what is missing from them, in mm over the area of the root zone: the
 * surface layer that dries by evaporation, and the root zone that includes it. Rain and irrigation
 * come early in the day. After {@link #day} the terms of that day can be read. An instance is moved
 * on by one thread and allocates nothing.
 *
 * <p>While a plant still lives mostly in the mix of its container, the root zone holds two layers
 * of soil: the ball, and the native soil round and below it ({@link #ball}). Water is brought to
 * where the roots are; what a layer cannot hold goes to the other before it is lost below; each
 * layer has its own stress, weighted by its share of the roots; roots in the moister layer take up
 * more than their share within a limit; and water creeps between the layers by a share of their
 * difference a day. Where both hold the same and all of the difference is evened out, the two are
 * one layer.
 */
public final class DualBalance {
  private static final double DEPLETION_PER_MM = 0.04;

  private final double readilyMm;
  private final double totalMm;
  private final double availableMmPerM;
  private final double tableDepletion;
  private final double depletionPerMm;
  private final double bareShare;

  private double surfaceMissing;
  private double rootMissing;

  private double ballTotal;
  private double nativeShare;
  private double ballRoots;
  private double ballArea;
  private double ballExchange;
  private double ballCompensation;
  private double ballMissing;
  private double uptakeMissing;

  private double surfaceStart;
  private double reduction;
  private double evaporationCoefficient;
  private double evaporation;
  private double surfaceDrainage;
  private double rootStart;
  private double totalAvailable;
  private double readilyAvailable;
  private double stress;
  private double transpiration;
  private double percolation;

  /**
   * A soil with its stores full.
   *
   * @param readilyMm readily evaporable water of the surface layer, mm
   * @param totalMm total evaporable water of the surface layer, mm
   * @param availableMmPerM available water of the soil, mm per metre of depth
   * @param tableDepletion share of the available water used before the plant suffers, at 5 mm/day
   * @param adjusted whether that share follows the day's evapotranspiration (FAO-56 table 22, note
   *     2) or stays as it is
   * @param mulchReduction share by which mulch reduces evaporation
   */
  public DualBalance(
      double readilyMm,
      double totalMm,
      double availableMmPerM,
      double tableDepletion,
      boolean adjusted,
      double mulchReduction) {
    this.readilyMm = readilyMm;
    this.totalMm = totalMm;
    this.availableMmPerM = availableMmPerM;
    this.tableDepletion = tableDepletion;
    this.depletionPerMm = adjusted ? DEPLETION_PER_MM : 0;
    this.bareShare = 1 - mulchReduction;
  }

  /**
   * Sets what is missing from the stores, mm.
   *
   * @param surfaceMm from the surface layer
   * @param rootMm from the root zone
   */
  public void start(double surfaceMm, double rootMm) {
    surfaceMissing = surfaceMm;
    rootMissing = rootMm;
    uptakeMissing = rootMm;
    ballTotal = 0;
    ballMissing = 0;
  }

  /** Takes over the stores of another balance of the same soil. */
  void takeOver(DualBalance other) {
    surfaceMissing = other.surfaceMissing;
    rootMissing = other.rootMissing;
    uptakeMissing = other.uptakeMissing;
    ballTotal = other.ballTotal;
    nativeShare = other.nativeShare;
    ballRoots = other.ballRoots;
    ballArea = other.ballArea;
    ballExchange = other.ballExchange;
    ballCompensation = other.ballCompensation;
    ballMissing = other.ballMissing;
  }

  /**
   * Says that part of the root zone of the days to come is a ball of another mix. What was missing
   * from the ball before stays missing, as a volume.
   *
   * @param totalMm available water of the full ball, mm over the root zone; 0 for no ball
   * @param nativeVolume share of the root zone that is native soil
   * @param roots share of the roots that are in the ball
   * @param area share of the rain that falls on it
   * @param exchange share of the difference between the layers that is evened out in a day
   * @param compensation what roots in the moister layer take up beyond their own share, over that
   *     share
   */
  public void ball(
      double totalMm,
      double nativeVolume,
      double roots,
      double area,
      double exchange,
      double compensation) {
    if (ballTotal > 0) {
      ballMissing = lesser(rootMissing, ballMissing * totalMm / ballTotal);
    } else {
      ballMissing = 0;
    }
    ballTotal = totalMm;
    nativeShare = nativeVolume;
    ballRoots = roots;
    ballArea = area;
    ballExchange = exchange;
    ballCompensation = compensation;
  }

  /**
   * Moves on by one day.
   *
   * @param et0 reference evapotranspiration, mm
   * @param rain rain less runoff, mm
   * @param irrigation irrigation as a depth over the root zone, mm
   * @param basal basal crop coefficient over the area of the root zone
   * @param shading basal crop coefficient of the crown above that area, which takes energy from
   *     evaporation; the same as {@code basal} where crown and roots cover the same ground
   * @param greatest upper limit of the crop coefficient, FAO-56 equation 72
   * @param wetted share of the area that the last wetting reached
   * @param exposed share of the area that is both wetted and not shaded
   * @param rootDepthM depth of the root zone, metres; soil that roots reach anew is taken to be at
   *     field capacity
   */
  public void day(
      double et0,
      double rain,
      double irrigation,
      double basal,
      double shading,
      double greatest,
      double wetted,
      double exposed,
      double rootDepthM) {
    double concentrated = rain + irrigation / wetted;
    double drained = greater(0, concentrated - surfaceMissing);
    double start = greater(0, surfaceMissing - concentrated);
    double kr = start <= readilyMm ? 1 : greater(0, (totalMm - start) / (totalMm - readilyMm));
    double ke = bareShare * lesser(greater(0, kr * (greatest - shading)), exposed * greatest);
    double evaporated = lesser(ke * et0, (totalMm - start) * exposed);

    double taw = availableMmPerM * rootDepthM;
    if (ballTotal > 0) {
      taw = ballTotal + nativeShare * taw;
    }
    // The table's share is for evapotranspiration spread over the ground; what roots narrower than
    // their crown draw from their own soil is counted as far as full cover would use it.
    double demand = lesser(basal, greatest) * et0 + evaporated;
    double share = tableDepletion + depletionPerMm * (5 - demand);
    // FAO-56 keeps the adjusted share within these limits.
    double usable = greater(0.1, lesser(0.8, share));
    double raw = usable * taw;
    double water = rain + irrigation;
    surfaceStart = start;
    surfaceDrainage = drained;
    reduction = kr;
    evaporationCoefficient = ke;
    totalAvailable = taw;
    readilyAvailable = raw;
    rootStart = greater(0, rootMissing - water);
    if (ballTotal > 0) {
      layers(rain, irrigation, basal * et0, evaporated, usable);
    } else {
      double root = rootStart;
      double ks = root <= raw ? 1 : greater(0, (taw - root) / (taw - raw));
      double left = greater(0, taw - rootMissing + water);
      evaporated = lesser(evaporated, left);
      double transpired = lesser(ks * basal * et0, left - evaporated);
      double used = evaporated + transpired;
      double percolated = greater(0, water - used - rootMissing);
      rootMissing = rootMissing - water + used + percolated;
      uptakeMissing = rootMissing;
      evaporation = evaporated;
      stress = ks;
      transpiration = transpired;
      percolation = percolated;
    }
    surfaceMissing = lesser(totalMm, start + evaporation / exposed);
  }

  /** The day of a root zone of two layers; mm over the whole root zone throughout. */
  private void layers(
      double rain, double irrigation, double wanted, double evaporable, double usable) {
    double nativeTotal = totalAvailable - ballTotal;
    double toBall = ballArea * rain + ballRoots * irrigation;
    double ball = ballMissing - toBall;
    double around = rootMissing - ballMissing - (rain + irrigation - toBall);
    if (ball < 0) {
      around += ball;
      ball = 0;
    }
    // Too much in the native soil stays for the day, as in a single layer, and is lost at its end.
    double even = greater(0, ball + around) / totalAvailable * ballTotal;
    double creeps = ballExchange * (even - ball);
    ball += creeps;
    around -= creeps;

    double ksBall = stressOf(ball, ballTotal, usable);
    double ksAround = stressOf(around, nativeTotal, usable);
    double rootsAround = 1 - ballRoots;
    // Written so that two unstressed layers give exactly 1.
    double own = ksAround + ballRoots * (ksBall - ksAround);
    double extraAround =
        lesser(
            ballRoots * greater(0, ksAround - ksBall), rootsAround * ksAround * ballCompensation);
    double extraBall =
        lesser(rootsAround * greater(0, ksBall - ksAround), ballRoots * ksBall * ballCompensation);
    double leftBall = greater(0, ballTotal - ball);
    double leftAround = greater(0, nativeTotal - around);
    double fromBall = lesser(evaporable * ballTotal / totalAvailable, leftBall);
    double fromAround = lesser(evaporable - fromBall, leftAround);
    double upBall = lesser((ballRoots * ksBall + extraBall) * wanted, leftBall - fromBall);
    double upAround =
        lesser((rootsAround * ksAround + extraAround) * wanted, leftAround - fromAround);
    ball += fromBall + upBall;
    around += fromAround + upAround;
    double back = around < 0 ? lesser(ballExchange * ball, -around) : 0;
    ball -= back;
    around += back;
    double percolated = greater(0, -around);
    around += percolated;

    ballMissing = ball;
    rootMissing = ball + around;
    uptakeMissing =
        totalAvailable
            * (around / nativeTotal + ballRoots * (ball / ballTotal - around / nativeTotal));
    evaporation = fromBall + fromAround;
    stress = lesser(1, own + extraAround + extraBall);
    transpiration = upBall + upAround;
    percolation = percolated;
  }

  private static double stressOf(double missing, double total, double usable) {
    double readily = usable * total;
    return missing <= readily ? 1 : greater(0, (total - missing) / (total - readily));
  }

  // Math.max and Math.min mind negative zeros and NaN, which do not occur here, and cost a third of
  // the time of the loop.
  private static double greater(double a, double b) {
    return a > b ? a : b;
  }

  private static double lesser(double a, double b) {
    return a < b ? a : b;
  }

  /** Missing from the surface layer after the day's wetting, mm. */
  public double surfaceStartMm() {
    return surfaceStart;
  }

  /** Missing from the surface layer at the end of the day, mm. */
  public double surfaceMissingMm() {
    return surfaceMissing;
  }

  /** Evaporation reduction coefficient; FAO-56 equation 74. */
  public double reduction() {
    return reduction;
  }

  /** Evaporation coefficient; FAO-56 equation 71 reduced by the mulch. */
  public double evaporationCoefficient() {
    return evaporationCoefficient;
  }

  /** Evaporation over the area of the root zone, mm. */
  public double evaporationMm() {
    return evaporation;
  }

  /** Drainage out of the surface layer where it was wetted, mm; FAO-56 equation 79. */
  public double surfaceDrainageMm() {
    return surfaceDrainage;
  }

  /** Missing from the root zone after the day's wetting, mm. */
  public double rootStartMm() {
    return rootStart;
  }

  /** Missing from the root zone at the end of the day, mm; FAO-56 equation 85. */
  public double rootMissingMm() {
    return rootMissing;
  }

  /** Missing from the root ball at the end of the day, mm over the root zone; 0 without a ball. */
  public double ballMissingMm() {
    return ballMissing;
  }

  /**
   * Missing from the soil as its roots meet it, mm: in a root zone of two layers what would be
   * missing if all of it were as dry as the layers are, weighted by their roots.
   */
  public double uptakeMissingMm() {
    return uptakeMissing;
  }

  /** Total available water, mm; FAO-56 equation 82. */
  public double totalAvailableMm() {
    return totalAvailable;
  }

  /** Readily available water, mm; FAO-56 equation 83. */
  public double readilyAvailableMm() {
    return readilyAvailable;
  }

  /** Water stress coefficient; FAO-56 equation 84. */
  public double stress() {
    return stress;
  }

  /** Transpiration over the area of the root zone, mm. */
  public double transpirationMm() {
    return transpiration;
  }

  /** Percolation below the root zone, mm; FAO-56 equation 88. */
  public double percolationMm() {
    return percolation;
  }
}
