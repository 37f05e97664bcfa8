package org.grovewright.storage;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply.Roof;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
import org.grovewright.water.WaterNeeds;
import org.grovewright.water.WeatherGenerator;

/** Makes a {@link TankYears}. */
final class TankStudy {
  private static final long SEED = 1;
  private static final double ONE_IN_TEN = 0.1;
  private static final int DAYS_OF_YEAR = 365;
  private static final double GREATEST_TANK = 100;
  private static final double LEAST_MISSING_M3 = 1e-6;
  private static final String SOURCE =
      "daily balance of the tank: rain in, what is too much out, then the draw; common practice, no"
          + " source";

  private final Grove grove;
  private final TimerDraw timer;
  private final FigureBook book;
  private final RainTank tank;
  private final Input runoff;
  private final boolean drawn;
  private final List<DayWeather> days;
  private final double[] rainM;
  private final int[] yearOf;
  private final int years;

  TankStudy(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      WateringSystem system,
      Programme programme,
      FigureBook book) {
    this.grove = grove;
    this.book = book;
    Roof roof = grove.supply().roof().orElseThrow();
    runoff =
        roof.runoff().isPresent()
            ? new Input("C", roof.runoff().getAsDouble(), Kind.SHARE, "description")
            : catalogue.constant("water.roof-runoff").as("C, assumed");
    tank =
        new RainTank(
            grove.supply().tankVolumeM3().orElseThrow(),
            roof.areaM2(),
            runoff.value(),
            roof.firstFlushM3(),
            (int) Math.max(1, catalogue.constant("water.first-flush-after").value() / 86_400));
    drawn = grove.climate().daily().isEmpty();
    days =
        drawn
            ? WeatherGenerator.days(
                grove.climate(),
                catalogue,
                grove.start().getYear(),
                (int) catalogue.constant("season.weather-years").value(),
                SEED)
            : grove.climate().daily();
    timer = new TimerDraw(grove, catalogue, needs, system, programme, days);
    rainM = days.stream().mapToDouble(day -> day.rainM().orElse(0)).toArray();
    yearOf = wholeYears();
    years = Arrays.stream(yearOf).max().orElse(-1) + 1;
  }

  /** Index of the whole calendar year of each day, or -1 for days of years that are cut off. */
  private int[] wholeYears() {
    int[] found = new int[days.size()];
    Arrays.fill(found, -1);
    int next = 0;
    int from = 0;
    while (from < found.length) {
      LocalDate first = days.get(from).date();
      int until = from;
      while (until < found.length && days.get(until).date().getYear() == first.getYear()) {
        until++;
      }
      if (until - from >= DAYS_OF_YEAR) {
        Arrays.fill(found, from, until, next++);
      }
      from = until;
    }
    return found;
  }

  TankYears make() {
    List<TankYears.OfPlan> ofPlan = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    if (years == 0) {
      findings.add(
          Finding.of(
              "storage.no-whole-year",
              Severity.NOTE,
              "",
              "The daily weather has no whole calendar year, so how the tank fares through the year"
                  + " could not be found."));
      return new TankYears(0, drawn, List.of(), List.of(), OptionalDouble.empty(), findings);
    }
    double[] last = new double[0];
    for (int year = 1; year <= Programme.YEARS; year++) {
      TimerDraw.Draws draws = timer.in(year);
      last = draws.cardM3();
      ofPlan.add(entered(year, draws));
    }
    OptionalDouble enough = enough(last);
    findings.add(remark(ofPlan, enough));
    findings.add(skipping(ofPlan));
    return new TankYears(years, drawn, ofPlan, levels(run(tank, last)), enough, findings);
  }

  /** The days of a tank that has stood for a year before they begin, empty at first. */
  private RainTank.Days run(RainTank some, double[] wanted) {
    int spin = Math.min(DAYS_OF_YEAR, rainM.length);
    double[] before =
        some.through(Arrays.copyOf(rainM, spin), Arrays.copyOf(wanted, spin), 0).level();
    return some.through(rainM, wanted, before[spin - 1]);
  }

