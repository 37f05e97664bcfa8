package org.grovewright.catalogue.files;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * How one table is written and read.
 *
 * @param <T> the engine's type of its rows
 */
public final class Table<T> {
  private final String name;
  private final String title;
  private final Map<String, Column> columns;
  private final List<String> main;
  private final List<Rule> rules;
  private final Function<Values, T> reader;

  /**
   * Describes a table.
   *
   * @param name its name, which is also the name of its file before the first point or hyphen
   * @param title what it lists, in plain words
   * @param columns its columns in the usual order; the first holds the key
   * @param main names of the columns shown in a list of its rows
   * @param rules what must hold between the columns of a row
   * @param reader makes the engine's record of a checked row
   */
  Table(
      String name,
      String title,
      List<Column> columns,
      List<String> main,
      List<Rule> rules,
      Function<Values, T> reader) {
    this.name = name;
    this.title = title;
    Map<String, Column> byName = new LinkedHashMap<>();
    columns.forEach(column -> byName.put(column.name(), column));
    this.columns = Collections.unmodifiableMap(byName);
    this.main = List.copyOf(main);
    this.rules = List.copyOf(rules);
    this.reader = reader;
  }

  /** Name of the table, which is also the name of its file before the first point or hyphen. */
  public String name() {
    return name;
  }

  /** What it lists, in plain words. */
  public String title() {
    return title;
  }

  /** Its columns by name, in the usual order. */
  public Map<String, Column> columns() {
    return columns;
  }

  /** Names of the columns shown in a list of its rows. */
  public List<String> main() {
    return main;
  }

  /** Name of the column that holds the key. */
  public String keyColumn() {
    return columns.keySet().iterator().next();
  }

  List<Rule> rules() {
    return rules;
  }

  T read(Row row) {
    return reader.apply(new Values(columns, row));
  }

  /**
   * What must hold between two number columns of a row: the first is less than the second, or at
   * most equal to it.
   *
   * @param lower name of the column that holds less
   * @param upper name of the column that holds more
   * @param mayEqual whether both may hold the same
   */
  record Rule(String lower, String upper, boolean mayEqual) {
    boolean holds(Values values) {
      double low = values.si(lower);
      double high = values.si(upper);
      return low < high || (mayEqual && low == high);
    }
  }
}
