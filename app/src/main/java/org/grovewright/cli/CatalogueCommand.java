package org.grovewright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.grovewright.catalogue.files.CatalogueException;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.catalogue.files.Column;
import org.grovewright.catalogue.files.Row;
import org.grovewright.catalogue.files.Table;
import org.grovewright.catalogue.files.Tables;
import org.grovewright.formats.words.Nearest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows the tables of the catalogue as they stand in the files. */
@Command(
    name = "catalogue",
    description = "Shows the plants, soils, goods and work the plans are made with.",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Examples:",
      "  grovewright catalogue                      the tables",
      "  grovewright catalogue species              all species",
      "  grovewright catalogue species avocado      one species with units and sources",
      "  grovewright catalogue species --columns    how to write your own species.csv",
      "  grovewright catalogue prices --csv         the table as CSV, to start your own from",
    })
public final class CatalogueCommand implements Callable<Integer> {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "TABLE",
      description = "Table to show; without it, the tables are listed.")
  private String tableName;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "KEY",
      description = "Row to show; without it, all rows are listed.")
  private String key;

  @Option(names = "--columns", description = "Describe the columns of the table instead.")
  private boolean columns;

  @Option(names = "--csv", description = "Print CSV that can serve as a file of your own.")
  private boolean csv;

  @Option(
      names = "--with",
      paramLabel = "PATH",
      description = "Lay your own CSV file, or folder of CSV files, over the tables.")
  private List<Path> own = new ArrayList<>();

  @Spec private CommandSpec spec;

  /** Prints what was asked for; the result is the exit code, 2 if the words cannot be used. */
  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (tableName == null) {
      out.print(TextTable.of(tables()));
      return done(out);
    }
    Table<?> table = Tables.all().get(tableName);
    if (table == null) {
      return unknown("table", tableName, Tables.all().keySet());
    }
    if (columns) {
      out.print(TextTable.of(columns(table)));
      return done(out);
    }
    Map<String, Row> rows;
    try {
      rows = files().rows(tableName);
    } catch (CatalogueException e) {
      return refuse(e.getMessage());
    }
    if (key != null) {
      Row row = rows.get(key);
      if (row == null) {
        return unknown("key of " + tableName, key, rows.keySet());
      }
      rows = Map.of(key, row);
    }
    if (csv) {
      out.print(csv(table, rows.values()));
    } else if (key == null) {
      out.print(TextTable.of(list(table, rows.values())));
    } else {
      out.print(TextTable.of(details(table, rows.get(key))));
    }
    return done(out);
  }

  private CatalogueFiles files() {
    CatalogueFiles files = CatalogueFiles.load();
    for (Path path : own) {
      files = files.with(path);
    }
    return files;
  }

  private static int done(PrintWriter out) {
    out.flush();
    return ExitCode.OK;
  }

  private int unknown(String what, String word, Collection<String> known) {
    String hint =
        Nearest.of(word, known)
            .map(near -> "Did you mean \"" + near + "\"?")
            .orElse("Known are " + String.join(", ", known) + ".");
    return refuse("\"" + word + "\" is not a " + what + ". " + hint);
  }

  private int refuse(String message) {
    PrintWriter err = spec.commandLine().getErr();
    err.print(message + "\n");
    err.flush();
    return ExitCode.BAD_INPUT;
  }

  private static List<List<String>> tables() {
    List<List<String>> lines = new ArrayList<>();
    lines.add(List.of("table", "what it lists"));
    Tables.all().values().forEach(table -> lines.add(List.of(table.name(), table.title())));
    return lines;
  }

  private static List<List<String>> columns(Table<?> table) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(List.of("column", "needed", "allowed", "meaning"));
    for (Column column : table.columns().values()) {
      lines.add(
          List.of(
              column.name(),
              column.neededOfOwners() ? "yes" : "no",
              column.allowed(),
              column.meaning()));
    }
    return lines;
  }

  private static List<List<String>> list(Table<?> table, Collection<Row> rows) {
    List<List<String>> lines = new ArrayList<>();
    lines.add(table.main());
    rows.forEach(row -> lines.add(table.main().stream().map(row::text).toList()));
    return lines;
  }

  private static List<List<String>> details(Table<?> table, Row row) {
    List<List<String>> lines = new ArrayList<>();
    for (Column column : table.columns().values()) {
      String unit = column.unit().isEmpty() ? "" : " " + column.unit();
      String cell = row.text(column.name());
      lines.add(List.of(column.name(), column.meaning(), cell.isEmpty() ? "-" : cell + unit));
    }
    return lines;
  }

  private static String csv(Table<?> table, Collection<Row> rows) {
    StringBuilder text = new StringBuilder();
    CSVFormat format = CSVFormat.DEFAULT.builder().setRecordSeparator('\n').get();
    try (CSVPrinter printer = new CSVPrinter(text, format)) {
      printer.printRecord(table.columns().keySet());
      for (Row row : rows) {
        printer.printRecord(table.columns().keySet().stream().map(row::text));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }
}