  private double dryShare(RainTank.Days run) {
    boolean[] dry = new boolean[years];
    for (int i = 0; i < yearOf.length; i++) {
      if (yearOf[i] >= 0 && run.missing()[i] > LEAST_MISSING_M3) {
        dry[yearOf[i]] = true;
      }
    }
    int count = 0;
    for (boolean one : dry) {
      count += one ? 1 : 0;
    }
    return count / (double) years;
  }

  private double perYear(double[] values) {
    double sum = 0;
    for (int i = 0; i < yearOf.length; i++) {
      sum += yearOf[i] >= 0 ? values[i] : 0;
    }
    return sum / years;
  }

  private TankYears.OfPlan entered(int year, TimerDraw.Draws draws) {
    String id = "storage.year-" + year + ".";
    Input n = new Input("n, years of weather", years, Kind.COUNT, weatherOrigin());
    Input roof = new Input("A", tank.roofM2(), Kind.AREA, "description");
    Input flush = new Input("F", tank.firstFlushM3(), Kind.WATER_VOLUME, "description");
    RainTank.Days run = run(tank, draws.cardM3());
    return new TankYears.OfPlan(
        year,
        book.enter(
            id + "caught",
            "water the roof brings to the tank in a year",
            perYear(run.caught()),
            Kind.WATER_VOLUME,
            Working.of(
                "A C P - F for each rain P, mean of the years", SOURCE, roof, runoff, flush, n)),
        use(id, "", draws.cardM3(), draws.cardStress(), run, n),
        use(
            id + "skipping.",
            " if waterings are skipped or shortened by the soil",
            draws.advisedM3(),
            draws.advisedStress(),
            run(tank, draws.advisedM3()),
            n));
  }

  /** The figures of one way to draw; the label's end says which. */
  private TankYears.Use use(
      String id, String when, double[] wanted, long stress, RainTank.Days run, Input years) {
    double[] dry =
        Arrays.stream(run.missing()).map(missing -> missing > LEAST_MISSING_M3 ? 1 : 0).toArray();
    Input volume = new Input("tank", tank.volumeM3(), Kind.WATER_VOLUME, "description");
    return new TankYears.Use(
        book.enter(
            id + "dry-chance",
            "chance that the tank runs dry in a year" + when,
            dryShare(run),
            Kind.SHARE,
            Working.of(
                "years with a day on which water was missing, over n", SOURCE, years, volume)),
        book.enter(
            id + "dry-days",
            "days a year on which the tank lacks water" + when,
            perYear(dry),
            Kind.NUMBER,
            Working.of("days on which water was missing, over n", SOURCE, years, volume)),
        volume(id + "wanted", "water the timer would draw in a year" + when, wanted, years),
        volume(
            id + "drawn", "water the tank can give in a year" + when, run.drawn(), years, volume),
        volume(
            id + "spilled", "water that runs over in a year" + when, run.spilled(), years, volume),
        book.enter(
            id + "suffering",
            "days a year on which a plant suffers, those of all plants added up" + when,
            stress * (double) DAYS_OF_YEAR / days.size(),
            Kind.NUMBER,
            Working.of("days of all plants, over the days of weather, times 365", SOURCE, years)));
  }

  private Figure volume(String id, String label, double[] values, Input... inputs) {
    return book.enter(
        id,
        label,
        perYear(values),
        Kind.WATER_VOLUME,
        Working.of("sum over the days, mean of the years", SOURCE, inputs));
  }

  private String weatherOrigin() {
    return drawn ? "assumed: drawn from the monthly normals" : "description";
  }

  private List<TankYears.Level> levels(RainTank.Days run) {
    List<List<Double>> byDay = new ArrayList<>();
    for (int day = 0; day < DAYS_OF_YEAR; day++) {
      byDay.add(new ArrayList<>());
    }
    for (int i = 0; i < yearOf.length; i++) {
      int day = days.get(i).date().getDayOfYear();
      if (yearOf[i] >= 0 && day <= DAYS_OF_YEAR) {
        byDay.get(day - 1).add(run.level()[i]);
      }
    }
    List<TankYears.Level> levels = new ArrayList<>();
    for (int day = 0; day < DAYS_OF_YEAR; day++) {
      double[] sorted = byDay.get(day).stream().mapToDouble(Double::doubleValue).sorted().toArray();
      double mean = Arrays.stream(sorted).average().orElse(0);
      int rank = (int) Math.floor(ONE_IN_TEN * sorted.length);
      levels.add(new TankYears.Level(day + 1, mean, sorted[rank], sorted[0]));
    }
    return levels;
  }

