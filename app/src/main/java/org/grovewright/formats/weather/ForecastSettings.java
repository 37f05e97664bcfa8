package org.grovewright.formats.weather;

import com.fasterxml.jackson.core.JsonPointer;
import java.io.IOException;
import java.io.Reader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.function.UnaryOperator;
import org.grovewright.formats.words.Nearest;

/**
 * How to ask a forecast service, read from a properties file of the owner's.
 *
 * <p>{@code address} is the address with {@code {latitude}}, {@code {longitude}} and, where the
 * service wants one, {@code {key}}, which is read from the environment variable named by {@code
 * key_variable}. Each other line names a column as in a weather table ({@code date}, {@code
 * tmin_c}, {@code rain_mm} ...) and says by a JSON pointer (RFC 6901) where in the answer it
 * stands: as a list of the values of all days or, if {@code each} points to a list of days, within
 * one day.
 *
 * @param file name of the file, for messages
 * @param address address with the places of latitude and longitude still in it
 * @param timeout longest wait for the whole answer
 * @param each list of days in the answer, if it has one
 * @param columns pointer of each column by its heading
 */
public record ForecastSettings(
    String file,
    String address,
    Duration timeout,
    Optional<JsonPointer> each,
    Map<String, JsonPointer> columns) {
  private static final int USUAL_SECONDS = 10;
  private static final int MOST_SECONDS = 120;

  /** Copies the columns in their order. */
  public ForecastSettings {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
  }

  /**
   * Reads settings.
   *
   * @param environment the value of an environment variable, or null
   * @throws WeatherFileException if the file cannot be used
   */
  public static ForecastSettings read(Path path, UnaryOperator<String> environment) {
    String file = path.toString();
    Properties lines = new Properties();
    try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
      lines.load(reader);
    } catch (NoSuchFileException e) {
      throw fault(file, "", "there is no such file");
    } catch (IOException | IllegalArgumentException e) {
      throw fault(file, "", "cannot be read as a properties file: " + e.getMessage());
    }
    String address = lines.getProperty("address", "").strip();
    if (address.isEmpty()) {
      throw fault(file, "address", "is missing; give the address of the forecast service");
    }
    address = withKey(file, address, lines.getProperty("key_variable"), environment);
    checkAddress(file, address);
    Duration timeout = timeout(file, lines);
    Optional<JsonPointer> each =
        Optional.ofNullable(lines.getProperty("each")).map(text -> pointer(file, "each", text));
    Map<String, JsonPointer> columns = new LinkedHashMap<>();
    for (String name : lines.stringPropertyNames().stream().sorted().toList()) {
      if (!List.of("address", "key_variable", "timeout_seconds", "each").contains(name)) {
        WeatherColumn.Heading heading = WeatherColumn.Heading.of(name);
        if (heading == null || heading.column() == WeatherColumn.MONTH) {
          throw fault(
              file,
              Nearest.shorten(name),
              "is no column of weather; the columns are " + WeatherColumn.Heading.all());
        }
        columns.put(name, pointer(file, name, lines.getProperty(name)));
      }
    }
    for (String needed : List.of("date", "tmin", "tmax")) {
      if (columns.keySet().stream().noneMatch(name -> name.startsWith(needed))) {
        throw fault(file, needed, "is missing; say by a JSON pointer where in the answer it is");
      }
    }
    return new ForecastSettings(file, address, timeout, each, columns);
  }

  private static String withKey(
      String file, String address, String variable, UnaryOperator<String> environment) {
    if (!address.contains("{key}")) {
      return address;
    }
    if (variable == null) {
      throw fault(
          file,
          "key_variable",
          "is missing; name the environment variable that holds the key of the address");
    }
    String key = environment.apply(variable.strip());
    if (key == null || key.isEmpty()) {
      throw fault(file, "key_variable", "names " + variable + ", which is not set");
    }
    return address.replace("{key}", java.net.URLEncoder.encode(key, StandardCharsets.UTF_8));
  }

  private static void checkAddress(String file, String address) {
    try {
      URI uri = URI.create(at(address, 0, 0));
      if (("http".equals(uri.getScheme()) || "https".equals(uri.getScheme()))
          && uri.getHost() != null) {
        return;
      }
    } catch (IllegalArgumentException e) {
      // Told below.
    }
    throw fault(file, "address", "must be an address that begins with https:// or http://");
  }

  private static Duration timeout(String file, Properties lines) {
    String text = lines.getProperty("timeout_seconds", String.valueOf(USUAL_SECONDS)).strip();
    if (text.matches("\\d{1,3}")) {
      int seconds = Integer.parseInt(text);
      if (seconds >= 1 && seconds <= MOST_SECONDS) {
        return Duration.ofSeconds(seconds);
      }
    }
    throw fault(file, "timeout_seconds", "must be a whole number from 1 to " + MOST_SECONDS);
  }

  private static JsonPointer pointer(String file, String name, String text) {
    try {
      return JsonPointer.compile(text.strip());
    } catch (IllegalArgumentException e) {
      throw fault(file, name, "must be a JSON pointer such as /daily/dates");
    }
  }

  private static WeatherFileException fault(String file, String name, String message) {
    return new WeatherFileException(file, List.of(new WeatherProblem(0, name, message)));
  }

  /** The address for a place. */
  URI at(double latitudeDeg, double longitudeDeg) {
    return URI.create(at(address, latitudeDeg, longitudeDeg));
  }

  private static String at(String address, double latitudeDeg, double longitudeDeg) {
    return address
        .replace("{latitude}", String.format(Locale.ROOT, "%.4f", latitudeDeg))
        .replace("{longitude}", String.format(Locale.ROOT, "%.4f", longitudeDeg));
  }

  /** Name of the service for messages: its host, without anything secret. */
  String host() {
    return at(0, 0).getHost();
  }
}
