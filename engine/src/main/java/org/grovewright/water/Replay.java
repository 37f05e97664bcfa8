package org.grovewright.water;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/**
 * What a way of watering would have done to each plant in every year of a daily weather series, the
 * plant being as large as in one year of the plan.
 *
 * @param planYear year of the plan whose plants and watering were taken, from 1
 * @param plants the plants in the order of the description
 */
public record Replay(int planYear, List<OfPlant> plants) {
  private static final double ONE_IN_TEN = 0.1;
  private static final int LEAST_DAYS = 365;
  private static final String SOURCE =
      "daily dual crop coefficient balance, FAO-56 (1998) chapters 7 and 8";

  /** Copies the plants. */
  public Replay {
    plants = List.copyOf(plants);
  }

  /** A way of watering. */
  @FunctionalInterface
  public interface Programme {
    /** Water brought to a plant on each day of the series, m3. */
    double[] days(Planting planting, DailyClimate weather);
  }

  /**
   * One calendar year of one plant.
   *
   * @param year the calendar year
   * @param stressedDays days on which the plant could not take up what it wanted
   * @param shortfall share of what it wanted that it did not get
   * @param irrigationM3 water brought, m3
   * @param lostM3 water, rain included, that ran through below the roots, m3
   */
  public record Year(
      int year, int stressedDays, double shortfall, double irrigationM3, double lostM3) {}

  /**
   * The years of one plant.
   *
   * @param plantId the plant
   * @param years whole calendar years in order
   * @param worst the year with the most stressed days, the first of several
   * @param meanStressedDays stressed days in a mean year
   * @param oneInTenStressedDays stressed days reached or passed in one year of ten
   */
  public record OfPlant(
      String plantId,
      List<Year> years,
      Year worst,
      Figure meanStressedDays,
      Figure oneInTenStressedDays) {
    /** Copies the years. */
    public OfPlant {
      years = List.copyOf(years);
    }
  }

  /**
   * Runs all plants through the series and enters the figures {@code
   * water.replay.PLANT.mean-stressed-days}, {@code .one-in-ten-stressed-days} and {@code
   * .worst-stressed-days}.
   *
   * @param planYear year of the plan whose plants are taken, from 1
   * @throws IllegalArgumentException if the series has no whole calendar year
   */
  public static Replay of(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      DailyClimate weather,
      int planYear,
      Programme programme,
      FigureBook book) {
    List<OfPlant> plants = new ArrayList<>(grove.plantings().size());
    for (Planting planting : grove.plantings()) {
      PlantSeries series = PlantSeries.inYear(grove, planting, planYear, needs, weather, catalogue);
      YearSums sums = new YearSums(weather, series);
      BalanceRun.run(
          weather, series, BalanceRun.Watering.GIVEN, programme.days(planting, weather), sums);
      plants.add(entered(planting.id(), sums.wholeYears(), book));
    }
    return new Replay(planYear, plants);
  }

  private static OfPlant entered(String plantId, List<Year> years, FigureBook book) {
    if (years.isEmpty()) {
      throw new IllegalArgumentException("the daily weather has no whole calendar year to replay");
    }
    Year worst = years.get(0);
    double sum = 0;
    for (Year year : years) {
      worst = year.stressedDays() > worst.stressedDays() ? year : worst;
      sum += year.stressedDays();
    }
    String id = "water.replay." + FigureBook.slug(plantId);
    Input count = new Input("n, years of weather", years.size(), Kind.COUNT, "description");
    Figure mean =
        book.enter(
            id + ".mean-stressed-days",
            "days a year on which the plant would have suffered, mean of all years",
            sum / years.size(),
            Kind.NUMBER,
            Working.of("sum of the days with a stress coefficient below 1, over n", SOURCE, count));
    Figure oneInTen =
        book.enter(
            id + ".one-in-ten-stressed-days",
            "days on which the plant would have suffered in one year of ten",
            exceeded(years, ONE_IN_TEN),
            Kind.NUMBER,
            Working.of(
                "value passed with the chance 0.1, chance of rank r being r / (n + 1)",
                SOURCE + "; plotting position of Weibull (1939)",
                count));
    book.enter(
        id + ".worst-stressed-days",
        "days on which the plant would have suffered in the worst year",
        worst.stressedDays(),
        Kind.COUNT,
        Working.of(
            "most days with a stress coefficient below 1 in a year",
            SOURCE,
            count,
            new Input("calendar year", worst.year(), Kind.NUMBER, "description")));
    return new OfPlant(plantId, years, worst, mean, oneInTen);
  }

  /**
   * Stressed days reached or passed with a chance, interpolated between the ranked years; the worst
   * year where the series is too short to say.
   */
  static double exceeded(List<Year> years, double chance) {
    double[] ranked =
        years.stream().mapToDouble(Year::stressedDays).map(days -> -days).sorted().toArray();
    double rank = chance * (ranked.length + 1);
    if (rank <= 1) {
      return -ranked[0];
    }
    int below = Math.min(ranked.length, (int) rank);
    int above = Math.min(ranked.length, below + 1);
    double share = rank - below;
    return -(ranked[below - 1] * (1 - share) + ranked[above - 1] * share);
  }

  /** Sums the days of a run by calendar year. */
  private static final class YearSums implements BalanceRun.Sink {
    private final DailyClimate weather;
    private final PlantSeries plant;
    private final int firstYear;
    private final int[] days;
    private final int[] stressed;
    private final double[] wanted;
    private final double[] got;
    private final double[] brought;
    private final double[] lost;

    YearSums(DailyClimate weather, PlantSeries plant) {
      this.weather = weather;
      this.plant = plant;
      firstYear = weather.date(0).getYear();
      int years = weather.date(weather.days() - 1).getYear() - firstYear + 1;
      days = new int[years];
      stressed = new int[years];
      wanted = new double[years];
      got = new double[years];
      brought = new double[years];
      lost = new double[years];
    }

    @Override
    public void day(int day, double irrigationMm, DualBalance balance) {
      int slot = weather.slot(day);
      int year = weather.month(slot).getYear() - firstYear;
      double soilM2 = plant.soilM2(slot);
      double basal = plant.basal(weather.dayOfYear(day)) * plant.perSoil(slot);
      days[year]++;
      stressed[year] += balance.stress() < 1 && basal > 0 ? 1 : 0;
      wanted[year] += basal * weather.et0Mm(day) * soilM2;
      got[year] += balance.transpirationMm() * soilM2;
      brought[year] += irrigationMm * soilM2 / 1000;
      lost[year] += balance.percolationMm() * soilM2 / 1000;
    }

    List<Year> wholeYears() {
      List<Year> years = new ArrayList<>();
      for (int i = 0; i < days.length; i++) {
        if (days[i] >= LEAST_DAYS) {
          double shortfall = wanted[i] > 0 ? Math.max(0, 1 - got[i] / wanted[i]) : 0;
          years.add(new Year(firstYear + i, stressed[i], shortfall, brought[i], lost[i]));
        }
      }
      return years;
    }
  }
}