  /** The smallest tank that runs dry in no more than one year of ten, to the next full tenth. */
  private OptionalDouble enough(double[] wanted) {
    double most = GREATEST_TANK * tank.volumeM3();
    if (dryShare(run(tank.holding(most), wanted)) > ONE_IN_TEN) {
      return OptionalDouble.empty();
    }
    double least = 0;
    while (most - least > 0.01 * most) {
      double middle = (least + most) / 2;
      if (dryShare(run(tank.holding(middle), wanted)) > ONE_IN_TEN) {
        least = middle;
      } else {
        most = middle;
      }
    }
    return OptionalDouble.of(most);
  }

  /** What it brings to skip or shorten waterings after rain, in the year in which most is drawn. */
  private static Finding skipping(List<TankYears.OfPlan> ofPlan) {
    TankYears.OfPlan most = ofPlan.get(0);
    for (TankYears.OfPlan year : ofPlan) {
      most = year.wantedM3().value() > most.wantedM3().value() ? year : most;
    }
    TankYears.Use advised = most.skipping();
    return Finding.of(
        "storage.skipping",
        Severity.NOTE,
        "",
        "The timer has no rain sensor and is counted as running its whole card after rain too. If"
            + " you skip or shorten waterings while the soil is moist, the plants of year {0} want"
            + " {1} a year instead of {2}, and the tank runs dry in {3} of the years instead of"
            + " {4}. Added up over all plants, they suffer on {5} days a year instead of {6}.",
        new Quantity(most.year(), Kind.COUNT),
        new Quantity(advised.wantedM3().value(), Kind.WATER_VOLUME),
        new Quantity(most.wantedM3().value(), Kind.WATER_VOLUME),
        new Quantity(advised.dryChance().value(), Kind.SHARE),
        new Quantity(most.dryChance().value(), Kind.SHARE),
        new Quantity(Math.rint(advised.sufferingDays().value()), Kind.COUNT),
        new Quantity(Math.rint(most.card().sufferingDays().value()), Kind.COUNT));
  }

  private Finding remark(List<TankYears.OfPlan> ofPlan, OptionalDouble enough) {
    TankYears.OfPlan worst = ofPlan.get(ofPlan.size() - 1);
    for (TankYears.OfPlan year : ofPlan) {
      worst = year.dryChance().value() > worst.dryChance().value() ? year : worst;
    }
    Quantity chance = new Quantity(worst.dryChance().value(), Kind.SHARE);
    Quantity number = new Quantity(worst.year(), Kind.COUNT);
    if (worst.dryChance().value() <= ONE_IN_TEN) {
      return Finding.of(
          "storage.enough",
          Severity.NOTE,
          "",
          "The tank under its roof runs dry in {0} of the years with the plants of year {1}, which is"
              + " no more than one year of ten.",
          chance,
          number);
    }
    Quantity dryDays = new Quantity(worst.dryDays().value() * 86_400, Kind.DAYS);
    if (enough.isPresent()) {
      return Finding.of(
          "storage.runs-dry",
          Severity.SHORTFALL,
          "",
          "With the plants of year {1} the tank runs dry in {0} of the years, and lacks water for {2}"
              + " of a mean year. Under this roof {3} of tank would keep that to one year of ten"
              + " by year "
              + ofPlan.size()
              + "; or find a second source for the dry months.",
          chance,
          number,
          dryDays,
          new Quantity(enough.getAsDouble(), Kind.WATER_VOLUME));
    }
    return Finding.of(
        "storage.roof-too-small",
        Severity.SHORTFALL,
        "",
        "With the plants of year {1} the tank runs dry in {0} of the years, and no tank would help:"
            + " the roof brings {2} a year and the timer would draw {3}. Catch more roof, or find a"
            + " second source.",
        chance,
        number,
        new Quantity(worst.caughtM3().value(), Kind.WATER_VOLUME),
        new Quantity(worst.wantedM3().value(), Kind.WATER_VOLUME));
  }
}
