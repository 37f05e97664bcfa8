package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.grovewright.sheets.OutputFolder.RefusedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {
  @TempDir private Path folder;

  private static Map<String, String> sheets(String... namesAndTexts) {
    Map<String, String> sheets = new LinkedHashMap<>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      sheets.put(namesAndTexts[i], namesAndTexts[i + 1]);
    }
    return sheets;
  }

  private String listing() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.map(path -> folder.relativize(path).toString()).sorted().toList().toString();
    }
  }

  @Test
  void makesTheFolderAndThoseAboveIt() throws Exception {
    new OutputFolder(folder.resolve("a/b c/plan"), false).write(sheets("x.txt", "ä\n"));
    assertThat(folder.resolve("a/b c/plan/x.txt")).hasContent("ä");
    assertThat(listing()).isEqualTo("[, a, a/b c, a/b c/plan, a/b c/plan/x.txt]");
  }

  @Test
  void replacesAnEarlierPlanAndLeavesNothingBehind() throws Exception {
    OutputFolder out = new OutputFolder(folder.resolve("plan"), false);
    out.write(sheets("x.txt", "one", "y.txt", "two"));
    out.write(sheets("x.txt", "three", "y.txt", "four"));
    assertThat(folder.resolve("plan/x.txt")).hasContent("three");
    assertThat(listing()).isEqualTo("[, plan, plan/x.txt, plan/y.txt]");
  }

  @Test
  void leavesAFolderWithOtherFilesAlone() throws Exception {
    Path plan = Files.createDirectory(folder.resolve("plan"));
    Files.writeString(plan.resolve("letter.txt"), "mine");
    Files.writeString(plan.resolve("x.txt"), "old");
    OutputFolder out = new OutputFolder(plan, false);
    assertThatThrownBy(() -> out.write(sheets("x.txt", "new")))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("letter.txt")
        .hasMessageContaining("--force");
    assertThat(plan.resolve("x.txt")).hasContent("old");
    assertThat(listing()).isEqualTo("[, plan, plan/letter.txt, plan/x.txt]");
  }

  @Test
  void withForceReplacesOnlyItsOwnFiles() throws Exception {
    Path plan = Files.createDirectory(folder.resolve("plan"));
    Files.writeString(plan.resolve("letter.txt"), "mine");
    new OutputFolder(plan, true).write(sheets("x.txt", "new"));
    assertThat(plan.resolve("letter.txt")).hasContent("mine");
    assertThat(plan.resolve("x.txt")).hasContent("new");
    assertThat(listing()).isEqualTo("[, plan, plan/letter.txt, plan/x.txt]");
  }

  @Test
  void aFileInTheWayIsRefused() throws Exception {
    Path file = Files.writeString(folder.resolve("plan"), "mine");
    assertThatThrownBy(() -> new OutputFolder(file, true).write(sheets("x.txt", "new")))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("is a file");
    assertThat(file).hasContent("mine");
  }

  /** A sheet whose name cannot be written stands for a disk that fails half way. */
  @Test
  void aFailureHalfWayLeavesTheEarlierPlanWhole() throws Exception {
    OutputFolder out = new OutputFolder(folder.resolve("plan"), false);
    out.write(sheets("x.txt", "one"));
    assertThatThrownBy(() -> out.write(sheets("x.txt", "two", "no/such/folder.txt", "three")))
        .isInstanceOf(IOException.class);
    assertThat(folder.resolve("plan/x.txt")).hasContent("one");
    assertThat(listing()).isEqualTo("[, plan, plan/x.txt]");
  }

  @Test
  void aLinkStaysALink() throws Exception {
    Path real = Files.createDirectory(folder.resolve("real"));
    Path link = Files.createSymbolicLink(folder.resolve("plan"), real);
    new OutputFolder(link, false).write(sheets("x.txt", "one"));
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(real.resolve("x.txt")).hasContent("one");
  }
}
