package org.grovewright.sheets;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Files of this package that travel with the program. */
final class Resources {
  private Resources() {}

  /**
   * The text of a file.
   *
   * @throws IllegalStateException if the program was put together without it
   */
  static String text(String name) {
    try (InputStream in = Resources.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its file " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + name, e);
    }
  }
}
