package org.grovewright.store;

import java.time.InstantSource;
import java.util.Optional;
import org.grovewright.store.JournalEntry.Photo;
import org.grovewright.store.StoreException.Reason;
import org.jdbi.v3.core.Handle;

/** The photos of journal entries, at most one for each. */
public final class Photos {
  /** Largest photo, bytes; a device makes it smaller before it sends it. */
  public static final int LARGEST = 2 * 1024 * 1024;

  /** What the photos of one site may take together, bytes. */
  public static final long MOST_OF_A_SITE = 200L * 1024 * 1024;

  private final Database database;
  private final InstantSource clock;
  private final long mostOfASite;

  Photos(Database database, InstantSource clock, long mostOfASite) {
    this.database = database;
    this.clock = clock;
    this.mostOfASite = mostOfASite;
  }

  /**
   * A photo with its bytes.
   *
   * @param about what is known of it
   * @param content its bytes
   */
  public record Kept(Photo about, byte[] content) {}

  /**
   * Adds a photo to an entry. The same photo sent twice makes no difference.
   *
   * @param siteId the site
   * @param entryId the entry, which must be in already
   * @param content the bytes of the picture
   * @return what is known of the photo
   * @throws StoreException if there is no such entry, it has another photo, the bytes are none of
   *     the pictures that are kept or too many, or the site's photos take too much room
   */
  public Photo add(String siteId, String entryId, byte[] content, Author author) {
    PhotoType type =
        PhotoType.of(content)
            .orElseThrow(
                () ->
                    new StoreException(
                        Reason.REFUSED, "This is no photo; send a JPEG, PNG or WebP picture."));
    if (content.length > LARGEST) {
      throw new StoreException(
          Reason.REFUSED, "A photo may have at most {0} MB.", LARGEST / 1024 / 1024);
    }
    Photo photo = new Photo(Secrets.hash(content), type, content.length);
    return database.write(
        handle -> {
          Members.lock(handle, siteId);
          checkEntry(handle, siteId, entryId);
          Optional<String> there =
              handle
                  .createQuery("select hash from journal_photo where entry_id = :entry")
                  .bind("entry", entryId)
                  .mapTo(String.class)
                  .findOne();
          if (there.isPresent()) {
            if (there.get().equals(photo.hash())) {
              return photo;
            }
            throw new StoreException(
                Reason.REFUSED,
                "This entry has another photo already. Take that one away first, or write a new"
                    + " entry.");
          }
          checkRoom(handle, siteId, content.length);
          handle
              .createUpdate(
                  "insert into journal_photo (entry_id, type, hash, size, content, account_id,"
                      + " author, added) values (:entry, :type, :hash, :size, :content, :account,"
                      + " :author, :now)")
              .bind("entry", entryId)
              .bind("type", type.name())
              .bind("hash", photo.hash())
              .bind("size", photo.bytes())
              .bind("content", content)
              .bind("account", author.accountId())
              .bind("author", author.name())
              .bind("now", clock.millis())
              .execute();
          tellOfChange(handle, siteId, entryId);
          return photo;
        });
  }

  /** The photo of an entry that is not deleted. */
  public Optional<Kept> find(String siteId, String entryId) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "select p.hash, p.type, p.size, p.content from journal_photo p"
                        + " join journal_entry e on e.id = p.entry_id"
                        + " where p.entry_id = :entry and e.site_id = :site and e.deleted = 0")
                .bind("entry", entryId)
                .bind("site", siteId)
                .map(
                    (rs, context) ->
                        new Kept(
                            new Photo(
                                rs.getString("hash"),
                                PhotoType.valueOf(rs.getString("type")),
                                rs.getLong("size")),
                            rs.getBytes("content")))
                .findOne());
  }

  /** Takes the photo of an entry away; without one nothing happens. */
  public void remove(String siteId, String entryId) {
    database.write(
        handle -> {
          Members.lock(handle, siteId);
          checkEntry(handle, siteId, entryId);
          int gone =
              handle
                  .createUpdate("delete from journal_photo where entry_id = :entry")
                  .bind("entry", entryId)
                  .execute();
          if (gone > 0) {
            tellOfChange(handle, siteId, entryId);
          }
          return null;
        });
  }

  private static void checkEntry(Handle handle, String siteId, String entryId) {
    int found =
        handle
            .createQuery(
                "select count(*) from journal_entry"
                    + " where id = :entry and site_id = :site and deleted = 0")
            .bind("entry", entryId)
            .bind("site", siteId)
            .mapTo(Integer.class)
            .one();
    if (found == 0) {
      throw new StoreException(Reason.MISSING, "There is no such entry in the journal.");
    }
  }

  private void checkRoom(Handle handle, String siteId, long more) {
    if (used(handle, siteId) + more > mostOfASite) {
      // Those of deleted entries were kept only in case somebody wants them back.
      handle
          .createUpdate(
              "delete from journal_photo where entry_id in (select id from journal_entry"
                  + " where site_id = :site and deleted = 1)")
          .bind("site", siteId)
          .execute();
    }
    if (used(handle, siteId) + more > mostOfASite) {
      throw new StoreException(
          Reason.REFUSED,
          "The photos of this site fill the {0} MB that are set aside for them. Take older ones"
              + " away first.",
          mostOfASite / 1024 / 1024);
    }
  }

  private static long used(Handle handle, String siteId) {
    return handle
        .createQuery(
            "select coalesce(sum(p.size), 0) from journal_photo p"
                + " join journal_entry e on e.id = p.entry_id where e.site_id = :site")
        .bind("site", siteId)
        .mapTo(Long.class)
        .one();
  }

  /** Lets the devices that follow the journal hear of it; what the entry says is as it was. */
  private static void tellOfChange(Handle handle, String siteId, String entryId) {
    handle
        .createUpdate("update journal_entry set number = :number where id = :entry")
        .bind("number", Journal.nextNumber(handle, siteId))
        .bind("entry", entryId)
        .execute();
  }
}
