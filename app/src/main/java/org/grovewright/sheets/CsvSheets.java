package org.grovewright.sheets;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalTime;
import java.util.HashMap;
import java.util.Locale;
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
import org.grovewright.texts.Language;

/** The sheets that open in a spreadsheet. */
final class CsvSheets {
  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
  private static final double LITRES_A_DAY = 86_400 * 1000;

  private CsvSheets() {}

  /** The shopping list; amounts in the reader's units. */
  static String shopping(Plan plan, ReaderUnits units) {
    Language words = units.language();
    StringBuilder text = new StringBuilder();
    try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
      csv.printRecord(
          words.text("list.item"),
          words.text("list.name"),
          words.text("list.needed"),
          words.text("list.with-waste"),
          words.text("list.on-hand"),
          words.text("list.pack"),
          words.text("list.packs"),
          words.text("list.pack-price"),
          words.text("list.cost"),
          words.text("list.currency"),
          words.text("list.price-from"),
          words.text("list.left-over"),
          words.text("list.for"));
      for (ShoppingLine line : plan.shopping().lines()) {
        csv.printRecord(
            line.itemKey(),
            words.say(line.name()),
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
            words.text(
                "list.price."
                    + line.priceOrigin().name().toLowerCase(Locale.ROOT).replace('_', '-')),
            amount(line.leftOver(), line.kind(), units),
            BuyingSection.purposes(line, words));
      }
      csv.printRecord(
          words.text("list.total"),
          words.text(plan.shopping().complete() ? "list.everything" : "list.known"),
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
  static String watering(Plan plan, Language words) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter csv = new CSVPrinter(text, FORMAT)) {
      csv.printRecord(
          words.text("list.zone"),
          words.text("list.plant"),
          words.text("list.year"),
          words.text("list.month"),
          words.text("list.needs"),
          words.text("list.gets"),
          words.text("list.days"),
          words.text("list.starts"),
          words.text("list.minutes"));
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
            words.say(Words.every(setting)),
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
}
