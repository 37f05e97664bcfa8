package org.grovewright.catalogue.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.grovewright.catalogue.Clearance;
import org.grovewright.catalogue.TypicalPrice;
import org.grovewright.model.FixtureKind;
import org.grovewright.quantity.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An owner's own rows, and what is said about faulty ones. */
class OwnersFilesTest {
  private static final CatalogueFiles BUNDLED = CatalogueFiles.load();
  private static final String PRICES = "key,pack_size,pack_unit,amount,currency\n";
  private static final String TEXTURES =
      "key,name,field_capacity_percent,wilting_point_percent,infiltration_mm_per_h,"
          + "bulk_density_kg_per_m3,swell_percent,readily_evaporable_mm\n";

  @TempDir Path folder;

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static List<Problem> problems(Path path) {
    CatalogueException thrown =
        catchThrowableOfType(CatalogueException.class, () -> BUNDLED.with(path));
    assertThat(thrown).as("faults in " + path).isNotNull();
    return thrown.problems();
  }

  private List<Problem> problems(String name, String text) throws IOException {
    return problems(file(name, text));
  }

  @Test
  void replacesAndAddsRows() throws IOException {
    Path prices = file("prices.csv", PRICES + "avocado,1,piece,51.50,EUR\n");
    Path soils = file("textures-mine.csv", TEXTURES + "river-silt,River silt,33,9,8,1350,25,9\n");
    CatalogueFiles files = BUNDLED.with(prices).with(soils);
    assertThat(files.catalogue().prices().get("avocado"))
        .isEqualTo(
            new TypicalPrice("avocado", 1, Kind.COUNT, 51.5, "EUR", "owner's file prices.csv"));
    assertThat(files.catalogue().textures().keySet()).endsWith("river-silt").hasSize(13);
    assertThat(BUNDLED.catalogue().textures()).hasSize(12);
    assertThat(files.catalogue().prices().keySet())
        .containsExactlyElementsOf(BUNDLED.catalogue().prices().keySet());
  }

  @Test
  void readsAWholeFolder() throws IOException {
    file("prices.csv", PRICES + "mango,1,piece,9,USD\n");
    file("textures.csv", TEXTURES + "loam,My loam,30,15,15,1400,25,9\n");
    file("notes.txt", "not a table");
    CatalogueFiles files = BUNDLED.with(folder);
    assertThat(files.catalogue().textures().get("loam").name()).isEqualTo("My loam");
    assertThat(files.catalogue().prices().get("mango").amount()).isEqualTo(9);
  }

