package org.grovewright.water;

/**
 * The soil of one plant along a daily weather series: hands each day's weather, watering and size
 * of the plant to its {@link DualBalance}. One instance is moved on by one thread and allocates
 * nothing.
 */
public final class PlantSoil {
  /** Rain above this wets the whole surface; FAO-56 chapter 7: 3 to 4 mm. */
  private static final double WETTING_RAIN_MM = 3;

  private static final double LIMIT = 1.2;

  private final DailyClimate weather;
  private final PlantSeries plant;
  private final DualBalance balance;
  private int slotBefore = -1;
  private boolean drip;
  private double basal;
  private double rainMm;

  /** The soil with its stores full. */
  public PlantSoil(DailyClimate weather, PlantSeries plant) {
    this.weather = weather;
    this.plant = plant;
    balance = plant.fullSoil();
  }

  /** Fills the stores, as when a plant is watered in. */
  public void fill() {
    balance.start(0, 0);
    slotBefore = -1;
    drip = false;
  }

  /**
   * Takes over what another soil of the same plant holds, to try what would become of it; the
   * weather of the two may differ.
   */
  public void takeOver(PlantSoil other) {
    balance.takeOver(other.balance);
    slotBefore = other.slotBefore;
    drip = other.drip;
  }

  /**
   * Moves on by one day.
   *
   * @param day day of the series, counted from 0
   * @param irrigationMm irrigation as a depth over the root zone, mm
   */
  public void day(int day, double irrigationMm) {
    day(day, weather.slot(day), irrigationMm);
  }

  /**
   * Moves on by one day with the plant as large as in another month.
   *
   * @param day day of the series, counted from 0
   * @param slot month of the series, counted from 0, that gives the plant its size
   * @param irrigationMm irrigation as a depth over the root zone, mm
   */
  public void day(int day, int slot, double irrigationMm) {
    if (slot != slotBefore) {
      plant.layers(slot, balance);
      slotBefore = slot;
    }
    rainMm = weather.rainMm(day) - weather.runoffMm(day);
    if (irrigationMm > 0) {
      drip = true;
    } else if (rainMm > WETTING_RAIN_MM) {
      drip = false;
    }
    double stand = plant.basal(weather.dayOfYear(day));
    basal = stand * plant.perSoil(slot);
    double shading = stand * plant.shade(slot);
    double greatest =
        Math.max(LIMIT + weather.limitShift(day) * plant.heightFactor(slot), shading + 0.05);
    balance.day(
        weather.et0Mm(day),
        rainMm,
        irrigationMm,
        basal,
        shading,
        greatest,
        drip ? plant.wetted(slot) : 1,
        drip ? plant.exposedDrip(slot) : plant.exposedRain(slot),
        plant.rootDepthM(slot));
  }

  /** The day's terms. */
  public DualBalance balance() {
    return balance;
  }

  /** Rain less runoff of the day, mm. */
  public double rainMm() {
    return rainMm;
  }

  /** Basal crop coefficient of the day over the area of the root zone. */
  public double basal() {
    return basal;
  }

  /** Whether the plant could not take up all it wanted on the day. */
  public boolean stressed() {
    return balance.stress() < 1 && basal > 0;
  }
}
