package org.grovewright.catalogue.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.grovewright.catalogue.Catalogue;

/**
 * The rows of all tables as they stand in the files, checked, and the engine's catalogue made of
 * them.
 *
 * <p>The bundled files are listed in {@code catalogue/index.txt}. The name of a file up to its
 * first point or hyphen is the table it belongs to, so that {@code constants-water.csv} holds
 * constants.
 */
public final class CatalogueFiles {
  private static final String FOLDER = "/catalogue/";

  private final Map<String, Map<String, Row>> tables;
  private final Catalogue catalogue;

  private CatalogueFiles(Map<String, Map<String, Row>> tables) {
    this.tables = tables;
    this.catalogue =
        new Catalogue(
            read(PlantTables.SPECIES),
            read(SoilTables.TEXTURES),
            read(WateringTables.PIPES),
            read(WateringTables.EMITTERS),
            read(WateringTables.FILTERS),
            read(WateringTables.REGULATORS),
            read(SoilTables.MIXES),
            read(SoilTables.AMENDMENTS),
            read(SoilTables.MULCHES),
            read(WateringTables.PARTS),
            read(WorkTables.TASKS),
            read(WorkTables.CAUTIONS),
            List.copyOf(read(WorkTables.CLEARANCES).values()),
            List.copyOf(read(WorkTables.GROUNDS).values()),
            read(NumberTables.CONSTANTS),
            read(NumberTables.PRICES));
  }

  /**
   * Reads the bundled files.
   *
   * @throws CatalogueException if they have faults
   */
  public static CatalogueFiles load() {
    List<Problem> problems = new ArrayList<>();
    Map<String, Map<String, Row>> tables = new LinkedHashMap<>();
    for (String table : Tables.all().keySet()) {
      tables.put(table, new LinkedHashMap<>());
    }
    List<String> names =
        bundled("index.txt").lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    for (String name : names) {
      Table<?> table = Tables.all().get(tableName(name));
      Map<String, Row> rows = tables.get(table.name());
      new CsvText(table, name, false, problems)
          .rows(bundled(name))
          .forEach(
              (key, row) -> {
                Row earlier = rows.putIfAbsent(key, row);
                if (earlier != null) {
                  problems.add(
                      row.problem(
                          table.keyColumn(),
                          "\"" + key + "\" already stands in " + earlier.file()));
                }
              });
    }
    return checked(tables, problems);
  }

  /**
   * These files with an owner's own rows: a row whose key is known takes its place, others are
   * added at the end.
   *
   * @param fileOrFolder one CSV file, or a folder all of whose CSV files are taken in the order of
   *     their names
   * @throws CatalogueException if the owner's files have faults or do not fit the other tables
   */
  public CatalogueFiles with(Path fileOrFolder) {
    List<Problem> problems = new ArrayList<>();
    Map<String, Map<String, Row>> merged = new LinkedHashMap<>();
    tables.forEach((name, rows) -> merged.put(name, new LinkedHashMap<>(rows)));
    for (Path path : ownersFiles(fileOrFolder, problems)) {
      String file = path.getFileName().toString();
      Table<?> table = Tables.all().get(tableName(file));
      if (table == null) {
        problems.add(
            new Problem(
                file,
                0,
                "",
                "belongs to no table; its name must begin with one of "
                    + String.join(", ", Tables.all().keySet())
                    + "."
                    + Hint.of(tableName(file), Tables.all().keySet())));
        continue;
      }
      ownersText(path, problems)
          .forEach(
              text ->
                  merged
                      .get(table.name())
                      .putAll(new CsvText(table, file, true, problems).rows(text)));
    }
    return checked(merged, problems);
  }

  private static CatalogueFiles checked(
      Map<String, Map<String, Row>> tables, List<Problem> problems) {
    // Rows with faults are left out, so that references to them would be reported as faults too.
    if (problems.isEmpty()) {
      new CrossCheck(tables, problems).run();
    }
    if (!problems.isEmpty()) {
      throw new CatalogueException(problems);
    }
    return new CatalogueFiles(tables);
  }

  /** The engine's catalogue, in SI units. */
  public Catalogue catalogue() {
    return catalogue;
  }

  /**
   * The rows of a table by key, in their order.
   *
   * @throws IllegalArgumentException if there is no such table
   */
  public Map<String, Row> rows(String table) {
    Map<String, Row> rows = tables.get(table);
    if (rows == null) {
      throw new IllegalArgumentException("no table " + table);
    }
    return Collections.unmodifiableMap(rows);
  }

  private <T> Map<String, T> read(Table<T> table) {
    Map<String, T> records = new LinkedHashMap<>();
    tables.get(table.name()).forEach((key, row) -> records.put(key, table.read(row)));
    return records;
  }

  private static String tableName(String file) {
    int end = 0;
    while (end < file.length() && file.charAt(end) != '.' && file.charAt(end) != '-') {
      end++;
    }
    return file.substring(0, end);
  }

  private static String bundled(String name) {
    try (InputStream in = CatalogueFiles.class.getResourceAsStream(FOLDER + name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its file " + FOLDER + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Path> ownersFiles(Path fileOrFolder, List<Problem> problems) {
    if (!Files.isDirectory(fileOrFolder)) {
      return List.of(fileOrFolder);
    }
    try (Stream<Path> paths = Files.list(fileOrFolder)) {
      return paths.filter(path -> path.toString().endsWith(".csv")).sorted().toList();
    } catch (IOException e) {
      problems.add(new Problem(fileOrFolder.toString(), 0, "", "cannot be listed."));
      return List.of();
    }
  }

  /** The text of an owner's file without byte order mark, or nothing if it cannot be read. */
  private static Stream<String> ownersText(Path path, List<Problem> problems) {
    String file = path.getFileName().toString();
    try {
      String text =
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(Files.readAllBytes(path)))
              .toString();
      return Stream.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
    } catch (CharacterCodingException e) {
      problems.add(
          new Problem(file, 0, "", "is not UTF-8 text; save it as CSV in UTF-8 and try again."));
    } catch (IOException e) {
      problems.add(
          new Problem(file, 0, "", "cannot be read; check that it exists at " + path + "."));
    }
    return Stream.empty();
  }
}
