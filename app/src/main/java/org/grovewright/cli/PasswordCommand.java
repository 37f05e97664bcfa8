package org.grovewright.cli;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.grovewright.store.Account;
import org.grovewright.store.Store;
import org.grovewright.store.StoreException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Sets the password of the owner of the program. */
@Command(
    name = "password",
    description = {
      "Sets the name and the password with which you, the owner, sign in when others can reach the"
          + " program.",
      "",
      "It asks for the password, or takes the first line of its standard input. You add accounts for"
          + " others on the settings page.",
    },
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {"", "Example:", "  grovewright password Rosa"})
final class PasswordCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "NAME", description = "The name to sign in with.")
  private String name;

  @Mixin private DataArguments data;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    try (Store store = data.open()) {
      store.accounts().setPassword(Account.LOCAL, name, asked());
    } catch (StoreException e) {
      throw new BadInputException(e.getMessage());
    }
    spec.commandLine().getOut().println("You sign in as " + name.strip() + " from now on.");
    spec.commandLine().getOut().flush();
    return ExitCode.OK;
  }

  private static String asked() throws IOException {
    Console console = System.console();
    if (console != null) {
      char[] first = console.readPassword("Password: ");
      char[] again = console.readPassword("The same again: ");
      if (first == null || again == null || !String.valueOf(first).equals(String.valueOf(again))) {
        throw new BadInputException("The two were not the same; nothing was changed.");
      }
      return String.valueOf(first);
    }
    String line =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
    if (line == null) {
      throw new BadInputException("Give the password as the first line of the standard input.");
    }
    return line;
  }
}
