package org.grovewright.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Opens the user's browser. */
final class Browser {
  private Browser() {}

  /** Opens an address; where that is not possible the printed address must do. */
  static void open(String address) {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    // The desktop classes of Java cost half a second and need a screen; these do the same.
    List<String> command =
        system.startsWith("windows")
            ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
            : List.of(system.startsWith("mac") ? "open" : "xdg-open", address);
    try {
      new ProcessBuilder(command)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start();
    } catch (IOException e) {
      // No such program here.
    }
  }
}
