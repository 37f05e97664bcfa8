package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.store.Journal.Change;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.StoreException.Reason;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every database must do for the store. */
abstract class StoreContract {
  final HandClock clock = new HandClock("2027-03-01T08:00:00Z");
  Author owner;
  Store store;
  private StoreAddress address;

  /** The address of an empty database. */
  abstract StoreAddress empty() throws Exception;

  @BeforeEach
  void open() throws Exception {
    address = empty();
    store = Store.open(address, clock);
    owner = store.accounts().local().author();
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  private void reopen() {
    store.close();
    store = Store.open(address, clock);
  }

  private static NewEdit edit(String text) {
    return new NewEdit(Optional.empty(), "Wrote " + text, "{}", "Site " + text, text);
  }

  @Test
  void keepsWhatWasSavedAcrossARestart() {
    String text = "site: Wattlefall — añejo 果樹\n# comment\n";
    SiteState made = store.sites().create("Wattlefall", text, owner);
    reopen();
    SiteState read = store.sites().get(made.id());
    assertThat(read).isEqualTo(made);
    assertThat(read.description()).isEqualTo(text);
    assertThat(read.version()).isEqualTo(1);
    assertThat(read.canUndo()).isFalse();
    assertThat(read.canRedo()).isFalse();
  }

  @Test
  void undoesAndMakesAgainAfterARestart() {
    String id = store.sites().create("S", "0", owner).id();
    store.sites().edit(id, 1, edit("1"), owner);
    store.sites().edit(id, 2, edit("2"), owner);
    reopen();
    assertThat(store.sites().undo(id, 3, owner).description()).isEqualTo("1");
    SiteState first = store.sites().undo(id, 4, owner);
    assertThat(first.description()).isEqualTo("0");
    assertThat(first.name()).isEqualTo("S");
    assertThat(first.canUndo()).isFalse();
    assertThatThrownBy(() -> store.sites().undo(id, 5, owner))
        .isInstanceOfSatisfying(
            StoreException.class, e -> assertThat(e.reason()).isEqualTo(Reason.REFUSED));
    reopen();
    assertThat(store.sites().redo(id, 5, owner).description()).isEqualTo("1");
    SiteState last = store.sites().redo(id, 6, owner);
    assertThat(last.description()).isEqualTo("2");
    assertThat(last.name()).isEqualTo("Site 2");
    assertThat(last.version()).isEqualTo(7);
    assertThat(last.canRedo()).isFalse();
  }

  @Test
  void aNewEditAfterUndoEndsTheOldWayButKeepsItInTheLog() {
    String id = store.sites().create("S", "0", owner).id();
    store.sites().edit(id, 1, edit("1"), owner);
    store.sites().edit(id, 2, edit("2"), owner);
    store.sites().undo(id, 3, owner);
    store.sites().undo(id, 4, owner);
    SiteState other = store.sites().edit(id, 5, edit("other"), owner);
    assertThat(other.canRedo()).isFalse();
    assertThat(store.sites().undo(id, 6, owner).description()).isEqualTo("0");
    assertThat(store.sites().redo(id, 7, owner).description()).isEqualTo("other");
    assertThat(store.sites().log(id, 100))
        .extracting(EditRecord::label)
        .containsExactly(
            "Made again: Wrote other",
            "Undid: Wrote other",
            "Wrote other",
            "Undid: Wrote 1",
            "Undid: Wrote 2",
            "Wrote 2",
            "Wrote 1",
            "Started the site");
  }

  @Test
  void refusesASaveOnAnOldVersionAndShowsTheNewer() {
    String id = store.sites().create("S", "0", owner).id();
    store.sites().edit(id, 1, edit("mine"), owner);
    assertThatThrownBy(() -> store.sites().edit(id, 1, edit("stale"), owner))
        .isInstanceOfSatisfying(
            VersionConflictException.class,
            e -> {
              assertThat(e.newest().version()).isEqualTo(2);
              assertThat(e.newest().description()).isEqualTo("mine");
            });
    assertThatThrownBy(() -> store.sites().undo(id, 1, owner))
        .isInstanceOf(VersionConflictException.class);
    assertThat(store.sites().get(id).description()).isEqualTo("mine");
    assertThat(store.sites().log(id, 10)).hasSize(2);
  }

  @Test
  void ofManyTabsSavingAtOnceOneWinsEachVersionAndNoneIsCoveredUp() throws Exception {
    String id = store.sites().create("S", "0", owner).id();
    ExecutorService tabs = Executors.newFixedThreadPool(6);
    List<Future<Integer>> running = new ArrayList<>();
    for (int tab = 0; tab < 6; tab++) {
      int number = tab;
      Callable<Integer> work =
          () -> {
            int won = 0;
            while (won < 5) {
              SiteState seen = store.sites().get(id);
              try {
                String text = seen.description() + "," + number + "." + won;
                store.sites().edit(id, seen.version(), edit(text), owner);
                won++;
              } catch (VersionConflictException e) {
                assertThat(e.newest().version()).isGreaterThan(seen.version());
              }
            }
            return won;
          };
      running.add(tabs.submit(work));
    }
    for (Future<Integer> one : running) {
      one.get();
    }
    tabs.shutdown();
    SiteState end = store.sites().get(id);
    assertThat(end.version()).isEqualTo(31);
    List<String> saved = List.of(end.description().split(","));
    assertThat(saved).hasSize(31).doesNotHaveDuplicates();
  }

  @Test
  void savesAnEditSentTwiceOnce() {
    String id = store.sites().create("S", "0", owner).id();
    NewEdit edit = new NewEdit(Optional.of("device-1"), "Moved", "{}", "S", "1");
    store.sites().edit(id, 1, edit, owner);
    SiteState again = store.sites().edit(id, 1, edit, owner);
    assertThat(again.version()).isEqualTo(2);
    assertThat(store.sites().log(id, 10)).hasSize(2);
  }

  @Test
  void bringsASiteBackFromTheBinOrRemovesItForGood() {
    String id = store.sites().create("S", "0", owner).id();
    store.journal().sync(id, List.of(note("11111111-a", "seen")), 0, owner);
    store.sites().delete(id);
    assertThatThrownBy(() -> store.sites().get(id)).isInstanceOf(StoreException.class);
    assertThatThrownBy(() -> store.sites().edit(id, 1, edit("1"), owner))
        .isInstanceOf(StoreException.class);
    assertThat(store.sites().list(owner.accountId()))
        .singleElement()
        .satisfies(site -> assertThat(site.inBin()).isTrue());
    store.sites().restore(id);
    assertThat(store.sites().get(id).description()).isEqualTo("0");
    assertThatThrownBy(() -> store.sites().purge(id)).isInstanceOf(StoreException.class);
    store.sites().delete(id);
    store.sites().purge(id);
    assertThat(store.sites().list(owner.accountId())).isEmpty();
    assertThat(store.journal().list(id)).isEmpty();
  }

  private static Change note(String id, String words) {
    return change(id, words, 0, false);
  }

  private static Change change(String id, String words, long base, boolean deleted) {
    Content content =
        new Content(
            id,
            LocalDate.parse("2027-03-02"),
            JournalKind.NOTE,
            SubjectKind.SITE,
            "",
            Optional.empty(),
            words);
    return new Change(content, base, deleted);
  }

  @Test
  void takesAJournalBatchSentTwiceOnce() {
    String id = store.sites().create("S", "0", owner).id();
    Content rain =
        new Content(
            UUID.randomUUID().toString(),
            LocalDate.parse("2027-03-02"),
            JournalKind.RAIN,
            SubjectKind.PLANT,
            "A1",
            Optional.of(new Quantity(0.0123, Kind.WATER_DEPTH)),
            "heavy — 'quoted'");
    List<Change> batch = List.of(new Change(rain, 0, false), note("22222222-b", "b"));
    Journal.Synced first = store.journal().sync(id, batch, 0, owner);
    Journal.Synced again = store.journal().sync(id, batch, 0, owner);
    assertThat(again).isEqualTo(first);
    assertThat(first.entries()).hasSize(2);
    assertThat(first.entries().get(0).content()).isEqualTo(rain);
    assertThat(first.upTo()).isEqualTo(2);
    assertThat(store.journal().sync(id, List.of(), first.upTo(), owner).entries()).isEmpty();
  }

  @Test
  void tellsOfAnEntryChangedOnTwoDevicesAndKeepsTheFirst() {
    String id = store.sites().create("S", "0", owner).id();
    store.journal().sync(id, List.of(note("11111111-a", "first")), 0, owner);
    store.journal().sync(id, List.of(change("11111111-a", "phone", 1, false)), 0, owner);
    Journal.Synced late =
        store.journal().sync(id, List.of(change("11111111-a", "tablet", 1, false)), 0, owner);
    assertThat(late.conflicts())
        .singleElement()
        .satisfies(
            entry -> {
              assertThat(entry.content().note()).isEqualTo("phone");
              assertThat(entry.revision()).isEqualTo(2);
            });
    Journal.Synced settled =
        store
            .journal()
            .sync(id, List.of(change("11111111-a", "both", 2, false)), late.upTo(), owner);
    assertThat(settled.conflicts()).isEmpty();
    assertThat(settled.entries())
        .singleElement()
        .satisfies(entry -> assertThat(entry.content().note()).isEqualTo("both"));
    Journal.Synced gone =
        store.journal().sync(id, List.of(change("11111111-a", "both", 3, true)), 0, owner);
    assertThat(gone.entries()).singleElement().matches(JournalEntry::deleted);
    assertThat(store.journal().list(id)).isEmpty();
  }

  @Test
  void refusesAJournalIdOfAnotherSite() {
    String one = store.sites().create("one", "0", owner).id();
    String two = store.sites().create("two", "0", owner).id();
    store.journal().sync(one, List.of(note("11111111-a", "secret")), 0, owner);
    assertThatThrownBy(() -> store.journal().sync(two, List.of(note("11111111-a", "x")), 0, owner))
        .isInstanceOf(StoreException.class)
        .hasMessageNotContaining("secret");
  }

  @Test
  void checksPasswordsAndKeepsOnlyTheirHash() {
    Account mara = store.accounts().add("Mara", "orchard in the rain");
    assertThat(store.accounts().check(" mara ", "orchard in the rain")).contains(mara);
    assertThat(store.accounts().check("Mara", "orchard in the sun")).isEmpty();
    assertThat(store.accounts().check("Nobody", "orchard in the rain")).isEmpty();
    assertThat(store.accounts().check("owner", "")).as("no password, no sign-in").isEmpty();
    assertThatThrownBy(() -> store.accounts().add("MARA", "another password"))
        .hasMessage("There is already an account of that name.");
    assertThatThrownBy(() -> store.accounts().add("Tom", "short"))
        .hasMessageContaining("from 10 to 200 characters");
  }

  @Test
  void endsSessionsLeftUnusedAndAfterAChangeOfPassword() {
    Account mara = store.accounts().add("Mara", "orchard in the rain");
    Sessions.Started idle = store.sessions().start(mara.id());
    clock.pass(Sessions.IDLE.minusSeconds(1));
    assertThat(store.sessions().find(idle.token())).isPresent();
    clock.pass(Sessions.IDLE.plusSeconds(1));
    assertThat(store.sessions().find(idle.token())).isEmpty();

    Sessions.Started old = store.sessions().start(mara.id());
    for (int day = 0; day < 29; day++) {
      clock.pass(Duration.ofDays(1));
      assertThat(store.sessions().find(old.token())).isPresent();
    }
    clock.pass(Duration.ofDays(2));
    assertThat(store.sessions().find(old.token())).as("however much used").isEmpty();

    Sessions.Started before = store.sessions().start(mara.id());
    store.accounts().setPassword(mara.id(), "Mara", "a changed password");
    assertThat(store.sessions().find(before.token())).isEmpty();
    Sessions.Started out = store.sessions().start(mara.id());
    store.sessions().end(out.token());
    assertThat(store.sessions().find(out.token())).isEmpty();
  }

  @Test
  void sharesSitesByRoleAndAlwaysKeepsAnOwner() {
    String id = store.sites().create("S", "0", owner).id();
    Account mara = store.accounts().add("Mara", "orchard in the rain");
    assertThat(store.sites().role(id, mara.id())).isEmpty();
    assertThat(store.sites().list(mara.id())).isEmpty();
    store.sites().share(id, mara.id(), Role.VIEWER);
    store.sites().share(id, mara.id(), Role.HELPER);
    assertThat(store.sites().role(id, mara.id())).contains(Role.HELPER);
    assertThat(store.sites().members(id)).extracting(Member::name).containsExactly("Owner", "Mara");
    assertThatThrownBy(() -> store.sites().unshare(id, owner.accountId()))
        .hasMessageContaining("needs an owner");
    assertThatThrownBy(() -> store.sites().share(id, owner.accountId(), Role.VIEWER))
        .hasMessageContaining("needs an owner");
    String token = store.feeds().make(id, mara.id());
    assertThat(store.feeds().site(token)).contains(id);
    store.sites().unshare(id, mara.id());
    assertThat(store.feeds().site(token)).as("the calendar address goes too").isEmpty();
    store.sites().share(id, mara.id(), Role.VIEWER);
    store.accounts().disable(mara.id());
    assertThat(store.accounts().check("Mara", "orchard in the rain")).isEmpty();
    assertThat(store.sites().role(id, mara.id())).isEmpty();
  }

  @Test
  void keepsSettingsByAccount() {
    store.accounts().set(owner.accountId(), "units", "us");
    store.accounts().set(owner.accountId(), "units", "metric");
    store.accounts().set(owner.accountId(), "language", "en");
    reopen();
    assertThat(store.accounts().settings(owner.accountId()))
        .containsEntry("units", "metric")
        .containsEntry("language", "en")
        .hasSize(2);
  }

  @Test
  void knowsTheNumberOfTheNewestMigration() {
    Database database =
        address instanceof StoreAddress.Postgres postgres
            ? Database.postgres(postgres.url())
            : Database.sqlite(((StoreAddress.Folder) address).file(), settings -> {});
    try (database) {
      assertThat(Schema.flyway(database).info().current().getVersion().getMajorAsString())
          .isEqualTo(String.valueOf(Schema.VERSION));
      assertThat(Schema.flyway(database).info().pending()).isEmpty();
    }
  }

  @Test
  void refusesDataOfANewerVersionAndLeavesItAlone() {
    String id = store.sites().create("S", "0", owner).id();
    store.close();
    Database database =
        address instanceof StoreAddress.Postgres postgres
            ? Database.postgres(postgres.url())
            : Database.sqlite(((StoreAddress.Folder) address).file(), settings -> {});
    String future =
        "insert into flyway_schema_history (installed_rank, version, description, type, script,"
            + " checksum, installed_by, execution_time, success)"
            + " values (99, '99', 'future', 'SQL', 'V99__future.sql', 1, 'x', 1, true)";
    database.write(handle -> handle.execute(future));
    assertThatThrownBy(() -> Store.open(address, clock))
        .isInstanceOfSatisfying(
            StoreException.class, e -> assertThat(e.reason()).isEqualTo(Reason.NEWER))
        .hasMessageContaining("newer version of Grovewright")
        .hasMessageContaining("99");
    database.write(
        handle -> handle.execute("delete from flyway_schema_history where installed_rank = 99"));
    database.close();
    store = Store.open(address, clock);
    assertThat(store.sites().get(id).description()).isEqualTo("0");
  }
}
