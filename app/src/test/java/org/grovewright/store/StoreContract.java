package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.flywaydb.core.Flyway;
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

  private static byte[] jpeg(int length, int filling) {
    byte[] bytes = new byte[length];
    java.util.Arrays.fill(bytes, (byte) filling);
    bytes[0] = (byte) 0xff;
    bytes[1] = (byte) 0xd8;
    bytes[2] = (byte) 0xff;
    return bytes;
  }

  @Test
  void keepsThePhotoOfAnEntryByteForByteAndTellsTheOtherDevices() {
    String id = store.sites().create("S", "0", owner).id();
    long before = store.journal().sync(id, List.of(note("11111111-a", "aphids")), 0, owner).upTo();
    byte[] picture = jpeg(Photos.LARGEST, 0xd9);
    JournalEntry.Photo added = store.photos().add(id, "11111111-a", picture, owner);
    assertThat(added.type()).isEqualTo(PhotoType.JPEG);
    assertThat(added.bytes()).isEqualTo(picture.length);
    reopen();
    assertThat(store.photos().find(id, "11111111-a"))
        .hasValueSatisfying(
            kept -> {
              assertThat(kept.about()).isEqualTo(added);
              assertThat(kept.content()).isEqualTo(picture);
            });
    Journal.Synced heard = store.journal().sync(id, List.of(), before, owner);
    assertThat(heard.entries())
        .singleElement()
        .satisfies(
            entry -> {
              assertThat(entry.photo()).contains(added);
              assertThat(entry.revision()).as("the words are as they were").isEqualTo(1);
            });
    assertThat(store.photos().add(id, "11111111-a", picture, owner)).isEqualTo(added);
    assertThat(store.journal().sync(id, List.of(), heard.upTo(), owner).entries())
        .as("sent twice")
        .isEmpty();
    assertThatThrownBy(() -> store.photos().add(id, "11111111-a", jpeg(9, 1), owner))
        .hasMessageContaining("another photo already");
    store.photos().remove(id, "11111111-a");
    store.photos().remove(id, "11111111-a");
    assertThat(store.photos().find(id, "11111111-a")).isEmpty();
    assertThat(store.journal().sync(id, List.of(), heard.upTo(), owner).entries())
        .singleElement()
        .satisfies(entry -> assertThat(entry.photo()).isEmpty());
  }

  @Test
  void showsNoPhotoOfADeletedEntryAndKeepsItForItsReturn() {
    String id = store.sites().create("S", "0", owner).id();
    store.journal().sync(id, List.of(note("11111111-a", "aphids")), 0, owner);
    store.photos().add(id, "11111111-a", jpeg(100, 1), owner);
    store.journal().sync(id, List.of(change("11111111-a", "aphids", 1, true)), 0, owner);
    assertThat(store.photos().find(id, "11111111-a")).isEmpty();
    assertThatThrownBy(() -> store.photos().add(id, "11111111-a", jpeg(9, 1), owner))
        .hasMessage("There is no such entry in the journal.");
    store.journal().sync(id, List.of(change("11111111-a", "aphids", 2, false)), 0, owner);
    assertThat(store.photos().find(id, "11111111-a")).isPresent();
  }

  @Test
  void keepsPhotosOfOneSiteFromAnotherAndOnlyPictures() {
    String one = store.sites().create("one", "0", owner).id();
    String two = store.sites().create("two", "0", owner).id();
    store.journal().sync(one, List.of(note("11111111-a", "a")), 0, owner);
    store.photos().add(one, "11111111-a", jpeg(100, 1), owner);
    assertThat(store.photos().find(two, "11111111-a")).isEmpty();
    assertThatThrownBy(() -> store.photos().remove(two, "11111111-a"))
        .isInstanceOfSatisfying(
            StoreException.class, e -> assertThat(e.reason()).isEqualTo(Reason.MISSING));
    assertThat(store.photos().find(one, "11111111-a")).isPresent();
    byte[] page = "<html><script>alert(1)</script>".getBytes(StandardCharsets.UTF_8);
    assertThatThrownBy(() -> store.photos().add(one, "11111111-a", page, owner))
        .hasMessageContaining("no photo");
    byte[] large = jpeg(Photos.LARGEST + 1, 1);
    assertThatThrownBy(() -> store.photos().add(one, "11111111-a", large, owner))
        .hasMessage("A photo may have at most 2 MB.");
  }

  @Test
  void photosOfASiteTakeNoMoreRoomThanIsSetAsideForThem() {
    String id = store.sites().create("S", "0", owner).id();
    store.journal().sync(id, List.of(note("11111111-a", "a"), note("11111111-b", "b")), 0, owner);
    Database database = database();
    try (database) {
      Photos small = new Photos(database, clock, 2 * 1024 * 1024);
      small.add(id, "11111111-a", jpeg(1_500_000, 1), owner);
      assertThatThrownBy(() -> small.add(id, "11111111-b", jpeg(1_000_000, 1), owner))
          .hasMessageStartingWith("The photos of this site fill the 2 MB");
      store.journal().sync(id, List.of(change("11111111-a", "a", 1, true)), 0, owner);
      small.add(id, "11111111-b", jpeg(1_000_000, 1), owner);
      assertThat(small.find(id, "11111111-b")).isPresent();
    }
  }

  private Database database() {
    return address instanceof StoreAddress.Postgres postgres
        ? Database.postgres(postgres.url())
        : Database.sqlite(((StoreAddress.Folder) address).file(), settings -> {});
  }

  private static Ticks.Change tick(String item, boolean on, String at, String seen) {
    return new Ticks.Change(
        item, on, Instant.parse(at), Optional.ofNullable(seen).map(Instant::parse));
  }

  @Test
  void theLastTickOfAnItemHoldsHoweverLateItComesIn() {
    String id = store.sites().create("S", "0", owner).id();
    store
        .ticks()
        .merge(
            id,
            List.of(
                tick("pipe.pe-16", true, "2027-03-01T07:10:00Z", null),
                tick("mix.orchard", true, "2027-03-01T07:11:00Z", null)),
            owner);
    reopen();
    // A phone that had no connection: it had ticked one item before, and unticked one after.
    List<Ticks.Change> late =
        List.of(
            tick("pipe.pe-16", false, "2027-03-01T07:05:00Z", null),
            tick("mix.orchard", false, "2027-03-01T07:30:00Z", null),
            tick("part.end-cap-16", true, "2027-03-01T07:06:00Z", null));
    Ticks.Merged merged = store.ticks().merge(id, late, owner);
    assertThat(merged.ticks())
        .extracting(Ticks.Tick::item, Ticks.Tick::ticked)
        .containsExactly(
            tuple("mix.orchard", false), tuple("part.end-cap-16", true), tuple("pipe.pe-16", true));
    assertThat(merged.conflicts())
        .extracting(Ticks.Conflict::item, Ticks.Conflict::kept)
        .containsExactly(tuple("pipe.pe-16", false), tuple("mix.orchard", true));
    assertThat(merged.conflicts().get(0).other().at())
        .isEqualTo(Instant.parse("2027-03-01T07:10:00Z"));
    assertThat(store.ticks().merge(id, late, owner).ticks())
        .as("sent twice")
        .isEqualTo(merged.ticks());
  }

  @Test
  void whoSawTheOtherTickContradictsNobody() {
    String id = store.sites().create("S", "0", owner).id();
    store.ticks().merge(id, List.of(tick("x", true, "2027-03-01T07:10:00Z", null)), owner);
    Ticks.Merged back =
        store
            .ticks()
            .merge(
                id,
                List.of(tick("x", false, "2027-03-01T07:20:00Z", "2027-03-01T07:10:00Z")),
                owner);
    assertThat(back.conflicts()).isEmpty();
    assertThat(back.ticks()).singleElement().matches(tick -> !tick.ticked());
    // The same said twice by two is no contradiction either.
    assertThat(
            store
                .ticks()
                .merge(id, List.of(tick("x", false, "2027-03-01T07:00:00Z", null)), owner)
                .conflicts())
        .isEmpty();
  }

  @Test
  void aClockThatIsFastDoesNotHoldForEver() {
    String id = store.sites().create("S", "0", owner).id();
    Ticks.Merged fast =
        store
            .ticks()
            .merge(id, List.of(tick("x", true, "+999999999-12-31T23:59:59Z", null)), owner);
    assertThat(fast.ticks()).singleElement().matches(tick -> tick.at().equals(clock.instant()));
    clock.pass(Duration.ofMinutes(1));
    assertThat(
            store
                .ticks()
                .merge(id, List.of(tick("x", false, "2027-03-01T08:00:30Z", null)), owner)
                .ticks())
        .singleElement()
        .matches(tick -> !tick.ticked());
  }

  @Test
  void bringsDataOfTheFirstVersionAlong() throws Exception {
    store.close();
    address = empty();
    if (address instanceof StoreAddress.Folder folder) {
      java.nio.file.Files.createDirectories(folder.path());
    }
    try (Database database = database()) {
      Flyway.configure()
          .configuration(Schema.flyway(database).getConfiguration())
          .target("1")
          .load()
          .migrate();
      assertThat(Schema.found(database, address instanceof StoreAddress.Folder)).isEqualTo(1);
      database.write(
          handle ->
              handle.execute(
                  "insert into site (id, name, version, position, created, changed)"
                      + " values ('old', 'Old', 1, 1, 0, 0)"));
      database.write(
          handle ->
              handle.execute(
                  "insert into journal_entry (id, site_id, number, revision, day, kind,"
                      + " subject_kind, subject, note, author, created, changed) values"
                      + " ('11111111-a', 'old', 1, 1, '2026-03-02', 'NOTE', 'SITE', '', 'kept',"
                      + " 'Rosa', 0, 0)"));
    }
    store = Store.open(address, clock);
    assertThat(store.journal().list("old"))
        .singleElement()
        .satisfies(entry -> assertThat(entry.content().note()).isEqualTo("kept"));
    store.photos().add("old", "11111111-a", jpeg(10, 1), owner);
    assertThat(store.ticks().list("old")).isEmpty();
    assertThat(store.copies()).hasSize(address instanceof StoreAddress.Folder ? 1 : 0);
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
    Database database = database();
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
    Database database = database();
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
