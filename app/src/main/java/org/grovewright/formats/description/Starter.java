package org.grovewright.formats.description;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The texts that come with the language: a commented grove to start from, and its schema. */
public final class Starter {
  /** Name under which the schema is published beside a description. */
  public static final String SCHEMA_NAME = "grove.schema.json";

  private Starter() {}

  /** An invented grove with a remark on every key; it can be read and planned as it stands. */
  public static String text() {
    return resource("starter.yaml");
  }

  /** The JSON Schema (draft 2020-12) of descriptions, for editors that complete and check YAML. */
  public static String schema() {
    return resource(SCHEMA_NAME);
  }

  private static String resource(String name) {
    try (InputStream in = Starter.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its file " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
