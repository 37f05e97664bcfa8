package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.grovewright.store.StoreException.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class BadStatesTest {
  private final HandClock clock = new HandClock("2027-03-01T08:00:00Z");
  @TempDir Path folder;

  private StoreAddress.Folder address() {
    return new StoreAddress.Folder(folder.resolve("data"));
  }

  private static NewEdit edit(String text) {
    return new NewEdit(Optional.empty(), "Wrote", "{}", "S", text);
  }

  @Test
  void aFullDiskRefusesTheSaveAndKeepsWhatWasSaved() {
    String id;
    // A limit on the file's pages fails in the same place and with the same code as a full disk.
    try (Store store =
        Store.open(address(), clock, settings -> settings.setPragma(maxPages(), "100"))) {
      Author owner = store.accounts().local().author();
      id = store.sites().create("S", "small", owner).id();
      String large = "x".repeat(1_000_000);
      assertThatThrownBy(() -> store.sites().edit(id, 1, edit(large), owner))
          .isInstanceOfSatisfying(
              StoreException.class, e -> assertThat(e.reason()).isEqualTo(Reason.FULL))
          .hasMessage(
              "The disk is full, so this was not saved. What was saved before is safe. Make room"
                  + " and save again.");
      assertThat(store.sites().get(id).description()).isEqualTo("small");
      assertThat(store.sites().edit(id, 1, edit("still small"), owner).version()).isEqualTo(2);
    }
    try (Store store = Store.open(address(), clock)) {
      assertThat(store.sites().get(id).description()).isEqualTo("still small");
    }
  }

  private static org.sqlite.SQLiteConfig.Pragma maxPages() {
    return org.sqlite.SQLiteConfig.Pragma.MAX_PAGE_COUNT;
  }

  @Test
  void aFolderThatCannotBeMadeIsNamed() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "in the way");
    StoreAddress.Folder below = new StoreAddress.Folder(file.resolve("data"));
    assertThatThrownBy(() -> Store.open(below, clock))
        .isInstanceOfSatisfying(
            StoreException.class, e -> assertThat(e.reason()).isEqualTo(Reason.UNREACHABLE))
        .hasMessageContaining(below.path().toString())
        .hasMessageContaining("--data");
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderThatMayOnlyBeReadIsReadAndSaysWhyNothingIsSaved() throws Exception {
    try (Store store = Store.open(address(), clock)) {
      store.sites().create("S", "kept", store.accounts().local().author());
    }
    Files.setPosixFilePermissions(address().path(), PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      String said = runWithoutRootsPower(ReadOnlyProbe.class, address().path().toString());
      assertThat(said)
          .contains("trouble: READ_ONLY The folder " + address().path() + " may only be read")
          .contains("read: kept")
          .contains("save: READ_ONLY The folder");
    } finally {
      Files.setPosixFilePermissions(address().path(), PosixFilePermissions.fromString("rwxr-xr-x"));
    }
    Path empty = Files.createDirectory(folder.resolve("empty"));
    Files.setPosixFilePermissions(empty, PosixFilePermissions.fromString("r-xr-xr-x"));
    assertThat(runWithoutRootsPower(ReadOnlyProbe.class, empty.toString()))
        .contains("open: READ_ONLY The folder " + empty);
  }

  /** What is beside the file when the program is killed, here copied under the running program. */
  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderThatMayOnlyBeReadShowsWhatWasSavedBeforeTheProgramWasKilledOrSaysThatItCannot()
      throws Exception {
    List<String> all = List.of("grovewright.db", "grovewright.db-wal", "grovewright.db-shm");
    Path killed = Files.createDirectory(folder.resolve("killed"));
    Path withoutLocks = Files.createDirectory(folder.resolve("without-locks"));
    try (Store store = Store.open(address(), clock)) {
      Author owner = store.accounts().local().author();
      String id = store.sites().create("S", "first", owner).id();
      store.sites().edit(id, 1, edit("newest"), owner);
      for (String name : all) {
        Files.copy(address().path().resolve(name), killed.resolve(name));
      }
      for (String name : all.subList(0, 2)) {
        Files.copy(address().path().resolve(name), withoutLocks.resolve(name));
      }
    }
    for (Path copy : List.of(killed, withoutLocks)) {
      try (Stream<Path> files = Files.list(copy)) {
        for (Path file : files.toList()) {
          Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        }
      }
      Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("r-xr-xr-x"));
    }
    try {
      assertThat(runWithoutRootsPower(ReadOnlyProbe.class, killed.toString()))
          .contains("trouble: READ_ONLY The folder " + killed + " may only be read, so")
          .contains("read: newest")
          .contains("save: READ_ONLY The folder");
      assertThat(runWithoutRootsPower(ReadOnlyProbe.class, withoutLocks.toString()))
          .contains("open: READ_ONLY The folder " + withoutLocks)
          .contains("its newest saves can be read only");
    } finally {
      for (Path copy : List.of(killed, withoutLocks)) {
        Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rwxr-xr-x"));
      }
    }
    StoreAddress.Folder again = new StoreAddress.Folder(withoutLocks);
    for (String name : all.subList(0, 2)) {
      Files.setPosixFilePermissions(
          withoutLocks.resolve(name), PosixFilePermissions.fromString("rw-r--r--"));
    }
    try (Store store = Store.open(again, clock)) {
      SiteSummary site = store.sites().list(Account.LOCAL).get(0);
      assertThat(store.sites().get(site.id()).description()).isEqualTo("newest");
    }
  }

  /** Tests may run as root, who may write everywhere unless that power is given up. */
  private String runWithoutRootsPower(Class<?> program, String argument) throws Exception {
    List<String> command = new ArrayList<>();
    if ("root".equals(System.getProperty("user.name"))) {
      command.addAll(
          List.of(
              "setpriv",
              "--bounding-set=-dac_override,-dac_read_search",
              "--inh-caps=-dac_override,-dac_read_search"));
    }
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Dorg.sqlite.tmpdir=" + folder,
            "-cp",
            System.getProperty("java.class.path"),
            program.getName(),
            argument));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    return said;
  }

  /** Opens a store, reads and tries to save, and says how it went. */
  static final class ReadOnlyProbe {
    private ReadOnlyProbe() {}

    /** Takes the folder. */
    public static void main(String[] args) {
      StoreAddress.Folder address = new StoreAddress.Folder(Path.of(args[0]));
      try (Store store = Store.open(address, new HandClock("2027-03-01T08:00:00Z"))) {
        StoreException trouble = store.trouble().orElseThrow();
        System.out.println("trouble: " + trouble.reason() + " " + trouble.getMessage());
        SiteSummary site = store.sites().list(Account.LOCAL).get(0);
        System.out.println("read: " + store.sites().get(site.id()).description());
        try {
          store.sites().edit(site.id(), 1, edit("x"), store.accounts().local().author());
        } catch (StoreException e) {
          System.out.println("save: " + e.reason() + " " + e.getMessage());
        }
      } catch (StoreException e) {
        System.out.println("open: " + e.reason() + " " + e.getMessage());
      }
    }
  }

  @Test
  void aDamagedFileIsNotWrittenToAndACopyCanBePutBack() throws Exception {
    String id;
    try (Store store = Store.open(address(), clock)) {
      Author owner = store.accounts().local().author();
      id = store.sites().create("S", "first day", owner).id();
      assertThat(store.copyIfDue()).isTrue();
      assertThat(store.copyIfDue()).as("one copy a day").isFalse();
      store.sites().edit(id, 1, edit("later that day ".repeat(2000)), owner);
    }
    try (RandomAccessFile file = new RandomAccessFile(address().file().toFile(), "rw")) {
      // Beyond the first page, so that the file still looks like a database.
      for (long at = 4096; at < file.length(); at += 4096) {
        file.seek(at);
        file.write(new byte[512]);
      }
    }
    byte[] damaged = Files.readAllBytes(address().file());
    try (Store store = Store.open(address(), clock)) {
      assertThat(store.trouble())
          .hasValueSatisfying(e -> assertThat(e.reason()).isEqualTo(Reason.DAMAGED));
      assertThat(store.trouble().orElseThrow())
          .hasMessageContaining("is damaged")
          .hasMessageContaining("daily copies");
      assertThatThrownBy(() -> store.sites().create("T", "x", new Author(Account.LOCAL, "Owner")))
          .isInstanceOf(StoreException.class);
      assertThat(store.copyIfDue()).as("no copy of a damaged file").isFalse();
      assertThat(Files.readAllBytes(address().file())).isEqualTo(damaged);
      assertThat(store.copies())
          .extracting(Backups.Copy::name)
          .containsExactly("grovewright-2027-03-01.db");

      Path aside = store.restore("grovewright-2027-03-01.db");
      assertThat(aside).hasBinaryContent(damaged);
      assertThat(store.trouble()).isEmpty();
      assertThat(store.sites().get(id).description()).isEqualTo("first day");
      store.sites().edit(id, 1, edit("goes on"), store.accounts().local().author());
    }
    try (Store store = Store.open(address(), clock)) {
      assertThat(store.sites().get(id).description()).isEqualTo("goes on");
    }
  }

  @Test
  void aFileThatIsNoDatabaseIsLeftAlone() throws Exception {
    Files.createDirectories(address().path());
    Files.writeString(
        address().file(), "not a database at all, but somebody's letter. ".repeat(50));
    byte[] before = Files.readAllBytes(address().file());
    try (Store store = Store.open(address(), clock)) {
      assertThat(store.trouble().orElseThrow().reason()).isEqualTo(Reason.DAMAGED);
      assertThat(store.copies()).isEmpty();
      assertThatThrownBy(() -> store.restore("../../etc/passwd"))
          .hasMessageContaining("There is no copy called");
    }
    assertThat(Files.readAllBytes(address().file())).isEqualTo(before);
  }

  @Test
  void keepsTheCopiesOfTheLastDays() {
    try (Store store = Store.open(address(), clock)) {
      for (int day = 0; day < Backups.KEPT + 3; day++) {
        assertThat(store.copyIfDue()).isTrue();
        clock.pass(Duration.ofDays(1));
      }
      assertThat(store.copies()).hasSize(Backups.KEPT);
      assertThat(store.copies().get(0).day()).hasToString("2027-03-17");
      assertThat(store.copies().get(Backups.KEPT - 1).day()).hasToString("2027-03-04");
    }
  }
}
