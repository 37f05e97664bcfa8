package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.irrigation.MixedNeeds;
import org.grovewright.irrigation.Outlet;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;

/** Which emitters each plant of a zone has year by year, and what it brings that they grow. */
final class EmitterYears {
  private final Grove grove;
  private final WateringSystem system;
  private final Workings workings;
  private final ReaderUnits units;

  EmitterYears(Grove grove, WateringSystem system, Workings workings, ReaderUnits units) {
    this.grove = grove;
    this.system = system;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks(ZoneResult zone) {
    List<Block> blocks = new ArrayList<>();
    String name = Words.zone(zone.design().id());
    system.mixedNeeds().stream()
        .filter(mixed -> mixed.zone().equals(zone.design().id()))
        .filter(mixed -> !mixed.after().equals(mixed.before()))
        .findFirst()
        .ifPresent(mixed -> blocks.add(effect(mixed, name)));
    blocks.add(
        new Block.Fold("Emitters of " + name + ", year by year", true, List.of(table(zone))));
    return blocks;
  }

  private Block effect(MixedNeeds mixed, String name) {
    String id = MixedNeeds.figureId(mixed.zone());
    return new Block.Paragraph(
        List.of(
            Cell.of(
                "One valve gives all its plants the same minutes. With the same emitters from the"
                    + " first day "
                    + name
                    + " would run "),
            workings.cell(
                id + "before.water", units.text(mixed.before().totalM3(), Kind.WATER_VOLUME)),
            Cell.of(" of water in the first years and give a plant as much as "),
            workings.cell(id + "before.worst", units.text(mixed.before().worstShare(), Kind.SHARE)),
            Cell.of(
                " of its need in its thirstiest month. With few emitters at the young trees and"
                    + " more added as they grow it runs "),
            workings.cell(
                id + "after.water", units.text(mixed.after().totalM3(), Kind.WATER_VOLUME)),
            Cell.of(" and gives no plant more than "),
            workings.cell(id + "after.worst", units.text(mixed.after().worstShare(), Kind.SHARE)),
            Cell.of(", excesses too small to matter left out.")));
  }

  private Block.Table table(ZoneResult zone) {
    int years = system.zonesByYear().size();
    Map<Integer, List<Map<String, Integer>>> byPlant = new LinkedHashMap<>();
    for (Outlet outlet : zone.design().allOutlets()) {
      List<Map<String, Integer>> counts =
          byPlant.computeIfAbsent(outlet.plant(), p -> empty(years));
      for (int year = 1; year <= years; year++) {
        if (outlet.openIn(year)) {
          counts.get(year - 1).merge(outlet.emitter().name(), 1, Integer::sum);
        }
      }
    }
    List<Block.Column> columns = new ArrayList<>();
    columns.add(Block.Column.words("Plant"));
    for (int year = 1; year <= years; year++) {
      columns.add(Block.Column.words("Year " + year));
    }
    List<List<Cell>> rows = new ArrayList<>();
    byPlant.forEach(
        (plant, counts) -> {
          List<Cell> row = new ArrayList<>();
          row.add(Cell.of(grove.plantings().get(plant).id()));
          for (int year = 0; year < years; year++) {
            boolean same = year > 0 && counts.get(year).equals(counts.get(year - 1));
            row.add(Cell.of(same ? "the same" : counted(counts.get(year))));
          }
          rows.add(row);
        });
    return new Block.Table(
        "Emitters that drip at each plant of " + Words.zone(zone.design().id()), columns, rows);
  }

  private static List<Map<String, Integer>> empty(int years) {
    List<Map<String, Integer>> counts = new ArrayList<>();
    for (int year = 0; year < years; year++) {
      counts.add(new LinkedHashMap<>());
    }
    return counts;
  }

  /** Emitters with their numbers in words. */
  static String counted(Map<String, Integer> emitters) {
    if (emitters.isEmpty()) {
      return "none, plugged";
    }
    List<String> parts = new ArrayList<>();
    emitters.forEach((name, count) -> parts.add(count + " \u00d7 " + name));
    return String.join(" and ", parts);
  }
}
