package org.grovewright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.grovewright.advice.TodayAdvice;
import org.grovewright.advice.TodayAdvice.MeasuredWeather;
import org.grovewright.advice.WaterLog;
import org.grovewright.finding.Finding;
import org.grovewright.formats.weather.ForecastException;
import org.grovewright.formats.weather.ForecastSettings;
import org.grovewright.formats.weather.ForecastSource;
import org.grovewright.formats.weather.HttpForecast;
import org.grovewright.formats.weather.UsualTemperatures;
import org.grovewright.formats.weather.WaterLogCsv;
import org.grovewright.formats.weather.WeatherFileException;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Climate;
import org.grovewright.model.Climate.DayWeather;
import org.grovewright.model.Site;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.TodayPicture;
import org.grovewright.sheets.TodayWords;
import org.grovewright.sheets.Words;
import org.grovewright.sheets.WorkingTree;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says whether to water today. */
@Command(
    name = "today",
    description = {
      "Says of each zone whether to water today and for how many minutes, and which plants to look"
          + " at, and draws the water in the soil over the past weeks.",
      "",
      "The account is made anew each time from the weather until today and your log, so after a"
          + " skipped week or heavy rain it is right again by itself.",
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "The log is a CSV file with a heading and a note a row, such as",
      "  date,zone,minutes,rain_mm",
      "  2027-07-03,zone-1,45,",
      "  2027-07-05/2027-07-11,all,skipped,",
      "  2027-07-12,,,23.5",
      "Instead of minutes it may have litres or gallons, and rain_in instead of rain_mm. Rain of the"
          + " log goes before that of the weather file. Waterings that the log does not tell of are"
          + " taken to have run as the timer card says. Semicolons may stand for the commas, and then"
          + " commas for the decimal points.",
    })
final class TodayCommand implements Callable<Integer> {
  @Mixin private GroveArguments grove;

  @Mixin private WeatherArguments weather;

  @Option(
      names = "--log",
      paramLabel = "LOG.csv",
      description = "What you noted of watering and of your rain gauge.")
  private Path logFile;

  @Option(
      names = "--date",
      paramLabel = "YYYY-MM-DD",
      description = "The day to give advice for; today if not given.")
  private String day;

  @Option(
      names = "--forecast",
      paramLabel = "FORECAST.properties",
      description =
          "Fetch the coming days from the forecast service that this file describes. Without it"
              + " nothing is fetched, and days after today that the weather file has are taken for"
              + " the forecast.")
  private Path forecastFile;

  @Option(
      names = "--picture",
      paramLabel = "FILE.svg",
      description =
          "Where to put the picture; named after the grove file with -today.svg if not" + " given.")
  private Path picture;

  @Option(
      names = "--explain",
      arity = "0..1",
      paramLabel = "FIGURE",
      fallbackValue = "",
      description =
          "Print the working of every number of the advice after it; with a figure's id, such as"
              + " advice.zone.zone-1.wanted, that of this figure and of all it rests on.")
  private String explained;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    LocalDate date = date();
    Plan plan = new PlanSource(grove.catalogue(), err).plan(grove.file());
    TodayAdvice advice;
    FigureBook book = new FigureBook();
    try {
      MeasuredWeather known = known(plan, date, err);
      WaterLog log = logFile == null ? WaterLog.EMPTY : WaterLogCsv.read(logFile, zones(plan));
      advice = TodayAdvice.of(plan, known, log, date, book);
    } catch (WeatherFileException e) {
      throw new BadInputException(e.getMessage());
    } catch (IllegalArgumentException e) {
      throw new BadInputException(
          weather.file().orElse(grove.file()) + ": " + e.getMessage() + ".");
    }
    ReaderUnits units =
        new ReaderUnits(plan.grove().preferences().units(), plan.grove().stock().currency());
    // Found first: a figure that does not exist is refused before anything is said.
    String workings = explained == null ? "" : workings(plan, book.all(), units);
    out.println(new TodayWords(advice, plan.grove(), plan.catalogue()).line());
    out.print(workings);
    for (Finding finding : advice.findings()) {
      err.println("note: " + ReaderUnits.plainSpaces(Words.message(finding, units)));
    }
    write(TodayPicture.svg(advice, plan.grove(), plan.catalogue()));
    return ExitCode.OK;
  }

  private String workings(Plan plan, List<Figure> ofToday, ReaderUnits units) {
    List<Figure> all = new ArrayList<>(ofToday);
    all.addAll(plan.figures().values());
    WorkingTree tree = new WorkingTree(all, units);
    if (explained.isEmpty()) {
      StringBuilder text = new StringBuilder();
      ofToday.forEach(figure -> text.append('\n').append(tree.alone(figure)));
      return text.toString();
    }
    if (all.stream().noneMatch(figure -> figure.id().equals(explained))) {
      throw new BadInputException(
          "--explain: this advice has no figure '"
              + Nearest.shorten(explained)
              + "'. Leave the figure out to see all there are.");
    }
    return "\n" + tree.follow(explained);
  }

  private LocalDate date() {
    if (day == null) {
      return LocalDate.now(java.time.ZoneId.systemDefault());
    }
    try {
      return LocalDate.parse(day);
    } catch (DateTimeParseException e) {
      throw new BadInputException(
          "--date: \"" + day + "\" is not a date of the calendar; write it as 2027-07-31.");
    }
  }

  private static List<String> zones(Plan plan) {
    return plan.watering().zones().stream().map(zone -> zone.design().id()).toList();
  }

  private MeasuredWeather known(Plan plan, LocalDate date, PrintWriter err) {
    Climate climate = weather.into(plan.grove(), err).climate();
    if (climate.daily().isEmpty()) {
      throw new BadInputException(
          "The grove has no daily weather; name a file of it with --weather.");
    }
    List<DayWeather> days = new ArrayList<>(climate.daily());
    if (forecastFile != null) {
      List<DayWeather> coming = coming(plan, err);
      if (!coming.isEmpty()) {
        days.removeIf(known -> !known.date().isBefore(date));
        coming.stream().filter(next -> !next.date().isBefore(date)).forEach(days::add);
      }
    }
    return new MeasuredWeather(days, climate.windHeightM());
  }

  /** The forecast; nothing, with a word on why, where none could be had. */
  private List<DayWeather> coming(Plan plan, PrintWriter err) {
    ForecastSource source = new HttpForecast(ForecastSettings.read(forecastFile, System::getenv));
    Site site = plan.grove().site();
    try {
      List<DayWeather> days = source.days(site.latitudeDeg(), site.longitudeDeg());
      UsualTemperatures.check(forecastFile.toString(), days, plan.grove().climate());
      return days;
    } catch (ForecastException e) {
      err.println(
          "note: " + e.getMessage() + "; the coming days are taken to be as usual, without rain.");
      return List.of();
    }
  }

  private void write(String svg) {
    Path file = picture == null ? named() : picture;
    try {
      Files.writeString(file, svg, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new BadInputException(
          file + ": the picture cannot be written there. " + e.getMessage());
    }
    spec.commandLine().getErr().println("picture: " + file);
  }

  private Path named() {
    String name = grove.file().getFileName().toString();
    int dot = name.lastIndexOf('.');
    return Path.of((dot > 0 ? name.substring(0, dot) : name) + "-today.svg");
  }
}
