package org.grovewright.web.api;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/** The words of the screens by language. */
public final class Texts {
  /** Languages there are, the one that stands in for missing words first. */
  public static final List<String> LANGUAGES = List.of("en", "es");

  private static final Map<String, Map<String, String>> LOADED = new ConcurrentHashMap<>();

  private Texts() {}

  /**
   * The texts of a language by key; what it lacks is in English.
   *
   * @throws ApiException if there is no such language
   */
  public static Map<String, String> of(String language) {
    if (!LANGUAGES.contains(language)) {
      throw new ApiException(
          404,
          "missing",
          "There are no texts in this language; there are " + String.join(", ", LANGUAGES) + ".");
    }
    return LOADED.computeIfAbsent(language, Texts::load);
  }

  private static Map<String, String> load(String language) {
    Map<String, String> texts = new TreeMap<>();
    for (String one : List.of(LANGUAGES.get(0), language)) {
      Properties properties = new Properties();
      String name = "/org/grovewright/texts/messages_" + one + ".properties";
      try (InputStream in = Texts.class.getResourceAsStream(name)) {
        if (in != null) {
          properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      properties.stringPropertyNames().forEach(key -> texts.put(key, properties.getProperty(key)));
    }
    return texts;
  }
}
