package org.grovewright.formats.description;

import java.nio.file.Path;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.model.Grove;
import org.grovewright.texts.Sentence;

/** Descriptions and a reader for tests. */
final class Descriptions {
  static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  static final DescriptionReader READER =
      new DescriptionReader(
          CATALOGUE,
          (file, windHeight, source) -> {
            throw new DescriptionException(
                file.toString(),
                List.of(new Problem(3, 2, "", Sentence.asIs("no daily weather here"))));
          });

  private Descriptions() {}

  static String starter() {
    return Starter.text();
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
