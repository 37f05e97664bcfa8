package org.grovewright.store;

import java.time.InstantSource;
import java.util.Optional;

/**
 * Secret addresses under which a calendar program can fetch a site's calendar, and nothing else.
 */
public final class Feeds {
  private final Database database;
  private final InstantSource clock;

  Feeds(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
  }

  /** Makes an address for an account; the one it had for the site before ends. */
  public String make(String siteId, String accountId) {
    String token = Secrets.token();
    database.write(
        handle -> {
          remove(handle, siteId, accountId);
          return handle
              .createUpdate(
                  "insert into feed (token_hash, site_id, account_id, created)"
                      + " values (:hash, :site, :account, :now)")
              .bind("hash", Secrets.hash(token))
              .bind("site", siteId)
              .bind("account", accountId)
              .bind("now", clock.millis())
              .execute();
        });
    return token;
  }

  /** Ends the address of an account. */
  public void end(String siteId, String accountId) {
    database.write(
        handle -> {
          remove(handle, siteId, accountId);
          return null;
        });
  }

  /** The site whose calendar a token opens. */
  public Optional<String> site(String token) {
    return database.read(
        handle ->
            handle
                .createQuery("select site_id from feed where token_hash = :hash")
                .bind("hash", Secrets.hash(token))
                .mapTo(String.class)
                .findOne());
  }

  private static void remove(org.jdbi.v3.core.Handle handle, String siteId, String accountId) {
    handle
        .createUpdate("delete from feed where site_id = :site and account_id = :account")
        .bind("site", siteId)
        .bind("account", accountId)
        .execute();
  }
}
