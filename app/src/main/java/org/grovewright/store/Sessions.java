package org.grovewright.store;

import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;

/** Who is signed in on which browser. */
public final class Sessions {
  /** A session not used for this long ends. */
  public static final Duration IDLE = Duration.ofDays(7);

  /** A session ends after this long in any case. */
  public static final Duration LONGEST = Duration.ofDays(30);

  private static final Duration SEEN_STEP = Duration.ofMinutes(10);

  private final Database database;
  private final InstantSource clock;

  Sessions(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * A new session.
   *
   * @param token what the browser's cookie holds
   * @param csrf what every change must carry besides
   */
  public record Started(String token, String csrf) {}

  /**
   * A session that goes on.
   *
   * @param account who is signed in
   * @param csrf what every change must carry
   */
  public record Session(Account account, String csrf) {}

  /** Signs an account in. */
  public Started start(String accountId) {
    Started started = new Started(Secrets.token(), Secrets.token());
    database.write(
        handle -> {
          long now = clock.millis();
          handle
              .createUpdate("delete from session where seen < :idle or created < :oldest")
              .bind("idle", now - IDLE.toMillis())
              .bind("oldest", now - LONGEST.toMillis())
              .execute();
          return handle
              .createUpdate(
                  "insert into session (token_hash, account_id, csrf, created, seen)"
                      + " values (:hash, :account, :csrf, :now, :now)")
              .bind("hash", Secrets.hash(started.token()))
              .bind("account", accountId)
              .bind("csrf", started.csrf())
              .bind("now", now)
              .execute();
        });
    return started;
  }

  /** The session of a token, unless it has ended. */
  public Optional<Session> find(String token) {
    record Row(Session session, long seen) {}
    long now = clock.millis();
    String hash = Secrets.hash(token);
    Optional<Row> row =
        database.read(
            handle ->
                handle
                    .createQuery(
                        "select a.id, a.name, s.csrf, s.seen from session s"
                            + " join account a on a.id = s.account_id where s.token_hash = :hash"
                            + " and a.disabled = 0 and s.seen >= :idle and s.created >= :oldest")
                    .bind("hash", hash)
                    .bind("idle", now - IDLE.toMillis())
                    .bind("oldest", now - LONGEST.toMillis())
                    .map(
                        (rs, context) ->
                            new Row(
                                new Session(
                                    new Account(rs.getString("id"), rs.getString("name"), true),
                                    rs.getString("csrf")),
                                rs.getLong("seen")))
                    .findOne());
    // Not at every request: that would be a write to the disk each time.
    if (row.isPresent() && now - row.get().seen() > SEEN_STEP.toMillis()) {
      goOn(hash, now);
    }
    return row.map(Row::session);
  }

  private void goOn(String hash, long now) {
    try {
      database.write(
          handle ->
              handle
                  .createUpdate("update session set seen = :now where token_hash = :hash")
                  .bind("now", now)
                  .bind("hash", hash)
                  .execute());
    } catch (StoreException e) {
      // With a full disk, or one that may only be read, whoever is signed in must still be able to
      // read; without this the session only ends a little sooner.
    }
  }

  /** Signs out. */
  public void end(String token) {
    database.write(
        handle ->
            handle
                .createUpdate("delete from session where token_hash = :hash")
                .bind("hash", Secrets.hash(token))
                .execute());
  }
}
