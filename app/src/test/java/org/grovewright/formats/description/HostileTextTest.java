package org.grovewright.formats.description;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts that are no description must be refused in words, whatever they are. */
class HostileTextTest {
  @TempDir Path folder;

  private static Problem only(String text) {
    List<Problem> problems = Descriptions.problems(text);
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  private Problem onlyOfFile(byte[] bytes) throws Exception {
    Path file = Files.write(folder.resolve("grove.yaml"), bytes);
    DescriptionException e =
        catchThrowableOfType(DescriptionException.class, () -> Descriptions.READER.read(file));
    assertThat(e.problems()).hasSize(1);
    return e.problems().get(0);
  }

  @Test
  void emptyFile() {
    assertThat(only("").message()).contains("the file is empty");
    assertThat(only("# only a remark\n").message()).contains("the file is empty");
  }

  @Test
  void textThatIsNoMapping() {
    assertThat(only("hello\n").message()).contains("must be a group of keys");
    assertThat(only("- a\n- b\n").message()).contains("must be a group of keys");
  }

  @Test
  void tabs() {
    Problem problem = only("site:\n\tname: x\n");
    assertThat(problem.message()).contains("indent with spaces");
    assertThat(problem.line()).isEqualTo(2);
  }

  @Test
  void wrongIndent() {
    Problem problem = only("site:\n   name: x\n  latitude: 3\n");
    assertThat(problem.message()).contains("indent");
    assertThat(problem.line()).isEqualTo(3);
  }

  @Test
  void colonInText() {
    Problem problem = only("site:\n  name: x: y\n");
    assertThat(problem.message()).contains("colon");
    assertThat(problem.line()).isEqualTo(2);
  }

  @Test
  void unclosedListAndQuote() {
    assertThat(only("site: [1, 2\nsoil: 3\n").message()).contains("not closed");
    assertThat(only("site: 'abc\nsoil: 3\n").message()).contains("quote");
  }

  @Test
  void duplicateKeys() {
    String text = Descriptions.starter() + "\nunits: metric\n";
    Problem problem = only(text);
    assertThat(problem.path()).isEqualTo("units");
    assertThat(problem.message()).startsWith("is given twice; first on line ");
    assertThat(problem.line()).isEqualTo((int) text.lines().count());
  }

  @Test
  void aliasBomb() {
    StringBuilder bomb = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x]\n");
    for (char c = 'b'; c < 'l'; c++) {
      bomb.append(c).append(": &").append(c).append(" [");
      bomb.append(("*" + (char) (c - 1) + ", ").repeat(8)).append("x]\n");
    }
    Problem problem = only(bomb.toString());
    assertThat(problem.message()).contains("the alias *a is not allowed");
    assertThat(problem.line()).isEqualTo(2);
  }

  @Test
  void endlessNesting() {
    assertThat(only("site: " + "[".repeat(500_000)).message()).contains("nested too deep");
    assertThat(only("site: " + "{a: ".repeat(100_000)).message()).contains("nested too deep");
    assertThat(only("- ".repeat(100_000)).message()).contains("nested too deep");
  }

  @Test
  void severalDocuments() {
    Problem problem = only(Descriptions.starter() + "---\nsite: {}\n");
    assertThat(problem.message()).contains("second description");
  }

  @Test
  void keyThatIsAList() {
    assertThat(Descriptions.problems("? [a, b]\n: c\n"))
        .anySatisfy(p -> assertThat(p.message()).contains("a key must be a word"));
  }

  @Test
  void binaryJunk() throws Exception {
    byte[] junk = new byte[4096];
    new Random(7).nextBytes(junk);
    assertThat(onlyOfFile(junk).message()).containsAnyOf("not text", "not UTF-8");
    assertThat(onlyOfFile(new byte[100]).message()).contains("not text");
  }

  @Test
  void otherEncodings() throws Exception {
    byte[] latin1 = "site:\n  name: Gar\u00e7on\n".getBytes(StandardCharsets.ISO_8859_1);
    Problem problem = onlyOfFile(latin1);
    assertThat(problem.message()).contains("UTF-8");
    assertThat(problem.line()).isEqualTo(2);
    assertThat(problem.column()).isEqualTo(12);
    assertThat(onlyOfFile("site:\n".getBytes(StandardCharsets.UTF_16)).message())
        .contains("UTF-16");
  }

  @Test
  void byteOrderMarkAndWindowsLineEndsAreNoMistakes() throws Exception {
    String text = "\uFEFF" + Descriptions.starter().replace("\n", "\r\n");
    Path file = Files.writeString(folder.resolve("grove.yaml"), text);
    assertThat(Descriptions.READER.read(file)).isEqualTo(Descriptions.read(Descriptions.starter()));
  }

  @Test
  void fileTooLarge() throws Exception {
    Path file = folder.resolve("grove.yaml");
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(50L * 1024 * 1024 * 1024);
    }
    assertThatThrownBy(() -> Descriptions.READER.read(file)).hasMessageContaining("2 MB");
  }

  @Test
  void noSuchFileAndFolder() {
    assertThatThrownBy(() -> Descriptions.READER.read(folder.resolve("none.yaml")))
        .hasMessageContaining("no such file");
    assertThatThrownBy(() -> Descriptions.READER.read(folder)).hasMessageContaining("folder");
  }

  @Test
  void allMistakesAreToldAtOnce() {
    String text =
        Descriptions.starter()
            .replace("elevation: 60 ft", "elevation: 60 gal")
            .replace("texture: loam", "texture: laom")
            .replace("units: us", "units: imperial")
            .replace("people: 2", "people: none");
    assertThat(Descriptions.problems(text))
        .extracting(Problem::path)
        .containsExactly("site.elevation", "soil.texture", "crew.people", "units");
  }

  /** Any single spoiled line gives a reading or problems, never another failure. */
  @Property(tries = 200)
  void spoiledLines(@ForAll @IntRange(min = 0, max = 4000) int at, @ForAll String junk) {
    StringBuilder text = new StringBuilder();
    int[] line = {0};
    int spoiled = (int) (at % Descriptions.starter().lines().count());
    Descriptions.starter()
        .lines()
        .forEach(l -> text.append(line[0]++ == spoiled ? l + junk : l).append('\n'));
    Descriptions.problems(text.toString());
  }

  /** Any cut through the text gives a reading or problems, never another failure. */
  @Property(tries = 200)
  void cutText(
      @ForAll @IntRange(min = 0, max = 4000) int from,
      @ForAll @IntRange(min = 0, max = 300) int length) {
    String starter = Descriptions.starter();
    int start = Math.min(from, starter.length());
    int end = Math.min(start + length, starter.length());
    Descriptions.problems(starter.substring(0, start) + starter.substring(end));
  }
}
