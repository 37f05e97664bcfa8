package org.grovewright.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A program killed in the middle of saving must not lose an edit that it has confirmed. Killing
 * tests the order of writes and the recovery of the log; that the disk keeps what it was told to
 * keep when the power goes rests on the database's own full synchronisation.
 */
class KilledWhileSavingTest {
  private static final int KILLS = 200;
  private static final int SIDE_BY_SIDE = 2;
  private static final int MOST_SAVES_BEFORE_KILL = 12;

  private static final String NEVER = String.valueOf(Long.MAX_VALUE);

  @TempDir Path folder;

  @Test
  void losesNoConfirmedEdit() throws Exception {
    StoreAddress.Folder rehearsed = new StoreAddress.Folder(folder.resolve("rehearsed"));
    String site = newSite(rehearsed);
    ChildPrograms children =
        new ChildPrograms(folder, SaveLoop.class, rehearsed.path().toString(), site, "8");
    assertThat(check(rehearsed, site, 0)).as("saved twice eight times").isEqualTo(17);
    // Side by side, each with a database of its own: a start waits for the disk as much as it
    // works.
    ExecutorService threads = Executors.newFixedThreadPool(SIDE_BY_SIDE);
    try {
      List<Future<Integer>> kills = new ArrayList<>();
      for (int i = 0; i < SIDE_BY_SIDE; i++) {
        StoreAddress.Folder address = new StoreAddress.Folder(folder.resolve("data-" + i));
        // The seed only spreads the kills over the work; what is checked holds for every seed.
        Random random = new Random(20270301 + i);
        kills.add(threads.submit(() -> killAgainAndAgain(children, address, random)));
      }
      int killed = 0;
      for (Future<Integer> some : kills) {
        killed += some.get();
      }
      assertThat(killed).isEqualTo(KILLS);
    } finally {
      threads.shutdownNow();
      assertThat(threads.awaitTermination(60, TimeUnit.SECONDS)).isTrue();
    }
  }

  private static String newSite(StoreAddress.Folder address) {
    try (Store store = Store.open(address, InstantSource.system())) {
      return store.sites().create("S", SaveLoop.text(1), store.accounts().local().author()).id();
    }
  }

  /** Kills children over one database; how many were killed. */
  private static int killAgainAndAgain(
      ChildPrograms children, StoreAddress.Folder address, Random random) throws Exception {
    String site = newSite(address);
    long newest = check(address, site, 0);
    assertThat(newest).isEqualTo(1);
    int kill = 0;
    for (; kill < KILLS / SIDE_BY_SIDE; kill++) {
      List<Long> confirmed =
          killAfter(children, 1 + random.nextInt(MOST_SAVES_BEFORE_KILL), random, address, site);
      assertThat(confirmed).as("saves of run %s", kill).isNotEmpty();
      assertThat(confirmed.get(0)).as("goes on from where it was").isEqualTo(newest + 1);
      newest = check(address, site, newest);
      assertThat(newest)
          .as("newest version on the disk")
          .isGreaterThanOrEqualTo(confirmed.get(confirmed.size() - 1));
    }
    assertThat(check(address, site, 0)).as("all versions once more").isEqualTo(newest);
    try (Store store = Store.open(address, InstantSource.system())) {
      assertThat(store.trouble()).isEmpty();
      assertThat(store.sites().get(site).description()).isEqualTo(SaveLoop.text(newest));
    }
    return kill;
  }

  /** The versions that a child confirmed before it was killed. */
  private static List<Long> killAfter(
      ChildPrograms children, int saves, Random random, StoreAddress.Folder address, String site)
      throws Exception {
    Process child = children.start(address.path().toString(), site, NEVER);
    List<Long> said = new ArrayList<>();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(child.getInputStream(), StandardCharsets.US_ASCII))) {
      String line;
      boolean killed = false;
      while ((line = lines.readLine()) != null) {
        said.add(Long.parseLong(line));
        if (!killed && said.size() >= saves) {
          // Somewhere in the middle of the saves that follow.
          TimeUnit.MICROSECONDS.sleep(random.nextInt(4000));
          assertThat(child.isAlive()).isTrue();
          // Not by the process itself: that would also throw away what it has said.
          child.toHandle().destroyForcibly();
          killed = true;
        }
      }
    } finally {
      child.destroyForcibly();
    }
    assertThat(child.waitFor(30, TimeUnit.SECONDS)).isTrue();
    return said;
  }

  /** The newest version on the disk, after a check of those after an earlier one. */
  private static long check(StoreAddress.Folder address, String site, long after)
      throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + address.file());
        Statement statement = connection.createStatement()) {
      try (ResultSet rows = statement.executeQuery("pragma integrity_check")) {
        rows.next();
        assertThat(rows.getString(1)).isEqualTo("ok");
      }
      long version = after;
      try (ResultSet rows =
          statement.executeQuery(
              "select version, description from site_edit where site_id = '"
                  + site
                  + "' and version > "
                  + after
                  + " order by version")) {
        while (rows.next()) {
          version++;
          assertThat(rows.getLong(1)).isEqualTo(version);
          assertThat(rows.getString(2)).isEqualTo(SaveLoop.text(version));
        }
      }
      return version;
    }
  }
}