  @Test
  void takesWhatSpreadsheetsWrite() throws IOException {
    Path file =
        file(
            "prices.csv",
            """
            \uFEFFkey;pack_size;pack_unit;amount;currency

            # my nursery
            avocado; 1 ;piece;40;USD
            ;;;;
            """
                .replace("\n", "\r\n"));
    assertThat(BUNDLED.with(file).catalogue().prices().get("avocado").amount()).isEqualTo(40);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "avocado,1,piece,cheap,USD | amount "
            + "| \"cheap\" cannot be used; allowed is a number from 0 to 1000000000.",
        "avocado,1,piece,,USD | amount | is empty; allowed is a number from 0 to 1000000000.",
        "avocado,1,pieces,4,USD | pack_unit "
            + "| \"pieces\" cannot be used; allowed is one of piece, m, kg, m3, litre."
            + " Did you mean \"piece\"?",
        "avocado,0,piece,4,USD | pack_size "
            + "| \"0\" cannot be used; allowed is a number from 0.000001 to 1000000.",
        "avocado,1,piece,4,dollars | currency "
            + "| \"dollars\" cannot be used; allowed is an ISO 4217 code of three capital letters.",
        "avacado,1,piece,4,USD | key "
            + "| \"avacado\" is not among the items that can be bought. Did you mean \"avocado\"?",
        "Avocado,1,piece,4,USD | key "
            + "| \"Avocado\" cannot be used; allowed is a key of lower case letters, digits, hyphens"
            + " and points.",
        "avocado,1,piece,\"4,50\",USD | amount "
            + "| \"4,50\" cannot be used; allowed is a number from 0 to 1000000000."
            + " Write the decimal with a point, not a comma.",
      })
  void namesTheCellAndWhatIsAllowed(String row, String column, String message) throws IOException {
    assertThat(problems("prices.csv", PRICES + "mango,1,piece,3,USD\n" + row))
        .containsExactly(new Problem("prices.csv", 3, column, message));
  }

  @Test
  void takesWordsOfAChoiceInAnySpelling() throws IOException {
    Path file = file("clearances.csv", "kind,trunk_m,crown_m\nSeptic_Field,9,4\n");
    assertThat(BUNDLED.with(file).catalogue().clearances())
        .hasSize(FixtureKind.values().length)
        .filteredOn(clearance -> clearance.kind() == FixtureKind.SEPTIC_FIELD)
        .singleElement()
        .extracting(Clearance::trunkM)
        .isEqualTo(9.0);
  }

  @Test
  void reportsEveryFaultOfEveryFile() throws IOException {
    file("prices.csv", PRICES + "avocado,x,piece,y,USD\nmango,1,box,3,USD\n");
    file("textures.csv", TEXTURES + "mud,Mud,10,20,8,1350,25,9\n");
    assertThat(problems(folder))
        .extracting(p -> p.file() + ":" + p.line() + ":" + p.column())
        .containsExactly(
            "prices.csv:2:pack_size",
            "prices.csv:2:amount",
            "prices.csv:3:pack_unit",
            "textures.csv:2:field_capacity_percent");
  }

  @Test
  void saysWhichOfTwoNumbersMustBeMore() throws IOException {
    assertThat(problems("textures.csv", TEXTURES + "mud,Mud,10,20,8,1350,25,9\n"))
        .singleElement()
        .hasToString(
            "textures.csv, line 2, column field_capacity_percent: \"10\" must be more than"
                + " wilting_point_percent, which is 20.");
  }

  @Test
  void countsLinesOfTextInQuotes() throws IOException {
    String cautions =
        "key,title,text\nmine,Mine,\"two\nlines\"\nother,Other,\"three\nmore\nlines\"\nBAD,Bad,bad";
    assertThat(problems("cautions.csv", cautions))
        .singleElement()
        .satisfies(problem -> assertThat(problem.line()).isEqualTo(7));
    assertThat(problems("cautions.csv", cautions.replace("\n", "\r\n")))
        .singleElement()
        .satisfies(problem -> assertThat(problem.line()).isEqualTo(7));
  }

  @Test
  void reportsHeadersThatDoNotFit() throws IOException {
    assertThat(problems("prices.csv", "key,pack_sise,pack_unit,amount,key\navocado,1,piece,4,x\n"))
        .extracting(Problem::toString)
        .containsExactly(
            "prices.csv, line 1, column pack_sise: is not a column of the table \"prices\"."
                + " Did you mean \"pack_size\"?",
            "prices.csv, line 1, column key: stands twice in the header.",
            "prices.csv, line 1, column pack_size: is missing; it holds: content of the usual pack"
                + " in the unit of the row.",
            "prices.csv, line 1, column currency: is missing; it holds: ISO 4217 code of the"
                + " money.");
  }

  @Test
  void reportsRowsOfTheWrongLength() throws IOException {
    assertThat(problems("prices.csv", PRICES + "avocado,1,piece,1,000,USD\n"))
        .containsExactly(
            new Problem(
                "prices.csv",
                2,
                "",
                "has 6 cells, but the header has 5. Put a text that holds the separator in double"
                    + " quotes."));
  }

  @Test
  void reportsDoubledKeys() throws IOException {
    assertThat(problems("prices.csv", PRICES + "mango,1,piece,3,USD\nmango,1,piece,4,USD\n"))
        .containsExactly(
            new Problem("prices.csv", 3, "key", "\"mango\" already stands on line 2."));
  }

  @Test
  void reportsFilesThatCannotBeUsed() throws IOException {
    assertThat(problems("specie.csv", "key\n"))
        .singleElement()
        .extracting(Problem::message)
        .asString()
        .startsWith("belongs to no table")
        .endsWith("Did you mean \"species\"?");
    assertThat(problems("prices.csv", ""))
        .singleElement()
        .extracting(Problem::message)
        .isEqualTo("is empty; it needs a first line with the names of the columns.");
    assertThat(problems("prices.csv", PRICES + "\"avocado,1\n"))
        .singleElement()
        .extracting(Problem::message)
        .asString()
        .startsWith("cannot be read as CSV");
    Path latin = folder.resolve("parts.csv");
    Files.write(latin, "key,name\npi\u00f1a".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(problems(latin).toString()).contains("is not UTF-8 text");
    assertThat(problems(folder.resolve("pipes.csv")).toString()).contains("cannot be read");
  }

  @Test
  void reportsTasksInACircle() throws IOException {
    String header =
        "key,name,measure,minutes_per_unit,set_up_minutes,wait_hours,after,max_people,cautions\n";
    assertThat(
            problems(
                "tasks.csv",
                header
                    + "dig-pond,Dig a pond,volume,60,10,0,line-pond,2,trench\n"
                    + "line-pond,Line a pond,area,5,10,0,dig-pond,2,\n"
                    + "fill-pond,Fill a pond,once,5,0,0,line-pnd,2,deep-water\n"))
        .extracting(p -> p.line() + " " + p.column() + " " + p.message())
        .containsExactlyInAnyOrder(
            "4 after \"line-pnd\" is not among the tasks. Did you mean \"line-pond\"?",
            "4 cautions \"deep-water\" is not among the cautions.",
            "2 after \"dig-pond\" would have to come before itself; break the circle.",
            "3 after \"line-pond\" would have to come before itself; break the circle.");
  }

  @Test
  void reportsUnitsThatDoNotFitTheKind() throws IOException {
    assertThat(problems("constants.csv", "key,name,value,unit,kind\nmine,limit,3,kg,velocity\n"))
        .containsExactly(
            new Problem(
                "constants.csv",
                2,
                "unit",
                "\"kg\" is not a unit of the kind velocity; allowed is m/s, km/h, mm/h, mm/d."));
  }

  @Test
  void reportsAKeyThatAnotherTableHas() throws IOException {
    String parts = "key,name,role,fits,loss_coefficient\navocado,Avocado box,box,pipe.pe-116,0\n";
    assertThat(problems("parts.csv", parts))
        .extracting(Problem::message)
        .containsExactlyInAnyOrder(
            "\"avocado\" is already a key of species.",
            "\"pipe.pe-116\" is not among the pipes. Did you mean \"pipe.pe-16\"?");
  }
}
