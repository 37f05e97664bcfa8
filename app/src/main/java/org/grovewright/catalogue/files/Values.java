package org.grovewright.catalogue.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The cells of a checked row as values, numbers in SI.
 *
 * @param columns columns of the table by name
 * @param row the row
 */
record Values(Map<String, Column> columns, Row row) {
  String text(String column) {
    return row.text(column);
  }

  Optional<String> textIfAny(String column) {
    return Optional.ofNullable(row.cells().get(column));
  }

  double si(String column) {
    Column described = columns.get(column);
    return Double.parseDouble(row.text(column)) * described.multiplier() / described.divisor();
  }

  OptionalDouble siIfAny(String column) {
    return row.cells().containsKey(column) ? OptionalDouble.of(si(column)) : OptionalDouble.empty();
  }

  int whole(String column) {
    return Integer.parseInt(row.text(column));
  }

  boolean yes(String column) {
    return row.text(column).equals("yes");
  }

  <E extends Enum<E>> E choice(String column, Class<E> words) {
    return Enum.valueOf(words, row.text(column).toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  List<String> words(String column) {
    return row.words(column);
  }

  List<Integer> months(String column) {
    List<Integer> months = new ArrayList<>();
    for (String word : row.words(column)) {
      months.add(Integer.valueOf(word));
    }
    return months;
  }

  String source() {
    return row.text("source");
  }
}
