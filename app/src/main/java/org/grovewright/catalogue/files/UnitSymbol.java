package org.grovewright.catalogue.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.quantity.Kind;

/**
 * Units in which the constants may be written. A short list of our own, because the catalogue is
 * read at every start and a general units library takes longer to load than all the tables.
 *
 * @param symbol the unit as written
 * @param si symbol of the SI unit it is turned into
 * @param multiplier with {@code divisor}, turns its numbers into SI
 * @param divisor see {@code multiplier}
 */
record UnitSymbol(String symbol, String si, double multiplier, double divisor) {
  private static final Map<String, UnitSymbol> ALL = new LinkedHashMap<>();

  static {
    add("m", "m", 1, 1);
    add("cm", "m", 1, 100);
    add("mm", "m", 1, 1000);
    add("um", "m", 1, 1e6);
    add("km", "m", 1000, 1);
    add("m2", "m2", 1, 1);
    add("m3", "m3", 1, 1);
    add("L", "m3", 1, 1000);
    add("mL", "m3", 1, 1e6);
    add("m3/s", "m3/s", 1, 1);
    add("m3/h", "m3/s", 1, 3600);
    add("m3/d", "m3/s", 1, 86_400);
    add("L/s", "m3/s", 1, 1000);
    add("L/min", "m3/s", 1, 60_000);
    add("L/h", "m3/s", 1, 3.6e6);
    add("L/d", "m3/s", 1, 8.64e7);
    add("Pa", "Pa", 1, 1);
    add("kPa", "Pa", 1000, 1);
    add("bar", "Pa", 100_000, 1);
    add("kg", "kg", 1, 1);
    add("g", "kg", 1, 1000);
    add("t", "kg", 1000, 1);
    add("kg/m2", "kg/m2", 1, 1);
    add("g/m2", "kg/m2", 1, 1000);
    add("kg/m3", "kg/m3", 1, 1);
    add("g/cm3", "kg/m3", 1000, 1);
    add("s", "s", 1, 1);
    add("min", "s", 60, 1);
    add("h", "s", 3600, 1);
    add("d", "s", 86_400, 1);
    add("m/s", "m/s", 1, 1);
    add("km/h", "m/s", 1, 3.6);
    add("mm/h", "m/s", 1, 3.6e6);
    add("mm/d", "m/s", 1, 8.64e7);
    add("Cel", "Cel", 1, 1);
    add("W/m2", "W/m2", 1, 1);
    add("MJ/m2/d", "W/m2", 1e6, 86_400);
    add("1", "1", 1, 1);
    add("%", "1", 1, 100);
    add("rad", "rad", 1, 1);
    add("deg", "rad", Math.PI, 180);
    add("S/m", "S/m", 1, 1);
    add("dS/m", "S/m", 1, 10);
    add("[pH]", "[pH]", 1, 1);
    add("money", "money", 1, 1);
  }

  private static void add(String symbol, String si, double multiplier, double divisor) {
    ALL.put(symbol, new UnitSymbol(symbol, si, multiplier, divisor));
  }

  /**
   * The unit of a symbol for numbers of a kind, if it fits the kind. A {@link Kind#NUMBER} may also
   * carry any unit that is not in the list, which is then only a note beside an SI value (m/s2,
   * J/kg).
   */
  static Optional<UnitSymbol> of(String symbol, Kind kind) {
    UnitSymbol unit = ALL.get(symbol);
    if (unit == null) {
      return kind == Kind.NUMBER
          ? Optional.of(new UnitSymbol(symbol, symbol, 1, 1))
          : Optional.empty();
    }
    return unit.si.equals(kind.symbol()) ? Optional.of(unit) : Optional.empty();
  }

  /** Symbols that fit a kind. */
  static List<String> allowed(Kind kind) {
    return ALL.values().stream()
        .filter(unit -> unit.si.equals(kind.symbol()))
        .map(UnitSymbol::symbol)
        .toList();
  }

  double toSi(double number) {
    return number * multiplier / divisor;
  }
}
