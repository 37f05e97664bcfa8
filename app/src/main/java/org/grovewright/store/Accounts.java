package org.grovewright.store;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.text.Normalizer;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.grovewright.store.StoreException.Reason;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** The accounts with their passwords and settings. */
public final class Accounts {
  /** Shortest password, in characters. */
  public static final int SHORTEST_PASSWORD = 10;

  private static final int LONGEST_PASSWORD = 200;
  private static final int LONGEST_NAME = 60;

  private final Database database;
  private final InstantSource clock;

  Accounts(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
  }

  // 19 MiB, 2 passes, 1 lane: the smallest setting that the OWASP Password Storage Cheat Sheet
  // names for Argon2id, from memory. Small, since a garden's server may be a very small computer.
  private static Argon2Function hashing() {
    return Argon2Function.getInstance(19 * 1024, 2, 1, 32, Argon2.ID);
  }

  /** The owner who works at the program's own machine. */
  public Account local() {
    return find(Account.LOCAL).orElseThrow();
  }

  /** The account with this id. */
  public Optional<Account> find(String id) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "select id, name, password from account where id = :id and disabled = 0")
                .bind("id", id)
                .map(Accounts::row)
                .findOne());
  }

  /** All accounts by name. */
  public List<Account> list() {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "select id, name, password from account where disabled = 0 order by name_key")
                .map(Accounts::row)
                .list());
  }

  /** Whether anybody can sign in. */
  public boolean anyPassword() {
    return list().stream().anyMatch(Account::hasPassword);
  }

  /**
   * Adds an account.
   *
   * @throws StoreException if the name is taken, or the name or password is no good
   */
  public Account add(String name, String password) {
    String hash = hash(password);
    String id = UUID.randomUUID().toString();
    return database.write(
        handle -> {
          checkName(handle, name, id);
          handle
              .createUpdate(
                  "insert into account (id, name, name_key, password, created)"
                      + " values (:id, :name, :key, :password, :now)")
              .bind("id", id)
              .bind("name", name.strip())
              .bind("key", key(name))
              .bind("password", hash)
              .bind("now", clock.millis())
              .execute();
          return new Account(id, name.strip(), true);
        });
  }

  /**
   * Gives an account a name and a password, and signs it out everywhere.
   *
   * @throws StoreException if the name is taken, or the name or password is no good
   */
  public Account setPassword(String id, String name, String password) {
    String hash = hash(password);
    return database.write(
        handle -> {
          checkName(handle, name, id);
          int found =
              handle
                  .createUpdate(
                      "update account set name = :name, name_key = :key, password = :password"
                          + " where id = :id and disabled = 0")
                  .bind("id", id)
                  .bind("name", name.strip())
                  .bind("key", key(name))
                  .bind("password", hash)
                  .execute();
          if (found == 0) {
            throw new StoreException(Reason.MISSING, "There is no such account.");
          }
          handle
              .createUpdate("delete from session where account_id = :id")
              .bind("id", id)
              .execute();
          return new Account(id, name.strip(), true);
        });
  }

  /**
   * Takes an account away: it cannot sign in any more and sees no site. What it wrote stays.
   *
   * @throws StoreException if it is the only owner of a site, or the local owner's
   */
  public void disable(String id) {
    if (id.equals(Account.LOCAL)) {
      throw new StoreException(
          Reason.REFUSED, "The account of the program's owner cannot be taken away.");
    }
    database.write(
        handle -> {
          List<String> sites =
              handle
                  .createQuery("select site_id from member where account_id = :id")
                  .bind("id", id)
                  .mapTo(String.class)
                  .list();
          for (String site : sites) {
            Members.lock(handle, site);
            Members.remove(handle, site, id);
            Members.checkOwner(handle, site);
          }
          handle
              .createUpdate("delete from session where account_id = :id")
              .bind("id", id)
              .execute();
          handle
              .createUpdate(
                  "update account set disabled = 1, password = null, name_key = :key where id = :id")
              .bind("id", id)
              .bind("key", "disabled " + id)
              .execute();
          return null;
        });
  }

  /** The account with this name if this is its password. Takes as long for a name unknown. */
  public Optional<Account> check(String name, String password) {
    record Found(Account account, String hash) {}
    Optional<Found> found =
        database.read(
            handle ->
                handle
                    .createQuery(
                        "select id, name, password from account"
                            + " where name_key = :key and disabled = 0 and password is not null")
                    .bind("key", key(name))
                    .map((rs, context) -> new Found(row(rs, context), rs.getString("password")))
                    .findOne());
    String tried = password.length() > LONGEST_PASSWORD ? "" : plain(password);
    if (found.isEmpty()) {
      Password.hash(tried + "x").addRandomSalt(16).with(hashing());
      return Optional.empty();
    }
    boolean right = Password.check(tried, found.get().hash()).with(hashing());
    return right ? Optional.of(found.get().account()) : Optional.empty();
  }

  /** The settings of an account, by name. */
  public Map<String, String> settings(String accountId) {
    return database.read(
        handle -> {
          Map<String, String> settings = new LinkedHashMap<>();
          handle
              .createQuery("select name, value from setting where account_id = :id order by name")
              .bind("id", accountId)
              .mapToMap()
              .forEach(row -> settings.put((String) row.get("name"), (String) row.get("value")));
          return settings;
        });
  }

  /** Sets a setting of an account. */
  public void set(String accountId, String name, String value) {
    database.write(
        handle ->
            handle
                .createUpdate(
                    "insert into setting (account_id, name, value) values (:id, :name, :value)"
                        + " on conflict (account_id, name) do update set value = excluded.value")
                .bind("id", accountId)
                .bind("name", name)
                .bind("value", value)
                .execute());
  }

  private static Account row(ResultSet rs, StatementContext context) throws SQLException {
    return new Account(rs.getString("id"), rs.getString("name"), rs.getString("password") != null);
  }

  private static void checkName(Handle handle, String name, String id) {
    if (name.isBlank() || name.strip().length() > LONGEST_NAME) {
      throw StoreException.with(
          "name", Reason.REFUSED, "The name must have from 1 to {0} letters.", LONGEST_NAME);
    }
    boolean taken =
        handle
                .createQuery("select count(*) from account where name_key = :key and id <> :id")
                .bind("key", key(name))
                .bind("id", id)
                .mapTo(Integer.class)
                .one()
            > 0;
    if (taken) {
      throw StoreException.with(
          "name", Reason.REFUSED, "There is already an account of that name.");
    }
  }

  /** Two names that look alike are one. */
  private static String key(String name) {
    return Normalizer.normalize(name.strip(), Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
  }

  /** The same password typed on two devices may come in two forms of Unicode. */
  private static String plain(String password) {
    return Normalizer.normalize(password, Normalizer.Form.NFKC);
  }

  private static String hash(String password) {
    int length = password.codePointCount(0, password.length());
    if (length < SHORTEST_PASSWORD || password.length() > LONGEST_PASSWORD) {
      throw StoreException.with(
          "password",
          Reason.REFUSED,
          "The password must have from {0} to {1} characters; a few words in a row are easy to"
              + " keep in mind.",
          SHORTEST_PASSWORD,
          LONGEST_PASSWORD);
    }
    return Password.hash(plain(password)).addRandomSalt(16).with(hashing()).getResult();
  }
}
