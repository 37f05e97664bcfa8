package org.grovewright.catalogue.files;

import static org.grovewright.catalogue.files.Column.choice;
import static org.grovewright.catalogue.files.Column.key;
import static org.grovewright.catalogue.files.Column.number;
import static org.grovewright.catalogue.files.Column.source;
import static org.grovewright.catalogue.files.Column.text;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.quantity.Kind;

/** The tables of single numbers and of prices. */
final class NumberTables {
  private NumberTables() {}

  static final Table<Constant> CONSTANTS =
      new Table<>(
          "constants",
          "single numbers of the trade",
          List.of(
              key("key of the constant"),
              text("name", "what it is"),
              number("value", "", -1e12, 1e12, "its value in the unit of the row"),
              text("unit", "unit of the value; 1 for a pure number"),
              choice("kind", "what sort of number it is", Kind.class),
              source()),
          List.of("key", "name", "value", "unit"),
          List.of(),
          v -> {
            Kind kind = v.choice("kind", Kind.class);
            UnitSymbol unit = UnitSymbol.of(v.text("unit"), kind).orElseThrow();
            return new Constant(
                v.text("key"), v.text("name"), unit.toSi(v.si("value")), kind, v.source());
          });

  static final Table<TypicalPrice> PRICES =
      new Table<>(
          "prices",
          "typical prices by the pack, to be replaced by your own",
          List.of(
              key("key of the item: a pipe, emitter, mix, part, species ..."),
              number(
                  "pack_size", "", 1e-6, 1e6, "content of the usual pack in the unit of the row"),
              choice(
                  "pack_unit",
                  "unit of the pack",
                  Arrays.stream(PackUnit.values()).map(PackUnit::word).toList()),
              number("amount", "", 0, 1e9, "money for a pack"),
              Column.currency("currency", "ISO 4217 code of the money"),
              source()),
          List.of("key", "pack_size", "pack_unit", "amount", "currency"),
          List.of(),
          v -> {
            PackUnit unit = PackUnit.valueOf(v.text("pack_unit").toUpperCase(Locale.ROOT));
            return new TypicalPrice(
                v.text("key"),
                v.si("pack_size") / unit.divisor,
                unit.kind,
                v.si("amount"),
                v.text("currency"),
                v.source());
          });

  /** Units in which goods are packed. */
  private enum PackUnit {
    PIECE(Kind.COUNT, 1),
    M(Kind.LENGTH, 1),
    KG(Kind.MASS, 1),
    M3(Kind.BULK_VOLUME, 1),
    LITRE(Kind.BULK_VOLUME, 1000);

    private final Kind kind;
    private final double divisor;

    PackUnit(Kind kind, double divisor) {
      this.kind = kind;
      this.divisor = divisor;
    }

    private static String word(PackUnit unit) {
      return Column.word(unit);
    }
  }
}
