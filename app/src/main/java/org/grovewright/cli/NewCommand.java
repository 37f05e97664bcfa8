package org.grovewright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.Callable;
import org.grovewright.formats.description.Starter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a grove file to start from. */
@Command(
    name = "new",
    description = {
      "Writes a grove file with a remark on every line, to be changed to your own land.",
      "",
      "It never overwrites a file. With --schema it writes the JSON Schema of grove files instead,"
          + " with which many editors complete keys and mark mistakes while you type."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Examples:",
      "  grovewright new                  writes grove.yaml",
      "  grovewright new orchard.yaml     writes orchard.yaml",
      "  grovewright new --schema         writes grove.schema.json",
    })
public final class NewCommand implements Callable<Integer> {
  private static final String USUAL_NAME = "grove.yaml";

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "Name of the new file; " + USUAL_NAME + " if not given.")
  private Path file;

  @Option(names = "--schema", description = "Write the JSON Schema of grove files instead.")
  private boolean schema;

  @Spec private CommandSpec spec;

  /**
   * Writes the file and prints its name.
   *
   * @throws BadInputException if the file is there already or cannot be written
   */
  @Override
  public Integer call() {
    Path target = file != null ? file : Path.of(schema ? Starter.SCHEMA_NAME : USUAL_NAME);
    try {
      Files.writeString(
          target,
          schema ? Starter.schema() : Starter.text(),
          StandardCharsets.UTF_8,
          StandardOpenOption.CREATE_NEW,
          StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      throw new BadInputException(target + ": this is there already; give another name.");
    } catch (NoSuchFileException e) {
      throw new BadInputException(target + ": there is no such folder; make it first.");
    } catch (IOException e) {
      throw new BadInputException(
          target + ": cannot be written; check that you may write there and that there is room.");
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println(target);
    out.flush();
    if (!schema) {
      PrintWriter err = spec.commandLine().getErr();
      err.println("Change it to your own land, then see what it says: grovewright check " + target);
      err.flush();
    }
    return ExitCode.OK;
  }
}
