package org.grovewright.store;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.store.StoreException.Reason;
import org.jdbi.v3.core.Handle;

/**
 * What on a site's shopping list is bought already, shared by all devices. The last change of an
 * item holds, by the time at which it was made on its device, so that devices without a connection
 * can send theirs later.
 */
public final class Ticks {
  /** How many items of one site are kept. */
  public static final int MOST_OF_A_SITE = 2000;

  private final Database database;
  private final InstantSource clock;

  Ticks(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * How an item stands.
   *
   * @param item its key on the list
   * @param ticked whether it is bought
   * @param at when that was said, by the clock of the device
   * @param author who said it
   */
  public record Tick(String item, boolean ticked, Instant at, String author) {}

  /**
   * What a device says of an item.
   *
   * @param item its key on the list
   * @param ticked whether it is bought
   * @param at when that was said; a time to come counts as now
   * @param seen the time of the tick that the device knew then, if it knew any
   */
  public record Change(String item, boolean ticked, Instant at, Optional<Instant> seen) {}

  /**
   * Two devices that said different things of an item without knowing of each other.
   *
   * @param item the item
   * @param kept whether the device's own word holds, being the later one
   * @param other what was there when the device's word came in
   */
  public record Conflict(String item, boolean kept, Tick other) {}

  /**
   * What became of a device's words.
   *
   * @param ticks every item as it stands, by key
   * @param conflicts items of which something else had been said
   */
  public record Merged(List<Tick> ticks, List<Conflict> conflicts) {}

  /** How the items of a site stand, by key; items nobody ever ticked are missing. */
  public List<Tick> list(String siteId) {
    return database.read(handle -> List.copyOf(present(handle, siteId).values()));
  }

  /**
   * Takes over what a device says. Sent twice it makes no difference.
   *
   * @throws StoreException if there is no such site, or too many items are ticked
   */
  public Merged merge(String siteId, List<Change> changes, Author author) {
    return database.write(
        handle -> {
          Members.lock(handle, siteId);
          Map<String, Tick> present = present(handle, siteId);
          Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
          List<Conflict> conflicts = new ArrayList<>();
          for (Change change : changes) {
            Instant at =
                change.at().isAfter(now) ? now : change.at().truncatedTo(ChronoUnit.MILLIS);
            Tick there = present.get(change.item());
            boolean later = there == null || at.isAfter(there.at());
            if (there != null
                && there.ticked() != change.ticked()
                && !change.seen().equals(Optional.of(there.at()))) {
              conflicts.add(new Conflict(change.item(), later, there));
            }
            if (later) {
              put(handle, siteId, change, at, author);
            }
          }
          Map<String, Tick> after = present(handle, siteId);
          if (after.size() > MOST_OF_A_SITE) {
            throw new StoreException(
                Reason.REFUSED,
                "No more than {0} items of a shopping list can be ticked.",
                MOST_OF_A_SITE);
          }
          return new Merged(List.copyOf(after.values()), conflicts);
        });
  }

  private static Map<String, Tick> present(Handle handle, String siteId) {
    Map<String, Tick> ticks = new LinkedHashMap<>();
    handle
        .createQuery(
            "select item, ticked, changed, author from shopping_tick where site_id = :site"
                + " order by item")
        .bind("site", siteId)
        .map(
            (rs, context) ->
                new Tick(
                    rs.getString("item"),
                    rs.getInt("ticked") == 1,
                    Instant.ofEpochMilli(rs.getLong("changed")),
                    rs.getString("author")))
        .forEach(tick -> ticks.put(tick.item(), tick));
    return ticks;
  }

  private static void put(Handle handle, String siteId, Change change, Instant at, Author author) {
    handle
        .createUpdate(
            "insert into shopping_tick (site_id, item, ticked, changed, account_id, author)"
                + " values (:site, :item, :ticked, :at, :account, :author)"
                + " on conflict (site_id, item) do update set ticked = excluded.ticked,"
                + " changed = excluded.changed, account_id = excluded.account_id,"
                + " author = excluded.author")
        .bind("site", siteId)
        .bind("item", change.item())
        .bind("ticked", change.ticked() ? 1 : 0)
        .bind("at", at.toEpochMilli())
        .bind("account", author.accountId())
        .bind("author", author.name())
        .execute();
  }
}
