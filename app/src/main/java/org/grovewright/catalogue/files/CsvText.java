package org.grovewright.catalogue.files;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.grovewright.formats.words.SheetStyle;

/**
 * Turns the text of one file into checked rows of its table.
 *
 * <p>Commas part the cells, or semicolons where the header has them and no comma, as spreadsheets
 * of many countries write. Lines that begin with {@code #} are remarks.
 */
final class CsvText {
  private final Table<?> table;
  private final String file;
  private final boolean owners;
  private final Collection<Problem> problems;

  /**
   * Prepares to read.
   *
   * @param table the table the file belongs to
   * @param file name of the file for messages
   * @param owners whether it is an owner's file, which may leave out its sources
   * @param problems where faults are put
   */
  CsvText(Table<?> table, String file, boolean owners, Collection<Problem> problems) {
    this.table = table;
    this.file = file;
    this.owners = owners;
    this.problems = problems;
  }

  /** The rows that are free of faults, by key. */
  Map<String, Row> rows(String text) {
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(SheetStyle.of(text).separator())
            .setCommentMarker('#')
            .setIgnoreSurroundingSpaces(true)
            .setTrim(true)
            .get();
    Map<String, Row> rows = new LinkedHashMap<>();
    try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
      Iterator<CSVRecord> records = parser.iterator();
      List<Column> header = null;
      while (records.hasNext()) {
        CSVRecord record = records.next();
        long line = lineOf(parser, record);
        if (header == null) {
          header = header(record, line);
          if (header.isEmpty()) {
            return rows;
          }
        } else {
          row(header, record, line, rows);
        }
      }
      if (header == null) {
        problem(0, "", "is empty; it needs a first line with the names of the columns.");
      }
    } catch (UncheckedIOException | IOException e) {
      problem(0, "", "cannot be read as CSV: " + e.getMessage());
    }
    return rows;
  }

  /** The line on which the record just read begins. */
  private static long lineOf(CSVParser parser, CSVRecord record) {
    long breaks = 0;
    for (String cell : record) {
      for (int at = cell.indexOf('\n'); at >= 0; at = cell.indexOf('\n', at + 1)) {
        breaks++;
      }
    }
    return parser.getCurrentLineNumber() - breaks;
  }

  private static boolean isBlank(CSVRecord record) {
    for (String cell : record) {
      if (!cell.isEmpty()) {
        return false;
      }
    }
    return true;
  }

  /** Columns in the order of the file, or nothing if the header cannot be used. */
  private List<Column> header(CSVRecord record, long line) {
    List<Column> header = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    boolean good = true;
    for (String name : record) {
      Column column = table.columns().get(name);
      if (column == null) {
        problem(
            line,
            name,
            "is not a column of the table \""
                + table.name()
                + "\"."
                + Hint.of(name, table.columns().keySet()));
        good = false;
      } else if (!seen.add(name)) {
        problem(line, name, "stands twice in the header.");
        good = false;
      }
      header.add(column);
    }
    for (Column column : table.columns().values()) {
      boolean needed = owners ? column.neededOfOwners() : column.required();
      if (needed && !seen.contains(column.name())) {
        problem(line, column.name(), "is missing; it holds: " + column.meaning() + ".");
        good = false;
      }
    }
    return good ? header : List.of();
  }

  private void row(List<Column> header, CSVRecord record, long line, Map<String, Row> rows) {
    if (isBlank(record)) {
      return;
    }
    if (record.size() != header.size()) {
      problem(
          line,
          "",
          "has "
              + record.size()
              + " cells, but the header has "
              + header.size()
              + ". Put a text that holds the separator in double quotes.");
      return;
    }
    Map<String, String> cells = new HashMap<>();
    int before = problems.size();
    for (int i = 0; i < header.size(); i++) {
      Column column = header.get(i);
      String cell = Cell.plain(column, record.get(i));
      if (cell.isEmpty() && owners && column.name().equals("source")) {
        continue;
      }
      Cell.fault(column, cell).ifPresent(fault -> problem(line, column.name(), fault));
      if (!cell.isEmpty()) {
        cells.put(column.name(), cell);
      }
    }
    if (owners) {
      cells.putIfAbsent("source", "owner's file " + file);
    }
    Row row = new Row(file, line, cells);
    if (problems.size() == before) {
      rules(row);
    }
    if (problems.size() == before) {
      add(row, rows);
    }
  }

  private void rules(Row row) {
    Values values = new Values(table.columns(), row);
    for (Table.Rule rule : table.rules()) {
      if (!rule.holds(values)) {
        problem(
            row.line(),
            rule.upper(),
            "\""
                + row.text(rule.upper())
                + "\" must be "
                + (rule.mayEqual() ? "at least " : "more than ")
                + rule.lower()
                + ", which is "
                + row.text(rule.lower())
                + ".");
      }
    }
  }

  private void add(Row row, Map<String, Row> rows) {
    String key = row.text(table.keyColumn());
    Row earlier = rows.putIfAbsent(key, row);
    if (earlier != null) {
      problem(
          row.line(),
          table.keyColumn(),
          "\"" + key + "\" already stands on line " + earlier.line() + ".");
    }
  }

  private void problem(long line, String column, String message) {
    problems.add(new Problem(file, line, column, message));
  }
}
