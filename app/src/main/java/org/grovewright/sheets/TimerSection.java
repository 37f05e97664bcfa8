package org.grovewright.sheets;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.WateringDays;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.water.WaterNeeds;

/** How long to water: what to set the timer to, and what every plant gets of what it needs. */
final class TimerSection {
  private final Grove grove;
  private final Programme programme;
  private final Workings workings;
  private final ReaderUnits units;

  TimerSection(Grove grove, Programme programme, Workings workings, ReaderUnits units) {
    this.grove = grove;
    this.programme = programme;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    int startMonth = grove.start().getMonthValue();
    blocks.add(
        Block.Paragraph.of(
            "A zone is the set of plants behind one valve. Set each zone's timer from its card on"
                + " the first of the month. Year 1 is the twelve months from "
                + Words.month(startMonth)
                + " "
                + grove.start().getYear()
                + ". "
                + allowed()
                + "When it has rained more than usual, skip a watering; feel the soil a hand"
                + " deep before you do."));
    for (String zone : zones()) {
      blocks.add(new Block.Heading(Words.capital(Words.zone(zone))));
      for (int year = 1; year <= Programme.YEARS; year++) {
        blocks.add(
            new Block.Fold("Timer card, year " + year, year == 1, List.of(card(zone, year))));
      }
      blocks.add(
          new Block.Drawing(
              ring(zone),
              "The first year of "
                  + Words.zone(zone)
                  + ". The longer the bar, the more minutes a day on average; the words give the"
                  + " minutes of a watering day."));
      blocks.add(
          new Block.Fold(
              "What each plant of the zone gets in its thirstiest month", false, peaks(zone)));
    }
    return blocks;
  }

  /** The rule by which water may run on some days only, if there is one. */
  private String allowed() {
    WateringDays days = grove.supply().allowedDays();
    return days.any()
        ? ""
        : "Water may run only " + Words.on(days) + ", so the cards keep to these days. ";
  }

  private String ring(String zone) {
    return YearRing.draw(
        Words.zone(zone),
        "timer-ring-" + FigureBook.slug(zone),
        programme.settings().stream()
            .filter(s -> s.zone().equals(zone) && s.year() == 1)
            .sorted(Comparator.comparingInt(TimerSetting::month))
            .map(s -> new YearRing.Month(s.month(), s.minutesPerWatering(), s.rhythm()))
            .toList());
  }

  private List<String> zones() {
    return programme.settings().stream().map(TimerSetting::zone).distinct().toList();
  }

  private Block.Table card(String zone, int year) {
    List<List<Cell>> rows = new ArrayList<>();
    int first = grove.start().getMonthValue();
    for (int i = 0; i < 12; i++) {
      int month = (first + i - 1) % 12 + 1;
      programme.settings().stream()
          .filter(s -> s.zone().equals(zone) && s.year() == year && s.month() == month)
          .forEach(setting -> rows.add(row(setting)));
    }
    return new Block.Table(
        Words.capital(Words.zone(zone)) + ", year " + year,
        List.of(
            Block.Column.words("Month"),
            Block.Column.words("Water"),
            Block.Column.words("Start at"),
            Block.Column.numbers("Minutes a watering"),
            Block.Column.words("Shortest-served plant"),
            Block.Column.numbers("gets a day"),
            Block.Column.numbers("needs a day")),
        rows);
  }

  private List<Cell> row(TimerSetting setting) {
    String id = Programme.timerId(setting.zone(), setting.year(), setting.month());
    PlantSupply worst =
        programme.shortest(setting.zone(), setting.year(), setting.month()).orElse(null);
    boolean needed = worst != null;
    return List.of(
        Cell.of(Words.month(setting.month())),
        setting.off() ? Cell.of("off") : workings.cell(id + "every", Words.every(setting)),
        setting.off() ? Cell.NONE : Cell.of(starts(setting)),
        setting.off() ? Cell.NONE : workings.cell(id + "minutes", minutes(setting)),
        needed ? Cell.of(plant(worst).id()) : Cell.of("nothing needed"),
        needed ? gets(worst) : Cell.NONE,
        needed ? needs(worst) : Cell.NONE);
  }

  private static String starts(TimerSetting setting) {
    String times =
        setting.starts().stream().map(LocalTime::toString).collect(Collectors.joining(", "));
    return setting.rhythm().firstDay() == 0
        ? times
        : times + " (first on day " + (setting.rhythm().firstDay() + 1) + ")";
  }

  private static String minutes(TimerSetting setting) {
    int cycles = setting.starts().size();
    return cycles == 1
        ? String.valueOf(setting.minutesPerCycle())
        : cycles + " \u00d7 " + setting.minutesPerCycle();
  }

  private List<Block> peaks(String zone) {
    List<Block> blocks = new ArrayList<>();
    for (int year = 1; year <= Programme.YEARS; year++) {
      List<PlantSupply> all = supplies(zone, year);
      List<List<Cell>> rows = new ArrayList<>();
      for (int plant : all.stream().map(PlantSupply::plant).distinct().toList()) {
        PlantSupply peak =
            all.stream()
                .filter(supply -> supply.plant() == plant)
                .max(
                    Comparator.comparingDouble(PlantSupply::needsM3PerS)
                        .thenComparing(PlantSupply::month, Comparator.reverseOrder()))
                .orElseThrow();
        rows.add(
            List.of(
                Cell.of(plant(peak).id()),
                Cell.of(Words.month(peak.month())),
                needs(peak),
                gets(peak),
                Cell.of(units.text(peak.share(), Kind.SHARE))));
      }
      blocks.add(
          new Block.Table(
              Words.capital(Words.zone(zone)) + ", year " + year,
              List.of(
                  Block.Column.words("Plant"),
                  Block.Column.words("Thirstiest month"),
                  Block.Column.numbers("Needs a day"),
                  Block.Column.numbers("Gets a day"),
                  Block.Column.numbers("Share of need")),
              rows));
    }
    return blocks;
  }

  private List<PlantSupply> supplies(String zone, int year) {
    return programme.supplies().stream()
        .filter(supply -> supply.zone().equals(zone) && supply.year() == year)
        .toList();
  }

  private Planting plant(PlantSupply supply) {
    return grove.plantings().get(supply.plant());
  }

  private Cell gets(PlantSupply supply) {
    return workings.cell(
        Programme.timerId(supply.zone(), supply.year(), supply.month())
            + "plant."
            + FigureBook.slug(plant(supply).id())
            + ".gets",
        units.text(supply.getsM3PerS(), Kind.DAILY_WATER));
  }

  private Cell needs(PlantSupply supply) {
    return workings.cell(
        WaterNeeds.needId(plant(supply).id(), supply.year(), supply.month()),
        units.text(supply.needsM3PerS(), Kind.DAILY_WATER));
  }
}
