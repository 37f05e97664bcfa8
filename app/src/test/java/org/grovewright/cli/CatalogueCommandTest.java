package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.catalogue.files.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CatalogueCommandTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... words) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    return new CommandLine(new CatalogueCommand())
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(err))
        .execute(words);
  }

  @Test
  void listsTheTables() {
    assertThat(run()).isZero();
    assertThat(out.toString().lines().skip(1).map(line -> line.split(" ", 2)[0]))
        .containsExactlyElementsOf(Tables.all().keySet());
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void listsTheRowsOfEveryTableInColumns() {
    for (String table : Tables.all().keySet()) {
      assertThat(run(table)).isZero();
      assertThat(out.toString().lines())
          .as(table)
          .hasSize(CatalogueFiles.load().rows(table).size() + 1);
    }
  }

  @Test
  void setsNumbersFlushRight() {
    run("textures");
    assertThat(out.toString().lines().toList())
        .contains(
            "sand             Sand                                 10"
                + "                      5                     50                    1430"
                + "             12");
  }

  @Test
  void showsOneRowWithUnitsAndSource() {
    assertThat(run("species", "avocado")).isZero();
    assertThat(out.toString())
        .containsPattern("mature_height_m +height when mature +9 m\n")
        .containsPattern("salinity_threshold_ds_per_m .* 1.3 dS/m\n")
        .containsPattern("source .*FAO-56");
  }

  @Test
  void describesColumns() {
    assertThat(run("species", "--columns")).isZero();
    assertThat(out.toString())
        .containsPattern("mature_height_m +yes +a number from 0.02 to 60 m +height when mature\n")
        .containsPattern("caution +no +a key of");
  }

  @Test
  void printsCsvThatCanBeReadBack(@TempDir Path folder) throws IOException {
    CatalogueFiles bundled = CatalogueFiles.load();
    for (String table : Tables.all().keySet()) {
      assertThat(run(table, "--csv")).isZero();
      Path file = Files.writeString(folder.resolve(table + ".csv"), out.toString());
      CatalogueFiles again = bundled.with(file);
      assertThat(again.catalogue()).as(table).isEqualTo(bundled.catalogue());
    }
  }

  @Test
  void laysTheOwnersFileOver(@TempDir Path folder) throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("prices.csv"),
            "key,pack_size,pack_unit,amount,currency\nmango,1,piece,12.25,USD\n");
    assertThat(run("prices", "mango", "--csv", "--with", file.toString())).isZero();
    assertThat(out)
        .hasToString(
            """
            key,pack_size,pack_unit,amount,currency,source
            mango,1,piece,12.25,USD,owner's file prices.csv
            """);
  }

  @Test
  void refusesUnknownWordsWithAHint() {
    assertThat(run("speces")).isEqualTo(2);
    assertThat(err).hasToString("\"speces\" is not a table. Did you mean \"species\"?\n");
    assertThat(out.toString()).isEmpty();
    assertThat(run("species", "avacado")).isEqualTo(2);
    assertThat(err).hasToString("\"avacado\" is not a key of species. Did you mean \"avocado\"?\n");
    assertThat(run("weather")).isEqualTo(2);
    assertThat(err.toString()).startsWith("\"weather\" is not a table. Known are species, ");
  }

  @Test
  void refusesFaultyFilesWithEveryFault(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("prices.csv"), "key\nx\n");
    assertThat(run("prices", "--with", file.toString())).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(4).allMatch(line -> line.startsWith("prices.csv"));
  }
}
