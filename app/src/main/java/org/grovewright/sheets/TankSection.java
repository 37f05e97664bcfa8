package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.grovewright.model.Preferences.Units;
import org.grovewright.quantity.Figure;
import org.grovewright.storage.TankYears;

/** How the tank under its roof fares through the years. */
final class TankSection {
  private static final double M3_PER_GALLON = 3.785411784e-3;

  private final TankYears tank;
  private final double volumeM3;
  private final Workings workings;
  private final ReaderUnits units;
  private final Units system;

  TankSection(TankYears tank, double volumeM3, Units system, Workings workings, ReaderUnits units) {
    this.tank = tank;
    this.volumeM3 = volumeM3;
    this.system = system;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        Block.Paragraph.of(
            "The tank was followed day by day through "
                + Words.count(tank.weatherYears(), "year", "years")
                + " of weather"
                + (tank.drawn() ? ", drawn from the usual weather of the months" : "")
                + ", while the timer draws what its card says. Each year of the plan was put on every"
                + " year of weather, because the plants grow and the weather comes as it likes."));
    blocks.add(table("The tank in a mean year", TankYears.OfPlan::card));
    blocks.add(
        Block.Paragraph.of(
            "That is a timer without a rain sensor, which runs its whole card after rain too. The"
                + " next table is for an owner who looks at the soil on the days of the card: a"
                + " watering is skipped while little of what the plants can easily take is missing,"
                + " and none would run short before the next one if no more rain came; it is made"
                + " no longer than fills the soil again. That saves water, but the plants suffer"
                + " more often, because a full soil is a store."));
    blocks.add(
        table(
            "The tank in a mean year, waterings skipped or shortened by the soil",
            TankYears.OfPlan::skipping));
    if (!tank.levels().isEmpty()) {
      boolean us = system == Units.US;
      blocks.add(
          new Block.Drawing(
              TankChart.draw(
                  tank.levels(),
                  us ? "Water in the tank, gal" : "Water in the tank, L",
                  us ? 1 / M3_PER_GALLON : 1000,
                  volumeM3),
              "Water in the tank through the year with the plants of year "
                  + tank.years().size()
                  + " and the whole card drawn. The line is the mean of all years; one year in ten lies below the shaded"
                  + " band's lower edge."));
    }
    return blocks;
  }

  private Block table(String title, Function<TankYears.OfPlan, TankYears.Use> way) {
    List<List<Cell>> rows = new ArrayList<>();
    for (TankYears.OfPlan year : tank.years()) {
      TankYears.Use use = way.apply(year);
      rows.add(
          List.of(
              Cell.of("Year " + year.year()),
              cell(year.caughtM3()),
              cell(use.wantedM3()),
              cell(use.drawnM3()),
              cell(use.spilledM3()),
              cell(use.dryChance()),
              cell(use.dryDays())));
    }
    return new Block.Table(
        title,
        List.of(
            Block.Column.words("Plants of"),
            Block.Column.numbers("Roof brings"),
            Block.Column.numbers("Timer wants"),
            Block.Column.numbers("Tank gives"),
            Block.Column.numbers("Runs over"),
            Block.Column.numbers("Chance of running dry"),
            Block.Column.numbers("Days short")),
        rows);
  }

  private Cell cell(Figure figure) {
    return workings.cell(figure.id(), units.text(figure));
  }
}
