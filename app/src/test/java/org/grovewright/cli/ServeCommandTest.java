package org.grovewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import org.grovewright.store.Store;
import org.grovewright.store.StoreAddress;
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
  void aDatabaseOfANewerVersionIsLeftAlone() throws SQLException {
    StoreAddress.Folder address = new StoreAddress.Folder(folder.resolve("data"));
    Store.open(address, InstantSource.system()).close();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + address.file());
        Statement statement = connection.createStatement()) {
      statement.execute("update flyway_schema_history set version = '99'");
    }
    refused(serve(), "newer version of Grovewright", "Update the program");
  }

  @Test
  void thePasswordIsReadFromTheInputAndKept() {
    InputStream before = System.in;
    try {
      System.setIn(new ByteArrayInputStream("correct horse\n".getBytes(StandardCharsets.UTF_8)));
      CommandLineRun run =
          CommandLineRun.of("password", "Rosa", "--data", folder.resolve("data").toString());
      assertThat(run.code()).as(run.err()).isZero();
      System.setIn(new ByteArrayInputStream("short\n".getBytes(StandardCharsets.UTF_8)));
      refused(
          CommandLineRun.of("password", "Rosa", "--data", folder.resolve("data").toString()),
          "The password must have from 10");
    } finally {
      System.setIn(before);
    }
    try (Store store =
        Store.open(new StoreAddress.Folder(folder.resolve("data")), InstantSource.system())) {
      assertThat(store.accounts().check("rosa", "correct horse")).isPresent();
    }
  }

  @Test
  void helpNamesEveryOption() {
    CommandLineRun help = CommandLineRun.of("serve", "--help");
    assertThat(help.out())
        .contains("--port", "--bind", "--host-name", "--data", "--database", "--certificate");
    assertThat(CommandLineRun.of("--help").out()).contains("password").doesNotContain("rehearse");
  }
}
