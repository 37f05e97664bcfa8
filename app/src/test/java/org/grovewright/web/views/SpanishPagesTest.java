package org.grovewright.web.views;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.model.Preferences.Units;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.grovewright.texts.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever the pages show of a plan can be said in every language. */
class SpanishPagesTest {
  private static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  private static final Language SPANISH = Language.of("es");

  static Plan plan(String example) {
    Path file = Path.of("..", "examples", example);
    return Planner.plan(
        new DescriptionReader(CATALOGUE, new WeatherOfDescription()).read(file), CATALOGUE);
  }

  /** The first example with salty water and a tight limit of a day and of a week. */
  static Plan strict() {
    Path file = Path.of("..", "examples", "demo.yaml");
    try {
      String text = Files.readString(file);
      String supply = "supply:\n";
      assertThat(text).containsOnlyOnce(supply);
      return Planner.plan(
          new DescriptionReader(CATALOGUE, new WeatherOfDescription())
              .read(
                  text.replace(supply, supply + "  weekly_limit: 2 m3\n  salinity: 1.1 dS/m\n"),
                  "demo.yaml",
                  file.getParent()),
          CATALOGUE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> unsaid(Set<String> said) {
    return said.stream().filter(text -> !SPANISH.canSay(text)).toList();
  }

  @Test
  void everythingInTheCatalogueHasASpanishName() {
    assertThat(unsaid(SpokenTexts.of(CATALOGUE))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"demo.yaml", "us-gravity.yaml"})
  void everySentenceOfAPlanAndItsWorkingsHasATranslation(String example) {
    assertThat(unsaid(SpokenTexts.of(plan(example)))).isEmpty();
  }

  /** A drought rule brings remarks that the examples as they stand never make. */
  @Test
  void everySentenceOfAPlanWithAllowedDaysHasATranslation() throws IOException {
    String text =
        Files.readString(Path.of("..", "examples", "us-gravity.yaml"))
            .replace("  tank_volume:", "  days: [Sat]\n  tank_volume:");
    Plan plan =
        Planner.plan(
            new DescriptionReader(CATALOGUE, null).read(text, "grove.yaml", Path.of("")),
            CATALOGUE);
    assertThat(plan.findings()).extracting(f -> f.code()).contains("timer.days-apart");
    assertThat(unsaid(SpokenTexts.of(plan))).isEmpty();
    assertThat(Pages.texts(Pages.all(plan, "es")).values())
        .anySatisfy(shown -> assertThat(shown).isEqualTo("los días: sábado"));
  }

  @Test
  void noSentenceOfAnyPageIsLeftInEnglish() {
    Plan plan = plan("demo.yaml");
    Map<String, String> english = Pages.texts(Pages.all(plan, "en"));
    Map<String, String> spanish = Pages.texts(Pages.all(plan, "es"));
    assertThat(spanish.keySet()).isEqualTo(english.keySet());
    // Two words or more that read alike in both languages are only names and numbers.
    Pattern words = Pattern.compile("\\p{Ll}{3,} \\p{Ll}{3,}");
    assertThat(
            spanish.entrySet().stream()
                .filter(text -> words.matcher(text.getValue()).find())
                .filter(text -> text.getValue().equals(english.get(text.getKey())))
                .filter(text -> !text.getKey().endsWith("/cultivar"))
                .filter(text -> !text.getKey().endsWith("/latin"))
                .toList())
        .isEmpty();
  }

  @Test
  void everyShownFigureHasItsWorking() {
    Plan plan = plan("demo.yaml");
    Voice voice = Voice.of("es", Units.US, "USD");
    Set<String> shown = Pages.figures(Pages.all(plan, "es"));
    assertThat(shown).hasSizeGreaterThan(1000);
    for (String id : shown) {
      if (id.startsWith("advice.")) {
        // Figures of a day; AdviceViewTest opens them.
        continue;
      }
      FigureView view = FigureView.of(plan, id, voice).orElseThrow();
      assertThat(view.formula()).isNotBlank();
      view.inputs().stream()
          .filter(input -> !input.figure().isEmpty())
          .forEach(input -> assertThat(plan.figure(input.figure())).isPresent());
    }
  }
}
