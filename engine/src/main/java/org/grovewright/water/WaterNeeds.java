package org.grovewright.water;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.growth.Growth;
import org.grovewright.model.Climate.MonthNormal;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/**
 * What every plant of a grove needs in each month of the first three years.
 *
 * <p>Year 1 is the twelve months from the month of the grove's start, so its January may lie in the
 * calendar year after. A plant that is set later needs nothing before.
 *
 * @param climate reference evapotranspiration of the twelve months
 * @param soil what the native soil holds
 * @param plants the plants in the order of the description
 * @param findings what was assumed
 */
public record WaterNeeds(
    ClimateEt climate, SoilWater soil, List<PlantNeed> plants, List<Finding> findings) {
  /** Years planned for. */
  public static final int YEARS = 3;

  private static final String NEED_FORMULA =
      "q = ET0 (K_cb k A_g + K_e (1 - m) A_e) - P_e A_s, not below 0, where"
          + " k = K_d / K_d of a stand, K_d = min(1, M f, f^(1/(1+h))),"
          + " f = pi D^2 / (4 A_g sin b) with the noon height b of the sun";
  private static final String NEED_SOURCE =
      "FAO-56 (1998) equations 69 and 7-4; density: Allen and Pereira (2009); rain: USDA-SCS,"
          + " National Engineering Handbook 623.02 (1993)";
  private static final String INTERVAL_FORMULA =
      "t = p (FC - WP) Z A_s / u, at most the longest interval of the plant's age";
  private static final String INTERVAL_SOURCE = "FAO-56 (1998) equations 82 and 83";

  /** Copies the lists. */
  public WaterNeeds {
    plants = List.copyOf(plants);
    findings = List.copyOf(findings);
  }

  /**
   * The needs of one plant.
   *
   * @throws IllegalArgumentException if the grove has no such plant
   */
  public PlantNeed plant(String id) {
    for (PlantNeed plant : plants) {
      if (plant.plantId().equals(id)) {
        return plant;
      }
    }
    throw new IllegalArgumentException("no plant " + id);
  }

  /** Id of the figure of a plant's need in a month. */
  public static String needId(String plantId, int year, int month) {
    return monthId("water.need.", FigureBook.slug(plantId), year, month);
  }

  private static String monthId(String prefix, String slug, int year, int month) {
    return prefix + slug + ".year-" + year + (month < 10 ? ".month-0" : ".month-") + month;
  }

  /**
   * Finds the needs and enters their figures: {@code water.et0.month-MM}, {@code
   * water.need.PLANT.year-Y.month-MM}, {@code water.interval.PLANT.year-Y.month-MM} and {@code
   * water.mature-need.PLANT}.
   *
   * @throws IllegalArgumentException if a plant's species or the soil's texture class is not in the
   *     catalogue, or the site lies nowhere
   */
  public static WaterNeeds of(Grove grove, Catalogue catalogue, FigureBook book) {
    ClimateEt climate = ClimateEt.of(grove.site(), grove.climate(), catalogue);
    SoilWater soil = SoilWater.of(grove.soil(), catalogue);
    List<Figure> et0 = enterEt0(climate, book);
    NeedSettings settings = settingsOf(grove, catalogue);
    Map<String, KcCurve> curves = new HashMap<>();
    List<PlantNeed> plants = new ArrayList<>(grove.plantings().size());
    for (Planting planting : grove.plantings()) {
      Species species = speciesOf(planting, catalogue);
      KcCurve curve =
          curves.computeIfAbsent(
              species.key(), key -> KcCurve.of(species, grove.site().southern()));
      Growth growth = Growth.of(planting, species, grove.start(), catalogue.constants());
      plants.add(
          new PlantMonths(
                  grove,
                  climate,
                  soil,
                  settings,
                  et0,
                  species,
                  curve,
                  growth,
                  Leaching.of(species, grove.supply().salinitySPerM().orElse(0), catalogue))
              .enter(planting, book));
    }
    List<Finding> findings = new ArrayList<>(EtFindings.of(grove.climate(), climate, catalogue));
    findings.addAll(Leaching.findings(grove, catalogue));
    return new WaterNeeds(climate, soil, plants, findings);
  }

  static Species speciesOf(Planting planting, Catalogue catalogue) {
    Species species = catalogue.species().get(planting.speciesKey());
    if (species == null) {
      throw new IllegalArgumentException(
          "plant "
              + planting.id()
              + " has the species "
              + planting.speciesKey()
              + ", which is not in the catalogue");
    }
    return species;
  }

  static NeedSettings settingsOf(Grove grove, Catalogue catalogue) {
    Optional<String> chosen = grove.preferences().ground().mulchKey();
    String key = chosen.orElse("mulch.wood-chips");
    Mulch mulch = catalogue.mulches().get(key);
    if (mulch == null) {
      throw new IllegalArgumentException("the mulch " + key + " is not in the catalogue");
    }
    return NeedSettings.of(catalogue, mulch, chosen.isPresent());
  }

  /** The calendar year in which a month of a year of the plan lies. */
  public static int calendarYear(LocalDate start, int year, int month) {
    return start.getYear() + year - (month < start.getMonthValue() ? 0 : 1);
  }

  private static List<Figure> enterEt0(ClimateEt climate, FigureBook book) {
    List<Figure> figures = new ArrayList<>(12);
    for (int month = 1; month <= 12; month++) {
      ReferenceEt et = climate.month(month);
      figures.add(
          book.enter(
              String.format(Locale.ROOT, "water.et0.month-%02d", month),
              "reference evapotranspiration",
              et.et0MPerS(),
              Kind.WATER_DEPTH_RATE,
              working(et)));
    }
    return figures;
  }

  private static Working working(ReferenceEt et) {
    if (et.formula() == ReferenceEt.Formula.HARGREAVES_SAMANI) {
      return Working.of(
          "ET0 = 0.0023 (T + 17.8) (Tmax - Tmin)^0.5 0.408 R_a, mm/day",
          "FAO-56 (1998) equation 52",
          computed("T", et.tmeanC(), Kind.TEMPERATURE, "description"),
          computed("R_a, MJ/m2/day", et.sun().raMjPerM2Day(), Kind.NUMBER, "FAO-56 equation 21"));
    }
    return Working.of(
        "ET0 = (0.408 D (R_n - G) + g 900 u2 (e_s - e_a) / (T + 273)) / (D + g (1 + 0.34 u2)),"
            + " mm/day",
        "FAO-56 (1998) equation 6",
        computed("D, kPa/C", et.slopeKPaPerC(), Kind.NUMBER, "FAO-56 equation 13"),
        computed("R_n, MJ/m2/day", et.rnMj(), Kind.NUMBER, "FAO-56 equation 40"),
        computed("G, MJ/m2/day", et.gMj(), Kind.NUMBER, "FAO-56 equation 43"),
        computed("g, kPa/C", et.gammaKPaPerC(), Kind.NUMBER, "FAO-56 equation 8"),
        computed("u2", et.u2MPerS(), Kind.WIND_SPEED, originOf(et.wind())),
        computed("e_s, kPa", et.esKPa(), Kind.NUMBER, "FAO-56 equation 12"),
        computed("e_a, kPa", et.eaKPa(), Kind.NUMBER, originOf(et.moisture())),
        computed("T", et.tmeanC(), Kind.TEMPERATURE, "description"));
  }

  private static String originOf(ReferenceEt.WindFrom wind) {
    return wind == ReferenceEt.WindFrom.MEASURED
        ? "description, at 2 m by FAO-56 equation 47"
        : "assumed: light wind";
  }

  private static String originOf(ReferenceEt.MoistureFrom moisture) {
    return switch (moisture) {
      case DEW_POINT -> "FAO-56 equation 14";
      case RELATIVE_EXTREMES -> "FAO-56 equation 17";
      case RELATIVE_MAXIMUM -> "FAO-56 equation 18";
      case RELATIVE_MEAN -> "FAO-56 equation 19";
      case MINIMUM_TEMPERATURE -> "assumed: dew point from the minimum temperature";
    };
  }

  private static Input computed(String symbol, double value, Kind kind, String origin) {
    return new Input(symbol, value, kind, origin);
  }

  /** The months of one plant. */
  private record PlantMonths(
      Grove grove,
      ClimateEt climate,
      SoilWater soil,
      NeedSettings settings,
      List<Figure> et0,
      Species species,
      KcCurve curve,
      Growth growth,
      Leaching leaching) {

    PlantNeed enter(Planting planting, FigureBook book) {
      String slug = FigureBook.slug(planting.id());
      String speciesOrigin = "catalogue: species, " + species.key();
      List<MonthNeed> months = new ArrayList<>(YEARS * 12);
      LocalDate start = grove.start();
      for (int year = 1; year <= YEARS; year++) {
        for (int month = 1; month <= 12; month++) {
          LocalDate middle = LocalDate.of(calendarYear(start, year, month), month, 15);
          double years = growth.yearsAt(middle);
          NeedOfPlant found = find(month, years);
          LocalDate lastDay = middle.withDayOfMonth(middle.lengthOfMonth());
          boolean planted = !planting.plantedOn().isAfter(lastDay);
          months.add(entered(found, planted, year, month, years, slug, speciesOrigin, book));
        }
      }
      return new PlantNeed(planting.id(), months, enterMature(slug, speciesOrigin, book));
    }

    private NeedOfPlant find(int month, double years) {
      MonthNormal normal = grove.climate().normals().get(month - 1);
      ReferenceEt et = climate.month(month);
      double shift =
          KcCurve.weatherShift(
              et.u2MPerS(), et.relativeMin(normal.tmaxC()), species.matureHeightM());
      return new NeedOfPlant(
          growth,
          species,
          curve,
          month,
          years,
          et,
          shift,
          normal.rainM().orElse(0),
          soil,
          settings,
          leaching);
    }

    private MonthNeed entered(
        NeedOfPlant found,
        boolean planted,
        int year,
        int month,
        double years,
        String slug,
        String speciesOrigin,
        FigureBook book) {
      Figure need =
          book.enter(
              monthId("water.need.", slug, year, month),
              "water need of the plant",
              planted ? found.needM3PerS() : 0,
              Kind.DAILY_WATER,
              planted
                  ? needWorking(found, month, speciesOrigin)
                  : Working.of("nothing before the plant is set", Working.COMMON_PRACTICE));
      Figure interval =
          book.enter(
              monthId("water.interval.", slug, year, month),
              "longest time between waterings",
              found.intervalS,
              Kind.DAYS,
              intervalWorking(found, speciesOrigin));
      return new MonthNeed(
          year,
          month,
          years,
          planted ? found.plant.spreadM() : 0,
          planted ? found.transpirationM3PerS : 0,
          planted ? found.evaporationM3PerS : 0,
          planted ? found.rainM3PerS() : 0,
          found.storeM3,
          found.totalM3,
          need,
          interval);
    }

    private Figure enterMature(String slug, String speciesOrigin, FigureBook book) {
      double grown = Math.max(species.yearsToMature(), growth.yearsAt(grove.start()));
      NeedOfPlant peak = find(1, grown);
      int peakMonth = 1;
      for (int month = 2; month <= 12; month++) {
        NeedOfPlant found = find(month, grown);
        if (found.needM3PerS() > peak.needM3PerS()) {
          peak = found;
          peakMonth = month;
        }
      }
      return book.enter(
          "water.mature-need." + slug,
          "greatest monthly need of the plant when full-grown",
          peak.needM3PerS(),
          Kind.DAILY_WATER,
          needWorking(peak, peakMonth, speciesOrigin));
    }

    private Working needWorking(NeedOfPlant found, int month, String speciesOrigin) {
      List<Input> inputs =
          new ArrayList<>(
              List.of(
                  Input.from("ET0", et0.get(month - 1)),
                  computed("K_cb", found.basal, Kind.NUMBER, speciesOrigin),
                  computed(
                      "k", found.plant.densityRatio(), Kind.NUMBER, "Allen and Pereira (2009)"),
                  settings.canopyMultiplier().as("M"),
                  computed("D", found.plant.spreadM(), Kind.LENGTH, speciesOrigin),
                  computed("h", found.plant.heightM(), Kind.LENGTH, speciesOrigin),
                  computed("A_g", found.plant.groundM2(), Kind.AREA, speciesOrigin),
                  computed("K_e", found.evaporationCoefficient, Kind.NUMBER, "FAO-56 equation 7-4"),
                  computed("m", settings.mulchReduction(), Kind.SHARE, settings.mulchOrigin()),
                  computed(
                      "A_e",
                      found.plant.exposedM2(),
                      Kind.AREA,
                      "wetted soil out of the crown's shade"),
                  computed(
                      "P_e", found.rainMPerS, Kind.WATER_DEPTH_RATE, "USDA-SCS effective rain"),
                  computed(
                      "A_s",
                      found.plant.soilM2(),
                      Kind.AREA,
                      "soil within the reach of the roots")));
      inputs.addAll(leaching.inputs());
      boolean salty = leaching.share() > 0;
      return new Working(
          salty ? NEED_FORMULA + ", over 1 - L" : NEED_FORMULA,
          inputs,
          salty ? NEED_SOURCE + "; " + Leaching.SOURCE : NEED_SOURCE);
    }

    private Working intervalWorking(NeedOfPlant found, String speciesOrigin) {
      return Working.of(
          INTERVAL_FORMULA,
          INTERVAL_SOURCE,
          computed("p", found.depletion, Kind.SHARE, speciesOrigin),
          computed("FC", soil.fieldCapacity(), Kind.SHARE, soil.origin()),
          computed("WP", soil.wiltingPoint(), Kind.SHARE, soil.origin()),
          computed("Z", found.plant.rootDepthM(), Kind.LENGTH, speciesOrigin),
          computed("A_s", found.plant.soilM2(), Kind.AREA, "soil within the reach of the roots"),
          computed("u", found.useM3PerS(), Kind.DAILY_WATER, "transpiration and evaporation"));
    }
  }
}
