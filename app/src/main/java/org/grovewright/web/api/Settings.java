package org.grovewright.web.api;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.grovewright.model.Preferences.Units;
import org.grovewright.texts.Language;

/** The settings an account may have, and what each may be. */
final class Settings {
  static final String LANGUAGE = "language";
  static final String UNITS = "units";
  static final String THEME = "theme";

  private static final Map<String, List<String>> ALLOWED =
      Map.of(
          LANGUAGE, Language.tags(),
          UNITS, List.of("metric", "us"),
          THEME, List.of("light", "dark", "system"));

  private Settings() {}

  /** Names of all settings. */
  static List<String> names() {
    return List.of(LANGUAGE, UNITS, THEME);
  }

  static void check(String name, String value) {
    List<String> allowed = ALLOWED.get(name);
    if (!allowed.contains(value)) {
      throw ApiException.field(name, "'{0}' must be one of {1}.", name, String.join(", ", allowed));
    }
  }

  static Units units(String value) {
    return Units.valueOf(value.toUpperCase(Locale.ROOT));
  }
}
