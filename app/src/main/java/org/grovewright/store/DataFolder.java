package org.grovewright.store;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Finds where the operating system wants a user's data. */
public final class DataFolder {
  /** Environment variable that names another folder, or a PostgreSQL address. */
  public static final String VARIABLE = "GROVEWRIGHT_DATA";

  private DataFolder() {}

  /**
   * The address to use.
   *
   * @param asked what the owner asked for on the command line, if anything
   * @param environment the environment variables
   * @param systemName the operating system's name as Java gives it
   * @param home the user's home folder
   */
  public static StoreAddress find(
      Optional<String> asked, Map<String, String> environment, String systemName, Path home) {
    return asked
        .or(() -> value(environment, VARIABLE))
        .map(StoreAddress::parse)
        .orElseGet(() -> new StoreAddress.Folder(usual(environment, systemName, home)));
  }

  private static Path usual(Map<String, String> environment, String systemName, Path home) {
    String system = systemName.toLowerCase(Locale.ROOT);
    if (system.startsWith("windows")) {
      return value(environment, "APPDATA")
          .map(Path::of)
          .orElse(home.resolve("AppData").resolve("Roaming"))
          .resolve("Grovewright");
    }
    if (system.startsWith("mac")) {
      return home.resolve("Library").resolve("Application Support").resolve("Grovewright");
    }
    // The base directory rules of freedesktop.org: a relative path there is to be ignored.
    return value(environment, "XDG_DATA_HOME")
        .map(Path::of)
        .filter(Path::isAbsolute)
        .orElse(home.resolve(".local").resolve("share"))
        .resolve("grovewright");
  }

  private static Optional<String> value(Map<String, String> environment, String name) {
    return Optional.ofNullable(environment.get(name)).filter(text -> !text.isBlank());
  }
}
