package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.grovewright.demand.Requirement;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Adds up the goods of a system, item by item, and remembers what each amount is for. */
final class GoodsList {
  private final Map<Key, Item> items = new LinkedHashMap<>();

  /** An item and the year of the plan at whose start it is wanted. */
  private record Key(String item, int year) {}

  private static final class Item {
    private final Kind kind;
    private final List<Input> parts = new ArrayList<>();
    private final List<Requirement.Cut> cuts = new ArrayList<>();

    Item(Kind kind) {
      this.kind = kind;
    }

    double sum() {
      double sum = 0;
      for (Input part : parts) {
        sum += part.value();
      }
      return sum;
    }
  }

  /** Adds pieces of an item. */
  void pieces(String itemKey, int count, String what) {
    pieces(itemKey, count, what, 1);
  }

  /** Adds pieces of an item that are wanted at the start of a year of the plan, from 1. */
  void pieces(String itemKey, int count, String what, int year) {
    if (count > 0) {
      add(new Key(itemKey, year), Kind.COUNT, count, what);
    }
  }

  /** Adds one length of pipe, to be cut in one piece. */
  void length(String pipeKey, double lengthM, String where) {
    if (lengthM > 0) {
      add(new Key(pipeKey, 1), Kind.LENGTH, lengthM, where)
          .cuts
          .add(new Requirement.Cut(where, lengthM));
    }
  }

  private Item add(Key key, Kind kind, double amount, String what) {
    Item item = items.computeIfAbsent(key, k -> new Item(kind));
    item.parts.add(new Input(what, amount, kind, "design of the watering system"));
    return item;
  }

  /** Money for all items of some sort, each by its price for one unit. */
  double cost(ToDoubleFunction<String> unitPrice, Predicate<String> sort) {
    double sum = 0;
    for (Map.Entry<Key, Item> entry : items.entrySet()) {
      if (sort.test(entry.getKey().item())) {
        sum += entry.getValue().sum() * unitPrice.applyAsDouble(entry.getKey().item());
      }
    }
    return sum;
  }

  /** Length of all pipe together, metres. */
  double pipeM() {
    return items.values().stream()
        .filter(item -> item.kind == Kind.LENGTH)
        .mapToDouble(Item::sum)
        .sum();
  }

  /** Money for each item of some sort, by its price for one unit. */
  List<Input> money(ToDoubleFunction<String> unitPrice, Predicate<String> sort) {
    List<Input> money = new ArrayList<>();
    for (Map.Entry<Key, Item> entry : items.entrySet()) {
      String key = entry.getKey().item();
      if (sort.test(key)) {
        double sum = entry.getValue().sum();
        String amount =
            String.format(
                Locale.ROOT, entry.getValue().kind == Kind.COUNT ? "%.0f" : "%.1f m", sum);
        money.add(
            new Input(
                key,
                sum * unitPrice.applyAsDouble(key),
                Kind.MONEY,
                amount + " at the unit price"));
      }
    }
    return money;
  }

  /**
   * All items, each with a figure {@code irrigation.need.ITEM}, and what is wanted in a later year
   * with one more, {@code irrigation.need.ITEM.year-2}.
   */
  List<Requirement> requirements(FigureBook book) {
    List<Requirement> requirements = new ArrayList<>();
    for (Map.Entry<Key, Item> entry : items.entrySet()) {
      Item item = entry.getValue();
      double sum = item.sum();
      String key = entry.getKey().item();
      int year = entry.getKey().year();
      boolean later = year > 1;
      String id = "irrigation.need." + FigureBook.slug(key) + (later ? ".year-" + year : "");
      book.enter(
          id,
          "Net amount of " + key,
          sum,
          item.kind,
          new Working("the sum of the amounts", item.parts, "counted on the design"));
      String purpose = later ? "Watering in later years" : "Watering";
      requirements.add(new Requirement(key, item.kind, sum, purpose, id, item.cuts));
    }
    return requirements;
  }
}
