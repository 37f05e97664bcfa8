package org.grovewright.texts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The scripts of the screens ask only for texts that there are. */
class ScreenTextsTest {
  private static final Path STATIC =
      Path.of("src", "main", "resources", "org", "grovewright", "web", "static");

  /** A call of t or count with a key written out. */
  private static final Pattern CALL =
      Pattern.compile("\\b(t|count)\\(\\s*'([A-Za-z][A-Za-z0-9.-]*)'");

  private static Map<Path, String> scripts() throws IOException {
    Map<Path, String> scripts = new TreeMap<>();
    try (Stream<Path> files = Files.walk(STATIC)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".js")).toList()) {
        scripts.put(file, Files.readString(file));
      }
    }
    return scripts;
  }

  @Test
  void everyKeyThatAScriptNamesHasATextInEveryLanguage() throws IOException {
    List<String> missing = new ArrayList<>();
    int found = 0;
    for (Map.Entry<Path, String> script : scripts().entrySet()) {
      Matcher call = CALL.matcher(script.getValue());
      while (call.find()) {
        found++;
        boolean counted = call.group(1).equals("count");
        List<String> keys =
            counted
                ? List.of(call.group(2) + ".one", call.group(2) + ".other")
                : List.of(call.group(2));
        for (String key : keys) {
          if (!Language.ENGLISH.texts().containsKey(key)) {
            missing.add(STATIC.relativize(script.getKey()) + " " + key);
          }
        }
      }
    }
    assertThat(missing).isEmpty();
    assertThat(found).isGreaterThan(200);
  }

  @Test
  void whatTheDeviceKeepsOfTheProgramIsThere() throws IOException {
    String worker = Files.readString(STATIC.resolve("service-worker.js"));
    Matcher file = Pattern.compile("'/static/([^']+)'").matcher(worker);
    List<String> kept = new ArrayList<>();
    while (file.find()) {
      kept.add(file.group(1));
      assertThat(STATIC.resolve(file.group(1))).exists();
    }
    // Whatever a page of the garden loads must be kept with it.
    assertThat(kept).contains("pages/today.js", "pages/plant.js", "garden/journal.js");
    Pattern load = Pattern.compile("from '(\\.[^']+)'");
    for (String one : kept.stream().filter(k -> k.endsWith(".js")).toList()) {
      Matcher needed = load.matcher(Files.readString(STATIC.resolve(one)));
      while (needed.find()) {
        Path wanted = STATIC.resolve(one).resolveSibling(needed.group(1)).normalize();
        assertThat(kept).contains(STATIC.relativize(wanted).toString().replace('\\', '/'));
      }
    }
  }
}
