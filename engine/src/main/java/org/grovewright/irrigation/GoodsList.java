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
  private final Map<String, Item> items = new LinkedHashMap<>();

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
    if (count > 0) {
      add(itemKey, Kind.COUNT, count, what);
    }
  }

  /** Adds one length of pipe, to be cut in one piece. */
  void length(String pipeKey, double lengthM, String where) {
    if (lengthM > 0) {
      add(pipeKey, Kind.LENGTH, lengthM, where).cuts.add(new Requirement.Cut(where, lengthM));
    }
  }

  private Item add(String itemKey, Kind kind, double amount, String what) {
    Item item = items.computeIfAbsent(itemKey, key -> new Item(kind));
    item.parts.add(new Input(what, amount, kind, "design of the watering system"));
    return item;
  }

  /** Money for all items of some sort, each by its price for one unit. */
  double cost(ToDoubleFunction<String> unitPrice, Predicate<String> sort) {
    double sum = 0;
    for (Map.Entry<String, Item> entry : items.entrySet()) {
      if (sort.test(entry.getKey())) {
        sum += entry.getValue().sum() * unitPrice.applyAsDouble(entry.getKey());
      }
    }
    return sum;
  }

  /** Money for each item of some sort, by its price for one unit. */
  List<Input> money(ToDoubleFunction<String> unitPrice, Predicate<String> sort) {
    List<Input> money = new ArrayList<>();
    for (Map.Entry<String, Item> entry : items.entrySet()) {
      String key = entry.getKey();
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

  /** All items, each with a figure {@code irrigation.need.ITEM}. */
  List<Requirement> requirements(FigureBook book) {
    List<Requirement> requirements = new ArrayList<>();
    for (Map.Entry<String, Item> entry : items.entrySet()) {
      Item item = entry.getValue();
      double sum = item.sum();
      String id = "irrigation.need." + FigureBook.slug(entry.getKey());
      book.enter(
          id,
          "Net amount of " + entry.getKey(),
          sum,
          item.kind,
          new Working("the sum of the amounts", item.parts, "counted on the design"));
      requirements.add(new Requirement(entry.getKey(), item.kind, sum, "Watering", id, item.cuts));
    }
    return requirements;
  }
}
