package org.grovewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.NotAQuantityException;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Preferences.Units;
import org.grovewright.plan.Plan;
import org.grovewright.sheets.ReaderUnits;
import org.grovewright.sheets.Sheets;
import org.grovewright.sheets.WhatIfSheet;
import org.grovewright.sheets.Words;
import org.grovewright.trouble.Mishap;
import org.grovewright.trouble.Mishap.Place;
import org.grovewright.trouble.NoSuchPlaceException;
import org.grovewright.trouble.WhatIfAnswer;
import org.grovewright.trouble.WhatIfs;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what a mishap or a change would do to every plant. */
@Command(
    name = "whatif",
    description = {
      "Says what would change for every plant if something went wrong or trees were added.",
      "",
      "Cases; what stands in brackets may be left out:",
      "  more-trees[:ROW[:COUNT]]         trees like the last one at the end of a row; two if not"
          + " said",
      "  half-tank                        a tank half full, or a tap with half its pressure",
      "  small-cut[:ROW[:PLACE[:HOLE]]]   a cut in the tubing, PLACE along it; a hole of 3 mm if"
          + " not said",
      "  valve-open[:ZONE]                a zone's valve that does not close",
      "  valve-shut[:ZONE]                a zone's valve that does not open",
      "  half-clogged[:PERCENT]           every second emitter clogged down to a share of its flow",
      "  cut-through[:ROW[:PLACE]]        the tubing, or a loop of it, cut through and folded shut",
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Without a case, one of each is tried where it tells most.",
      "",
      "Example:",
      "  grovewright whatif grove.yaml more-trees:A:3 small-cut:B:12m",
    })
final class WhatIfCommand implements Callable<Integer> {
  private static final List<String> CASES =
      List.of(
          "more-trees",
          "half-tank",
          "small-cut",
          "valve-open",
          "valve-shut",
          "half-clogged",
          "cut-through");

  @Mixin private GroveArguments grove;

  @Parameters(index = "1..*", arity = "0..*", paramLabel = "CASE", description = "The cases.")
  private List<String> cases = List.of();

  @Mixin private YearOption year;

  @ArgGroup private Form form;

  @Spec private CommandSpec spec;

  private static final class Form {
    @Option(names = "--json", description = "Print the answers as JSON, in SI units.")
    private boolean json;

    @Option(names = "--csv", description = "Print one row for each case and plant as CSV.")
    private boolean csv;
  }

  @Override
  public Integer call() {
    Plan plan = new PlanSource(grove.catalogue(), spec.commandLine().getErr()).plan(grove.file());
    int inYear = year.of(plan.grove());
    WhatIfs whatIfs = new WhatIfs(plan.grove(), plan.watering(), plan.programme(), inYear);
    ReaderUnits units = Sheets.unitsOf(plan);
    List<WhatIfAnswer> answers = new ArrayList<>();
    List<String> names = new ArrayList<>();
    if (cases.isEmpty()) {
      List<Mishap> usual = WhatIfs.usual();
      for (int i = 0; i < usual.size(); i++) {
        names.add(CASES.get(i));
        answers.add(answer(whatIfs, usual.get(i), CASES.get(i), units));
      }
    }
    for (String words : cases) {
      names.add(words);
      answers.add(answer(whatIfs, mishap(words, plan.grove().preferences().units()), words, units));
    }
    WhatIfSheet sheet = new WhatIfSheet(names, answers, inYear, units);
    boolean json = form != null && form.json;
    boolean csv = form != null && form.csv;
    spec.commandLine().getOut().print(json ? sheet.json() : csv ? sheet.csv() : sheet.text());
    return ExitCode.OK;
  }

  private static WhatIfAnswer answer(
      WhatIfs whatIfs, Mishap mishap, String words, ReaderUnits units) {
    try {
      return whatIfs.answer(mishap);
    } catch (NoSuchPlaceException e) {
      String told = Words.message(e.told().message(), e.told().quantities(), units);
      throw new BadInputException(words + ": " + ReaderUnits.plainSpaces(told));
    } catch (IllegalArgumentException e) {
      throw new BadInputException(words + ": " + e.getMessage());
    }
  }

  /** Reads a case. */
  static Mishap mishap(String words, Units units) {
    List<String> parts = List.of(words.split(":", -1));
    String name = parts.get(0);
    int most = name.equals("small-cut") ? 4 : name.equals("half-tank") ? 1 : 3;
    if (name.startsWith("valve-") || name.equals("half-clogged")) {
      most = 2;
    }
    if (CASES.contains(name) && parts.size() > most) {
      throw new BadInputException(
          words + ": there is more behind " + name + " than it takes; see 'whatif --help'.");
    }
    Optional<String> second = part(parts, 1);
    return switch (name) {
      case "more-trees" -> new Mishap.MoreTrees(second, count(parts, words));
      case "half-tank" -> new Mishap.HalfPressure();
      case "small-cut" ->
          new Mishap.Cut(
              new Place(second, length(parts, 2, units == Units.US ? "ft" : "m", words)),
              length(parts, 3, "mm", words).orElse(WhatIfs.SMALL_CUT_M));
      case "valve-open" -> new Mishap.StuckValve(second, true);
      case "valve-shut" -> new Mishap.StuckValve(second, false);
      case "half-clogged" -> new Mishap.HalfClogged(percent(second, words) / 100);
      case "cut-through" ->
          new Mishap.Severed(
              new Place(second, length(parts, 2, units == Units.US ? "ft" : "m", words)));
      default ->
          throw new BadInputException(
              "There is no case "
                  + name
                  + Nearest.of(name, CASES).map(near -> "; did you mean " + near + "?").orElse(".")
                  + " The cases are "
                  + String.join(", ", CASES)
                  + ".");
    };
  }

  private static Optional<String> part(List<String> parts, int at) {
    return parts.size() > at && !parts.get(at).isBlank()
        ? Optional.of(parts.get(at).trim())
        : Optional.empty();
  }

  private static int count(List<String> parts, String words) {
    Optional<String> text = part(parts, 2);
    if (text.isEmpty()) {
      return 2;
    }
    if (!text.get().matches("[1-9][0-9]?")) {
      throw new BadInputException(words + ": the number of trees must be from 1 to 99.");
    }
    return Integer.parseInt(text.get());
  }

  private static double percent(Optional<String> text, String words) {
    if (text.isEmpty()) {
      return 0;
    }
    if (!text.get().matches("[0-9]{1,3} ?%?")) {
      throw new BadInputException(words + ": say what is left of the flow in per cent, 0 to 100.");
    }
    double percent = Integer.parseInt(text.get().replaceAll("[ %]", ""));
    if (percent > 100) {
      throw new BadInputException(words + ": say what is left of the flow in per cent, 0 to 100.");
    }
    return percent;
  }

  private static OptionalDouble length(List<String> parts, int at, String usual, String words) {
    Optional<String> text = part(parts, at);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    boolean bare = text.get().matches("[0-9.]+");
    try {
      double value =
          QuantityText.read(bare ? text.get() + " " + usual : text.get(), Measure.LENGTH).value();
      if (at == 3 && !(value > 0 && value <= 0.05)) {
        throw new BadInputException(words + ": the hole must be above 0 and at most 50 mm.");
      }
      return OptionalDouble.of(value);
    } catch (NotAQuantityException e) {
      throw new BadInputException(words + ": " + e.getMessage());
    }
  }
}
