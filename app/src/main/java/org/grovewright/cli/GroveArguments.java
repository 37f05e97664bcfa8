package org.grovewright.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What every command takes that reads a grove. */
final class GroveArguments {
  @Parameters(index = "0", paramLabel = "FILE", description = "The grove file (YAML).")
  private Path file;

  @Option(
      names = "--catalogue",
      paramLabel = "FILE",
      description =
          "Your own rows for the catalogue: a CSV file, or a folder of them, named after their"
              + " table.")
  private Path catalogue;

  Path file() {
    return file;
  }

  Path catalogue() {
    return catalogue;
  }
}
