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
import org.grovewright.irrigation.Rhythm;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Grove;
import org.grovewright.model.Supply.Roof;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;
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
  private final WateringSystem system;
  private final Programme programme;
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
      WateringSystem system,
      Programme programme,
      FigureBook book) {
    this.grove = grove;
    this.system = system;
    this.programme = programme;
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
    for (int year = 1; year <= Programme.YEARS; year++) {
      double[] wanted = wanted(year);
      ofPlan.add(entered(year, wanted, run(tank, wanted)));
    }
    double[] last = wanted(Programme.YEARS);
    OptionalDouble enough = enough(last);
    findings.add(remark(ofPlan, enough));
    return new TankYears(years, drawn, ofPlan, levels(run(tank, last)), enough, findings);
  }

  /** What the timer draws by day in a year of the plan, m3. */
  private double[] wanted(int year) {
    TimerSetting[][] settings = new TimerSetting[system.zones().size()][13];
    for (TimerSetting setting : programme.settings()) {
      for (int z = 0; z < settings.length; z++) {
        if (setting.year() == year && setting.zone().equals(system.zones().get(z).design().id())) {
          settings[z][setting.month()] = setting;
        }
      }
    }
    double[] wanted = new double[days.size()];
    for (int z = 0; z < settings.length; z++) {
      ZoneResult zone = system.zonesIn(year).get(z);
      int since = Integer.MAX_VALUE / 2;
      for (int i = 0; i < wanted.length; i++) {
        TimerSetting setting = settings[z][days.get(i).date().getMonthValue()];
        since++;
        Rhythm rhythm = setting.rhythm();
        boolean due =
            rhythm.byCalendar()
                ? rhythm.days().allows(days.get(i).date())
                : since >= rhythm.everyDays();
        if (!setting.off() && due) {
          wanted[i] += setting.minutesPerWatering() * 60.0 * zone.flowM3PerS();
          since = 0;
        }
      }
    }
    return wanted;
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

  private TankYears.OfPlan entered(int year, double[] wanted, RainTank.Days run) {
    String id = "storage.year-" + year + ".";
    double[] dry =
        Arrays.stream(run.missing()).map(missing -> missing > LEAST_MISSING_M3 ? 1 : 0).toArray();
    Input n = new Input("n, years of weather", years, Kind.COUNT, weatherOrigin());
    Input volume = new Input("tank", tank.volumeM3(), Kind.WATER_VOLUME, "description");
    Input roof = new Input("A", tank.roofM2(), Kind.AREA, "description");
    Input flush = new Input("F", tank.firstFlushM3(), Kind.WATER_VOLUME, "description");
    return new TankYears.OfPlan(
        year,
        book.enter(
            id + "dry-chance",
            "chance that the tank runs dry in a year",
            dryShare(run),
            Kind.SHARE,
            Working.of("years with a day on which water was missing, over n", SOURCE, n, volume)),
        book.enter(
            id + "dry-days",
            "days a year on which the tank lacks water",
            perYear(dry),
            Kind.NUMBER,
            Working.of("days on which water was missing, over n", SOURCE, n, volume)),
        volume(id + "wanted", "water the timer would draw in a year", wanted, n),
        volume(id + "drawn", "water the tank can give in a year", run.drawn(), n, volume),
        book.enter(
            id + "caught",
            "water the roof brings to the tank in a year",
            perYear(run.caught()),
            Kind.WATER_VOLUME,
            Working.of(
                "A C P - F for each rain P, mean of the years", SOURCE, roof, runoff, flush, n)),
        volume(id + "spilled", "water that runs over in a year", run.spilled(), n, volume));
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
