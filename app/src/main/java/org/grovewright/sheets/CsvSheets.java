package org.grovewright.sheets;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalTime;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.grovewright.buying.ShoppingLine;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Kind;

/** The sheets that open in a spreadsheet. */
final class CsvSheets {
  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
  private static final double LITRES_A_DAY = 86_400 * 1000;

  private CsvSheets() {}

  /** The shopping list; amounts in the reader's units. */
  static String shopping(Plan plan, ReaderUnits units) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
      csv.printRecord(
          "item",
          "name",
          "needed",
          "with waste",
          "on hand",
          "pack",
          "packs to buy",
          "price of a pack",
          "cost",
          "currency",
          "price from",
          "left over",
          "for");
      for (ShoppingLine line : plan.shopping().lines()) {
        csv.printRecord(
            line.itemKey(),
            line.name(),
            amount(line.net(), line.kind(), units),
            amount(line.withWaste(), line.kind(), units),
            amount(line.onHand(), line.kind(), units),
            line.packSize().isPresent()
                ? amount(line.packSize().getAsDouble(), line.kind(), units)
                : "",
            line.packSize().isPresent()
                ? Decimals.plain(line.packs(), 0)
                : amount(line.packs(), line.kind(), units),
            money(line.packPrice()),
            money(line.cost()),
            line.currency(),
            origin(line.priceOrigin()),
            amount(line.leftOver(), line.kind(), units),
            BuyingSection.purposes(line));
      }
      csv.printRecord(
          "total",
          plan.shopping().complete() ? "everything" : "what has a known price",
          "",
          "",
          "",
          "",
          "",
          "",
          Decimals.plain(plan.shopping().total(), 2),
          plan.grove().stock().currency(),
          "",
          "",
          "");
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString();
  }

  /**
   * What every plant needs and gets, month by month, in litres a day, with what the timer of its
   * zone is set to.
   */
  static String watering(Plan plan) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
      csv.printRecord(
          "zone",
          "plant",
          "year",
          "month",
          "needs L/day",
          "gets L/day",
          "watering days",
          "starts at",
          "minutes after each start");
      Map<String, TimerSetting> settings = new HashMap<>();
      plan.programme()
          .settings()
          .forEach(s -> settings.put(Programme.timerId(s.zone(), s.year(), s.month()), s));
      for (PlantSupply supply : plan.programme().supplies()) {
        TimerSetting setting =
            settings.get(Programme.timerId(supply.zone(), supply.year(), supply.month()));
        csv.printRecord(
            supply.zone(),
            plan.grove().plantings().get(supply.plant()).id(),
            supply.year(),
            supply.month(),
            Decimals.plain(supply.needsM3PerS() * LITRES_A_DAY, 2),
            Decimals.plain(supply.getsM3PerS() * LITRES_A_DAY, 2),
            Words.every(setting),
            setting.starts().stream().map(LocalTime::toString).collect(Collectors.joining(" ")),
            setting.off() ? "" : setting.minutesPerCycle());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString();
  }

  private static String amount(double value, Kind kind, ReaderUnits units) {
    return ReaderUnits.plainSpaces(units.text(value, kind));
  }

  private static String money(OptionalDouble amount) {
    return amount.isPresent() ? Decimals.plain(amount.getAsDouble(), 2) : "";
  }

  private static String origin(ShoppingLine.PriceOrigin origin) {
    return switch (origin) {
      case OWNER -> "your price";
      case TYPICAL -> "typical price";
      case TYPICAL_OTHER_CURRENCY -> "typical price in another currency, not in the total";
      case UNKNOWN -> "not known";
    };
  }
}
