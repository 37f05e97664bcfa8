package org.grovewright.formats.description;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.model.Grove;

/** Descriptions and a reader for tests. */
final class Descriptions {
  static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  static final DescriptionReader READER =
      new DescriptionReader(
          CATALOGUE,
          (file, windHeight, source) -> {
            throw new DescriptionException(
                file.toString(), List.of(new Problem(3, 2, "", "no daily weather here")));
          });

  private Descriptions() {}

  static String starter() {
    try (InputStream in = DescriptionReader.class.getResourceAsStream("starter.yaml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Grove read(String text) {
    return READER.read(text, "grove.yaml", Path.of("."));
  }

  static List<Problem> problems(String text) {
    try {
      read(text);
      return List.of();
    } catch (DescriptionException e) {
      return e.problems();
    }
  }
}
