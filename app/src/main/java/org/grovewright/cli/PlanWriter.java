package org.grovewright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Map;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;
import org.grovewright.sheets.OutputFolder;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Sheets;
import org.grovewright.sheets.Words;
import org.grovewright.sheets.WorkingTree;
import org.grovewright.texts.Language;

/** Hands a plan to the user: sheets into a folder, words to the terminal. */
final class PlanWriter {
  private final PrintWriter out;
  private final PrintWriter err;
  private final Language language;

  PlanWriter(PrintWriter out, PrintWriter err) {
    this(out, err, Language.ENGLISH);
  }

  /** A writer in the user's language. */
  PlanWriter(PrintWriter out, PrintWriter err, Language language) {
    this.out = out;
    this.err = err;
    this.language = language;
  }

  /**
   * Writes all sheets and prints their paths.
   *
   * @throws BadInputException if the folder cannot be written to
   */
  void folder(Plan plan, Path folder, boolean force) {
    folder(Sheets.of(plan, language), folder, force);
  }

  /**
   * Writes sheets and prints their paths.
   *
   * @param sheets text by file name
   * @throws BadInputException if the folder cannot be written to
   */
  void folder(Map<String, String> sheets, Path folder, boolean force) {
    try {
      new OutputFolder(folder, force).write(sheets);
    } catch (OutputFolder.RefusedException e) {
      throw new BadInputException(e.getMessage());
    } catch (IOException e) {
      throw new BadInputException(
          "The plan could not be written to " + folder + ": " + reason(e) + ".");
    }
    sheets.keySet().forEach(name -> out.print(folder.resolve(name) + "\n"));
  }

  private static String reason(IOException e) {
    return e instanceof java.nio.file.AccessDeniedException
        ? "you may not write there"
        : String.valueOf(e.getMessage());
  }

  /** Prints every working. */
  void workings(Plan plan) {
    WorkingTree tree =
        new WorkingTree(
            java.util.List.copyOf(plan.figures().values()), Sheets.unitsOf(plan, language));
    for (Figure figure : plan.figures().values()) {
      out.print(tree.alone(figure) + "\n");
    }
  }

  /** Says how the plan stands, and gives the exit code that says the same. */
  int verdict(Plan plan) {
    ReaderUnits units = Sheets.unitsOf(plan, language);
    err.println(Sheets.verdict(plan, language));
    for (Finding finding : plan.findings()) {
      if (finding.severity() == Severity.SHORTFALL) {
        String about = finding.subject().isEmpty() ? "" : finding.subject() + ": ";
        err.println("  - " + about + ReaderUnits.plainSpaces(Words.message(finding, units)));
      }
    }
    return plan.fallsShort() ? ExitCode.FALLS_SHORT : ExitCode.OK;
  }
}
