package org.grovewright.formats.weather;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.grovewright.water.BalanceRun;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.DualBalance;
import org.grovewright.water.PlantSeries;

/** The daily water balance of a plant with every term, as CSV. */
public final class BalanceCsv implements BalanceRun.Sink {
  private static final String HEADING =
      "date,et0_mm,rain_mm,runoff_mm,irrigation_l,irrigation_mm,soil_m2,root_depth_m,kcb_stand,"
          + "kcb_soil,de_start_mm,kr,ke,evaporation_mm,dpe_mm,de_end_mm,taw_mm,raw_mm,dr_start_mm,ks,"
          + "transpiration_mm,percolation_mm,dr_end_mm,ball_missing_mm\n";

  private final StringBuilder text = new StringBuilder(HEADING);
  private final DailyClimate weather;
  private final PlantSeries plant;

  /** A table to be filled by a run of this plant through this weather. */
  public BalanceCsv(DailyClimate weather, PlantSeries plant) {
    this.weather = weather;
    this.plant = plant;
  }

  @Override
  public void day(int day, double irrigationMm, DualBalance balance) {
    int slot = weather.slot(day);
    double stand = plant.basal(weather.dayOfYear(day));
    text.append(weather.date(day));
    number(weather.et0Mm(day));
    number(weather.rainMm(day));
    number(weather.runoffMm(day));
    number(irrigationMm * plant.soilM2(slot));
    number(irrigationMm);
    number(plant.soilM2(slot));
    number(plant.rootDepthM(slot));
    number(stand);
    number(stand * plant.perSoil(slot));
    number(balance.surfaceStartMm());
    number(balance.reduction());
    number(balance.evaporationCoefficient());
    number(balance.evaporationMm());
    number(balance.surfaceDrainageMm());
    number(balance.surfaceMissingMm());
    number(balance.totalAvailableMm());
    number(balance.readilyAvailableMm());
    number(balance.rootStartMm());
    number(balance.stress());
    number(balance.transpirationMm());
    number(balance.percolationMm());
    number(balance.rootMissingMm());
    number(balance.ballMissingMm());
    text.append('\n');
  }

  private void number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP);
    text.append(',').append(rounded.signum() == 0 ? rounded.abs() : rounded);
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
