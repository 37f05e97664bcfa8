package org.grovewright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** The program as called from a terminal. */
@Command(
    name = "grovewright",
    description =
        "Plans a small mixed orchard on your own land: what goes where, what to dig and buy,"
            + " how the water runs, how long to water, and the work day by day.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    sortOptions = false,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      ServeCommand.class,
      DemoCommand.class,
      NewCommand.class,
      CheckCommand.class,
      PlanCommand.class,
      ExplainCommand.class,
      NetworkCommand.class,
      WhatIfCommand.class,
      ReadingsCommand.class,
      CatalogueCommand.class,
      Et0Command.class,
      BalanceCommand.class,
      SeasonsCommand.class,
      TodayCommand.class,
      PasswordCommand.class,
      RehearseCommand.class,
    },
    footer = {
      "",
      "Examples:",
      "  grovewright                             plan in your browser",
      "  grovewright demo --out demo-plan        plan the invented example grove",
      "  grovewright plan grove.yaml --out plan  plan your own",
      "",
      "Exit codes: 0 all is well; 1 the plan is made but falls short somewhere; 2 the input cannot"
          + " be used; 3 a bug of ours.",
    })
public final class GrovewrightCommand implements Runnable {
  @Option(
      names = "--debug",
      scope = ScopeType.INHERIT,
      description = "When the program fails, also print where in it that was.")
  private boolean debug;

  @Spec private CommandSpec spec;

  /** With options but no command, shows what there is. */
  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  /** Starts the program. */
  public static void main(String[] args) {
    // Nothing we print may depend on where the reader lives; libraries read the default locale.
    Locale.setDefault(Locale.ROOT);
    PrintWriter out = utf8(FileDescriptor.out);
    PrintWriter err = utf8(FileDescriptor.err);
    int code;
    try {
      code = run(out, err, args);
    } catch (Error e) {
      // Such as too little memory; without this the terminal would show a stack trace.
      err.println("grovewright: the program had to stop: " + e);
      code = ExitCode.OUR_BUG;
    }
    out.flush();
    err.flush();
    System.exit(code);
  }

  private static PrintWriter utf8(FileDescriptor descriptor) {
    return new PrintWriter(
        new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), false);
  }

  /**
   * Runs one command.
   *
   * @param out takes the result
   * @param err takes everything else
   * @param args the words of the command
   * @return the exit code, see {@link ExitCode}
   */
  public static int run(PrintWriter out, PrintWriter err, String... args) {
    GrovewrightCommand top = new GrovewrightCommand();
    CommandLine line =
        new CommandLine(top)
            .setOut(out)
            .setErr(err)
            .setUsageHelpAutoWidth(false)
            .setUsageHelpWidth(100)
            .setCaseInsensitiveEnumValuesAllowed(true)
            .setParameterExceptionHandler((failure, words) -> explain(failure))
            .setExecutionExceptionHandler((failure, at, parsed) -> top.failed(failure, at));
    return args.length == 0 ? line.execute("serve") : line.execute(args);
  }

  private static int explain(ParameterException failure) {
    CommandLine at = failure.getCommandLine();
    PrintWriter err = at.getErr();
    err.println("grovewright: " + failure.getMessage());
    if (!UnmatchedArgumentException.printSuggestions(failure, err)) {
      err.println("Try '" + at.getCommandSpec().qualifiedName() + " --help'.");
    }
    err.flush();
    return ExitCode.BAD_INPUT;
  }

  private int failed(Exception failure, CommandLine at) {
    PrintWriter err = at.getErr();
    if (failure instanceof BadInputException) {
      err.println(failure.getMessage());
      err.flush();
      return ExitCode.BAD_INPUT;
    }
    err.println("grovewright: something went wrong, and this is our bug, not yours.");
    err.println("  " + failure);
    err.println(
        "Please report it on the project's page with the words above, the command you gave and, if"
            + " you may share it, the grove file.");
    if (debug) {
      failure.printStackTrace(err);
    } else {
      err.println("Running the command again with --debug shows where it happened.");
    }
    err.flush();
    return ExitCode.OUR_BUG;
  }
}
