package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What keeps the server from starting is said in a sentence, with the exit code of bad input. */
class ServeCommandTest {
  @TempDir Path folder;

  private CommandLineRun serve(String... words) {
    String[] all = new String[words.length + 4];
    all[0] = "serve";
    all[1] = "--no-browser";
    all[2] = "--data";
    all[3] = folder.resolve("data").toString();
    System.arraycopy(words, 0, all, 4, words.length);
    return CommandLineRun.of(all);
  }

  private static void refused(CommandLineRun run, String... words) {
    assertThat(run.err()).contains(words).doesNotContain("Exception", "\tat ");
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
  }

  @Test
  void aPortInUseIsNamed() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      refused(serve("--port", Integer.toString(taken.getLocalPort())), "uses port", "--port");
    }
  }

  @Test
  void othersAreNotServedWithoutAPassword() {
    refused(serve("--bind", "0.0.0.0"), "no account has a password", "grovewright password");
    refused(serve("--host-name", "grove.example.org"), "grovewright password");
  }

  @Test
  void anAddressThatIsNoneIsNamed() {
    refused(serve("--bind", "no such host"), "no address of this machine");
  }

  @Test
  void aCertificateThatCannotBeUsedIsNamed() throws IOException {
    Path wrong = Files.writeString(folder.resolve("wrong.pem"), "nothing of the sort");
    refused(serve("--certificate", wrong.toString()), "both --certificate and --key");
    refused(
        serve("--certificate", wrong.toString(), "--key", folder.resolve("none.pem").toString()),
        "none.pem",
        "cannot be read");
    refused(
        serve("--certificate", wrong.toString(), "--key", wrong.toString()),
        "wrong.pem",
        "private key without a password");
  }

  @Test
  void dataThatIsNotOursIsLeftAlone() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");
    CommandLineRun run = CommandLineRun.of("serve", "--no-browser", "--data", file.toString());
    assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(run.err()).contains("file").doesNotContain("\tat ");
    assertThat(Files.readString(file)).isEqualTo("x");
    refused(serve("--database", "jdbc:mysql://x/y"), "either --data or --database");
    CommandLineRun other = CommandLineRun.of("serve", "--database", "jdbc:mysql://x/y");
    refused(other, "jdbc:postgresql:");
  }

  @Test
  void helpNamesEveryOption() {
    CommandLineRun help = CommandLineRun.of("serve", "--help");
    assertThat(help.out())
        .contains("--port", "--bind", "--host-name", "--data", "--database", "--certificate");
    assertThat(CommandLineRun.of("--help").out()).contains("password").doesNotContain("rehearse");
  }
}
