package org.grovewright.web.api;

import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.layout.LayoutCheck;
import org.grovewright.layout.NoonShade;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.water.PlantNeed;
import org.grovewright.water.WaterNeeds;
import org.grovewright.web.api.Scene.ConflictView;
import org.grovewright.web.views.Voice;

/**
 * The figures to see while something is dragged.
 *
 * @param conflicts what is too near to each other
 * @param shade what stands between a plant and the noon sun in midwinter ten years into the plan
 * @param water the grove's need
 * @param plants where the plants that were moved come to stand, metres
 * @param cost what is to be bought would cost; missing until the plan of the site is made
 * @param tookMillis time it took, milliseconds
 */
public record QuickFigures(
    List<ConflictView> conflicts,
    List<ShadeView> shade,
    WaterView water,
    List<PlaceView> plants,
    CostView cost,
    double tookMillis) {
  private static final int SHADE_YEARS = 10;
  private static final double WEEK = 7 * 86_400;

  /** A plant in another thing's shade; share of its height, 0 to 1. */
  public record ShadeView(String plant, String by, double share) {}

  /**
   * Need of the whole grove in the month of greatest need of the third year.
   *
   * @param litresPerWeekPeak litres a week
   * @param text the same in the reader's units
   */
  public record WaterView(double litresPerWeekPeak, String text) {}

  /** A place, metres. */
  public record PlaceView(String id, double x, double y) {}

  /**
   * Cost of all that is to be bought, in the currency of the plan.
   *
   * @param total the cost after the change
   * @param change what the change adds
   */
  public record CostView(double total, double change, String totalText, String changeText) {
    static CostView of(double total, Plan before, ReaderUnits units) {
      double change = total - before.shopping().total();
      return new CostView(total, change, money(total, units), money(change, units));
    }

    private static String money(double amount, ReaderUnits units) {
      return ReaderUnits.plainSpaces(units.text(amount, Kind.MONEY));
    }
  }

  /**
   * Figures of a grove.
   *
   * @param start when the work on them began, nanoseconds
   */
  static QuickFigures of(
      Grove grove,
      Catalogue catalogue,
      double needM3PerS,
      Voice voice,
      List<PlaceView> moved,
      CostView cost,
      long start) {
    List<ConflictView> conflicts =
        LayoutCheck.conflicts(grove, catalogue).stream()
            .map(conflict -> SceneMaker.conflict(conflict, voice))
            .toList();
    List<ShadeView> shade =
        NoonShade.of(
                grove,
                catalogue,
                NoonShade.winterDeclinationDeg(grove.site().latitudeDeg()),
                SHADE_YEARS)
            .stream()
            .map(one -> new ShadeView(one.plantId(), one.byId(), one.share()))
            .toList();
    WaterView water =
        new WaterView(
            needM3PerS * WEEK * 1000,
            ReaderUnits.plainSpaces(voice.units().text(needM3PerS * WEEK, Kind.WATER_VOLUME)));
    return new QuickFigures(
        conflicts, shade, water, moved, cost, (System.nanoTime() - start) / 1e6);
  }

  /** Need of a grove in the month of the third year in which it needs most, m3/s. */
  static double need(Grove grove, Catalogue catalogue) {
    return peak(WaterNeeds.of(grove, catalogue, new FigureBook()));
  }

  private static double peak(WaterNeeds needs) {
    double peak = 0;
    for (int month = 1; month <= 12; month++) {
      double sum = 0;
      for (PlantNeed plant : needs.plants()) {
        sum += plant.at(WaterNeeds.YEARS, month).need().value();
      }
      peak = Math.max(peak, sum);
    }
    return peak;
  }
}
