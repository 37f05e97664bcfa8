package org.grovewright.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.store.JournalEntry.Content;
import org.grovewright.store.JournalEntry.Photo;
import org.grovewright.store.JournalEntry.SubjectKind;
import org.grovewright.store.StoreException.Reason;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * What was done and seen in the groves. Devices without a connection collect changes and send them
 * later, perhaps twice: a change that is already in makes no difference.
 */
public final class Journal {
  private static final String COLUMNS =
      "select e.id, e.number, e.revision, e.day, e.kind, e.subject_kind, e.subject, e.amount,"
          + " e.amount_kind, e.note, e.author, e.created, e.changed, e.deleted,"
          + " p.hash as photo_hash, p.type as photo_type, p.size as photo_size"
          + " from journal_entry e left join journal_photo p on p.entry_id = e.id ";

  private final Database database;
  private final InstantSource clock;

  Journal(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * A change made on a device.
   *
   * @param content the entry as it is now there
   * @param baseRevision the revision it was made from, 0 for a new entry
   * @param deleted whether the entry was deleted
   */
  public record Change(Content content, long baseRevision, boolean deleted) {}

  /**
   * What became of a batch of changes.
   *
   * @param entries every entry that has changed since the device last asked, its own ones too
   * @param conflicts entries that were changed elsewhere in between, as they are here; the device's
   *     changes of them were not taken over
   * @param upTo number to ask from the next time
   */
  public record Synced(List<JournalEntry> entries, List<JournalEntry> conflicts, long upTo) {}

  /** The entries of a site that are not deleted, newest day first. */
  public List<JournalEntry> list(String siteId) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    COLUMNS
                        + "where e.site_id = :site and e.deleted = 0"
                        + " order by e.day desc, e.number desc")
                .bind("site", siteId)
                .map(Journal::entry)
                .list());
  }

  /**
   * Takes over changes from a device and gives it what is new.
   *
   * @param siteId the site
   * @param changes the device's changes
   * @param since number up to which the device knows the journal
   * @param author who made the changes
   * @throws StoreException if there is no such site, or an entry's id is in use elsewhere
   */
  public Synced sync(String siteId, List<Change> changes, long since, Author author) {
    return database.write(
        handle -> {
          List<JournalEntry> conflicts = new ArrayList<>();
          Members.lock(handle, siteId);
          for (Change change : changes) {
            apply(handle, siteId, change, author).ifPresent(conflicts::add);
          }
          return news(handle, siteId, since, conflicts);
        });
  }

  /**
   * What is new for a device that has nothing to send.
   *
   * @param siteId the site
   * @param since number up to which the device knows the journal
   * @throws StoreException if there is no such site
   */
  public Synced since(String siteId, long since) {
    return database.read(handle -> news(handle, siteId, since, List.of()));
  }

  private static Synced news(
      Handle handle, String siteId, long since, List<JournalEntry> conflicts) {
    // Before the entries: one that comes in between is then told twice, never passed over.
    long upTo =
        handle
            .createQuery("select journal_number from site where id = :site")
            .bind("site", siteId)
            .mapTo(Long.class)
            .findOne()
            .orElseThrow(() -> new StoreException(Reason.MISSING, "There is no such site."));
    List<JournalEntry> entries =
        handle
            .createQuery(
                COLUMNS + "where e.site_id = :site and e.number > :since order by e.number")
            .bind("site", siteId)
            .bind("since", since)
            .map(Journal::entry)
            .list();
    return new Synced(entries, conflicts, upTo);
  }

  /** Applies one change; the entry as it is here if it contradicts the change. */
  private Optional<JournalEntry> apply(Handle handle, String siteId, Change change, Author author) {
    Optional<JournalEntry> there = find(handle, siteId, change.content().id());
    if (there.isEmpty()) {
      insert(handle, siteId, change, author);
      return Optional.empty();
    }
    JournalEntry present = there.get();
    boolean same =
        present.content().equals(change.content()) && present.deleted() == change.deleted();
    if (same) {
      return Optional.empty();
    }
    if (present.revision() != change.baseRevision()) {
      return there;
    }
    handle
        .createUpdate(
            "update journal_entry set number = :number, revision = revision + 1, day = :day,"
                + " kind = :kind, subject_kind = :subjectKind, subject = :subject,"
                + " amount = :amount, amount_kind = :amountKind, note = :note, changed = :now,"
                + " deleted = :deleted where id = :id")
        .bindMap(columns(change))
        .bind("number", nextNumber(handle, siteId))
        .bind("now", clock.millis())
        .execute();
    return Optional.empty();
  }

  private Optional<JournalEntry> find(Handle handle, String siteId, String id) {
    Optional<String> site =
        handle
            .createQuery("select site_id from journal_entry where id = :id")
            .bind("id", id)
            .mapTo(String.class)
            .findOne();
    if (site.isPresent() && !site.get().equals(siteId)) {
      throw new StoreException(
          Reason.REFUSED, "The id of a journal entry is already in use; give it a new one.");
    }
    return handle
        .createQuery(COLUMNS + "where e.id = :id")
        .bind("id", id)
        .map(Journal::entry)
        .findOne();
  }

  private void insert(Handle handle, String siteId, Change change, Author author) {
    handle
        .createUpdate(
            "insert into journal_entry (id, site_id, number, revision, day, kind, subject_kind,"
                + " subject, amount, amount_kind, note, account_id, author, created, changed,"
                + " deleted) values (:id, :site, :number, 1, :day, :kind, :subjectKind, :subject,"
                + " :amount, :amountKind, :note, :account, :author, :now, :now, :deleted)")
        .bindMap(columns(change))
        .bind("site", siteId)
        .bind("number", nextNumber(handle, siteId))
        .bind("account", author.accountId())
        .bind("author", author.name())
        .bind("now", clock.millis())
        .execute();
  }

  private static java.util.Map<String, Object> columns(Change change) {
    Content content = change.content();
    java.util.Map<String, Object> columns = new java.util.HashMap<>();
    columns.put("id", content.id());
    columns.put("day", content.day().toString());
    columns.put("kind", content.kind().name());
    columns.put("subjectKind", content.subjectKind().name());
    columns.put("subject", content.subject());
    columns.put("amount", content.amount().map(Quantity::value).orElse(null));
    columns.put("amountKind", content.amount().map(amount -> amount.kind().name()).orElse(null));
    columns.put("note", content.note());
    columns.put("deleted", change.deleted() ? 1 : 0);
    return columns;
  }

  /** The next number of a site's journal; the site must be locked. */
  static long nextNumber(Handle handle, String siteId) {
    handle
        .createUpdate("update site set journal_number = journal_number + 1 where id = :site")
        .bind("site", siteId)
        .execute();
    return handle
        .createQuery("select journal_number from site where id = :site")
        .bind("site", siteId)
        .mapTo(Long.class)
        .one();
  }

  private static Optional<Photo> photo(ResultSet rs) throws SQLException {
    String hash = rs.getString("photo_hash");
    return hash == null
        ? Optional.empty()
        : Optional.of(
            new Photo(
                hash, PhotoType.valueOf(rs.getString("photo_type")), rs.getLong("photo_size")));
  }

  private static JournalEntry entry(ResultSet rs, StatementContext context) throws SQLException {
    double amount = rs.getDouble("amount");
    String amountKind = rs.getString("amount_kind");
    Content content =
        new Content(
            rs.getString("id"),
            LocalDate.parse(rs.getString("day")),
            JournalKind.valueOf(rs.getString("kind")),
            SubjectKind.valueOf(rs.getString("subject_kind")),
            rs.getString("subject"),
            amountKind == null
                ? Optional.empty()
                : Optional.of(new Quantity(amount, Kind.valueOf(amountKind))),
            rs.getString("note"));
    return new JournalEntry(
        content,
        rs.getLong("number"),
        rs.getLong("revision"),
        rs.getString("author"),
        Instant.ofEpochMilli(rs.getLong("created")),
        Instant.ofEpochMilli(rs.getLong("changed")),
        rs.getInt("deleted") == 1,
        photo(rs));
  }
}
