package org.grovewright.cli;

import org.grovewright.texts.Language;
import picocli.CommandLine.Option;

/** The language of what a command writes. */
final class LanguageArgument {
  @Option(
      names = "--language",
      paramLabel = "LANG",
      defaultValue = "en",
      description = "Language of the sheets: en (English) or es (Spanish); en if not given.")
  private String tag;

  /**
   * The language asked for.
   *
   * @throws BadInputException if the program does not speak it
   */
  Language language() {
    if (!Language.tags().contains(tag)) {
      throw new BadInputException(
          "--language must be one of "
              + String.join(", ", Language.tags())
              + ", and not '"
              + tag
              + "'.");
    }
    return Language.of(tag);
  }
}
