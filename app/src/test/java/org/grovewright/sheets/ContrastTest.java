package org.grovewright.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Text must stand out from its ground as WCAG 2.1 asks at level AA (1.4.3, from memory): 4.5:1. */
class ContrastTest {
  private static final Pattern COLOUR = Pattern.compile("--([a-z0-9-]+): (#[0-9a-f]{3,6});");

  /** The themes of a style sheet in their order: light, dark, print. */
  private static List<Map<String, String>> themes(String css) {
    List<Map<String, String>> themes = new ArrayList<>();
    Matcher matcher = COLOUR.matcher(css);
    while (matcher.find()) {
      if (themes.isEmpty() || themes.get(themes.size() - 1).containsKey(matcher.group(1))) {
        themes.add(new HashMap<>());
      }
      themes.get(themes.size() - 1).put(matcher.group(1), matcher.group(2));
    }
    return themes;
  }

  private static double luminance(String colour) {
    String hex = colour.length() == 4 ? colour.replaceAll("([0-9a-f])", "$1$1") : colour;
    double[] weights = {0.2126, 0.7152, 0.0722};
    double sum = 0;
    for (int i = 0; i < 3; i++) {
      double c = Integer.parseInt(hex.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
      sum += weights[i] * (c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
    }
    return sum;
  }

  private static double contrast(String a, String b) {
    double high = Math.max(luminance(a), luminance(b));
    double low = Math.min(luminance(a), luminance(b));
    return (high + 0.05) / (low + 0.05);
  }

  private static void readable(Map<String, String> theme, String text, String... grounds) {
    for (String ground : grounds) {
      assertThat(contrast(theme.get(text), theme.get(ground)))
          .as(text + " on " + ground)
          .isGreaterThanOrEqualTo(4.5);
    }
  }

  @Test
  void theMeasureItselfIsRight() {
    // Black on white is 21:1 by definition of the measure.
    assertThat(contrast("#000", "#ffffff")).isBetween(20.99, 21.01);
  }

  @Test
  void textOfTheReportIsReadableInEveryTheme() {
    List<Map<String, String>> themes = themes(Resources.text("report.css"));
    assertThat(themes).hasSize(3);
    for (Map<String, String> theme : themes) {
      readable(theme, "ink", "paper", "card", "stripe", "leaf-soft", "brick-soft");
      readable(theme, "quiet", "paper", "card", "stripe");
      readable(theme, "leaf", "paper", "card");
      readable(theme, "link", "paper", "card");
      readable(theme, "brick", "brick-soft", "card");
      readable(theme, "paper", "leaf");
    }
  }

  @Test
  void labelsAndPipesOfTheMapStandOut() {
    List<Map<String, String>> themes = themes(Resources.text("map.css"));
    assertThat(themes).hasSize(3);
    for (Map<String, String> theme : themes) {
      readable(theme, "m-ink", "m-sheet", "m-land");
      for (int zone = 0; zone < MapSvg.ZONE_STYLES; zone++) {
        // Lines need 3:1 (WCAG 2.1, 1.4.11, from memory).
        assertThat(contrast(theme.get("z" + zone), theme.get("m-land"))).isGreaterThanOrEqualTo(3);
      }
    }
  }
}
