package org.grovewright.formats.description;

import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.NotAQuantityException;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Stock;
import org.grovewright.quantity.Kind;
import org.grovewright.texts.Sentence;

/** Reads what lies in the shed and what things cost. */
final class StockReader {
  private static final double MOST = 1e6;

  /** Shortest length of pipe on sale, metres; from shorter ones nothing could be cut. */
  private static final double LEAST_PIPE_M = 0.5;

  private static final String CURRENCY = "currency";
  private static final String TYPICAL_TIMES = "typical_times";

  private final Catalogue catalogue;
  private final Map<String, Kind> kinds;

  StockReader(Catalogue catalogue) {
    this.catalogue = catalogue;
    this.kinds = itemKinds(catalogue);
  }

  /** What each item is counted or measured in, by its key. */
  static Map<String, Kind> itemKinds(Catalogue catalogue) {
    Map<String, Kind> kinds = new LinkedHashMap<>();
    catalogue.prices().values().forEach(price -> kinds.put(price.key(), price.kind()));
    catalogue.pipes().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.LENGTH));
    catalogue.mixes().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.BULK_VOLUME));
    catalogue.mulches().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.BULK_VOLUME));
    catalogue.amendments().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.MASS));
    catalogue.emitters().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.COUNT));
    catalogue.filters().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.COUNT));
    catalogue.regulators().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.COUNT));
    catalogue.parts().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.COUNT));
    catalogue.species().keySet().forEach(key -> kinds.putIfAbsent(key, Kind.COUNT));
    return kinds;
  }

  /** Currency of the catalogue's typical prices. */
  static String catalogueCurrency(Catalogue catalogue) {
    return catalogue.prices().values().stream()
        .map(TypicalPrice::currency)
        .findFirst()
        .orElse("USD");
  }

  Stock read(Optional<Value> onHand, Optional<Value> prices) {
    Map<String, Double> have = new LinkedHashMap<>();
    onHand
        .flatMap(
            v ->
                v.anyFields(
                    Sentence.of("keys of the catalogue with the quantity, as pipe.pe-16: 60 m")))
        .ifPresent(fields -> fields.all().forEach((key, value) -> putOnHand(have, key, value)));
    Map<String, Stock.Price> cost = new LinkedHashMap<>();
    String[] currency = {catalogueCurrency(catalogue)};
    OptionalDouble[] times = {OptionalDouble.empty()};
    prices
        .flatMap(
            v ->
                v.anyFields(
                    Sentence.of(
                        "keys of the catalogue with the price, as pipe.pe-16: 100 m for 32")))
        .ifPresent(
            fields -> {
              fields
                  .all()
                  .forEach(
                      (key, value) -> {
                        if (key.equals(CURRENCY)) {
                          currency[0] = currency(value).orElse(currency[0]);
                        } else if (key.equals(TYPICAL_TIMES)) {
                          times[0] =
                              value.number(
                                  new Range(1e-4, 1e6),
                                  "a number such as 1.5, by which the catalogue's typical prices"
                                      + " are multiplied");
                        } else {
                          putPrice(cost, key, value);
                        }
                      });
            });
    return new Stock(have, cost, currency[0], times[0]);
  }

  private static Optional<String> currency(Value value) {
    Optional<String> code = value.text("an ISO 4217 code such as USD or EUR");
    if (code.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Currency.getInstance(code.get()).getCurrencyCode());
    } catch (IllegalArgumentException e) {
      value.problem(
          "'{0}' is no currency; give an ISO 4217 code such as USD", Nearest.shorten(code.get()));
      return Optional.empty();
    }
  }

  private void putOnHand(Map<String, Double> have, String key, Value value) {
    Optional<String> item = item(key, value);
    Optional<String> text = value.text("a quantity");
    if (item.isPresent() && text.isPresent()) {
      OptionalDouble amount = amount(item.get(), text.get(), value, false);
      amount.ifPresent(v -> have.put(item.get(), v));
    }
  }

  private void putPrice(Map<String, Stock.Price> cost, String key, Value value) {
    Sentence wanted = Sentence.of("the pack and its price, such as 100 m for 32");
    Optional<String> item = item(key, value);
    Optional<String> text = value.text(wanted);
    if (item.isEmpty() || text.isEmpty()) {
      return;
    }
    String[] halves = text.get().split("\\s+for\\s+", -1);
    if (halves.length != 2 || !halves[1].matches("\\d{1,9}(\\.\\d{1,4})?")) {
      value.problem("'{0}' is not understood; give {1}", Nearest.shorten(text.get()), wanted);
      return;
    }
    OptionalDouble pack = amount(item.get(), halves[0], value, true);
    pack.ifPresent(
        size -> cost.put(item.get(), new Stock.Price(size, Double.parseDouble(halves[1]))));
  }

  private Optional<String> item(String key, Value value) {
    if (kinds.containsKey(key)) {
      return Optional.of(key);
    }
    value.problem(
        "the catalogue has no item '{0}'{1}",
        Nearest.shorten(key), Nearest.hint(key, kinds.keySet()));
    return Optional.empty();
  }

  private OptionalDouble amount(String key, String text, Value value, boolean positive) {
    Kind kind = kinds.get(key);
    OptionalDouble amount = kind == Kind.COUNT ? count(text, value) : measured(key, text, value);
    if (amount.isPresent() && (amount.getAsDouble() < 0 || amount.getAsDouble() > MOST)) {
      value.problem("'{0}' is out of range; allowed is 0 to a million", Nearest.shorten(text));
      return OptionalDouble.empty();
    }
    if (amount.isPresent() && positive && amount.getAsDouble() == 0) {
      value.problem("a pack of nothing has no price; give what the pack holds");
      return OptionalDouble.empty();
    }
    if (amount.isPresent() && positive && amount.getAsDouble() < leastPack(key)) {
      value.problem(
          "'{0}' is too short for pipe; give the length of a whole coil", Nearest.shorten(text));
      return OptionalDouble.empty();
    }
    return amount;
  }

  private double leastPack(String key) {
    return catalogue.pipes().containsKey(key) ? LEAST_PIPE_M : 0;
  }

  private static OptionalDouble count(String text, Value value) {
    if (text.matches("\\d{1,9}")) {
      return OptionalDouble.of(Integer.parseInt(text));
    }
    value.problem(
        "'{0}' is not understood; this item is counted: give a whole number",
        Nearest.shorten(text));
    return OptionalDouble.empty();
  }

  private OptionalDouble measured(String key, String text, Value value) {
    Measure measure = measure(kinds.get(key));
    double density = density(key);
    Measure other = measure == Measure.MASS ? Measure.VOLUME : Measure.MASS;
    if (density > 0 && measure != Measure.LENGTH) {
      try {
        double given = QuantityText.read(text, other).value();
        return OptionalDouble.of(other == Measure.MASS ? given / density : given * density);
      } catch (NotAQuantityException e) {
        // Not the other measure; what is wrong is said for the item's own.
      }
    }
    try {
      return OptionalDouble.of(QuantityText.read(text, measure).value());
    } catch (NotAQuantityException e) {
      value.problem(e.sentence());
      return OptionalDouble.empty();
    }
  }

  private double density(String key) {
    if (catalogue.mixes().containsKey(key)) {
      return catalogue.mixes().get(key).looseDensityKgPerM3();
    }
    if (catalogue.amendments().containsKey(key)) {
      return catalogue.amendments().get(key).densityKgPerM3();
    }
    return catalogue.mulches().containsKey(key) ? catalogue.mulches().get(key).densityKgPerM3() : 0;
  }

  private static Measure measure(Kind kind) {
    return switch (kind) {
      case LENGTH -> Measure.LENGTH;
      case MASS -> Measure.MASS;
      case BULK_VOLUME, WATER_VOLUME -> Measure.VOLUME;
      default -> throw new IllegalStateException("the catalogue sells an item by " + kind);
    };
  }
}
