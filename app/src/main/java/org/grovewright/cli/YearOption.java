package org.grovewright.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import org.grovewright.model.Grove;
import picocli.CommandLine.Option;

/** The year of the plan that a question is about: emitters are added as plants grow. */
final class YearOption {
  @Option(
      names = "--year",
      paramLabel = "N",
      description =
          "Year of the plan that the question is about, from 1 for the first after planting; the"
              + " year it is today if not given. Years after the last one planned are like it.")
  private Integer year;

  /** The year asked for, or the one it is today. */
  int of(Grove grove) {
    if (year == null) {
      return grove.yearAt(LocalDate.now(ZoneId.systemDefault()));
    }
    if (year < 1 || year > 100) {
      throw new BadInputException("--year must be from 1 to 100, but is " + year + ".");
    }
    return year;
  }
}
