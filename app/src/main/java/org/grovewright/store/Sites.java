package org.grovewright.store;

import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.grovewright.store.StoreException.Reason;
import org.jdbi.v3.core.Handle;

/** The sites with their descriptions and logs of edits. */
public final class Sites {
  private static final String CREATE = "create";
  private static final String EDIT = "edit";

  private final Database database;
  private final InstantSource clock;

  Sites(Database database, InstantSource clock) {
    this.database = database;
    this.clock = clock;
  }

  /** The sites an account may see, by name; also those in the bin if it owns them. */
  public List<SiteSummary> list(String accountId) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "select s.id, s.name, s.version, s.changed, s.deleted, m.role from site s"
                        + " join member m on m.site_id = s.id where m.account_id = :account"
                        + " and (s.deleted is null or m.role = 'OWNER') order by s.name, s.id")
                .bind("account", accountId)
                .map(
                    (rs, context) -> {
                      rs.getLong("deleted");
                      boolean inBin = !rs.wasNull();
                      return new SiteSummary(
                          rs.getString("id"),
                          rs.getString("name"),
                          rs.getLong("version"),
                          Role.valueOf(rs.getString("role")),
                          Instant.ofEpochMilli(rs.getLong("changed")),
                          inBin);
                    })
                .list());
  }

  /** What an account may do with a site; empty if it may not know of it. */
  public Optional<Role> role(String siteId, String accountId) {
    return database.read(handle -> Members.role(handle, siteId, accountId));
  }

  /** Makes a site that the author owns. */
  public SiteState create(String name, String description, Author author) {
    return database.write(
        handle -> {
          String id = UUID.randomUUID().toString();
          long now = clock.millis();
          handle
              .createUpdate(
                  "insert into site (id, name, version, position, created, changed)"
                      + " values (:id, :name, 1, 1, :now, :now)")
              .bind("id", id)
              .bind("name", name)
              .bind("now", now)
              .execute();
          NewEdit first =
              new NewEdit(Optional.empty(), "Started the site", "{}", name, description);
          insert(handle, id, 1, CREATE, 1, null, first, author);
          Members.put(handle, id, author.accountId(), Role.OWNER);
          return state(handle, id);
        });
  }

  /**
   * The site as it stands.
   *
   * @throws StoreException if there is none, or it is in the bin
   */
  public SiteState get(String siteId) {
    return database.read(handle -> state(handle, siteId));
  }

  /**
   * Saves an edit. Saving an edit with a client id that was saved before changes nothing.
   *
   * @param siteId the site
   * @param onVersion the version the edit was made on
   * @param edit the edit
   * @param author who made it
   * @return the state with the edit
   * @throws VersionConflictException if another version is the newest
   * @throws StoreException if there is no such site
   */
  public SiteState edit(String siteId, long onVersion, NewEdit edit, Author author) {
    return database.write(
        handle -> {
          if (saved(handle, siteId, edit)) {
            return state(handle, siteId);
          }
          if (!advance(handle, siteId, onVersion)) {
            SiteState newest = state(handle, siteId);
            // The same edit may have been saved while this one waited for its turn.
            if (saved(handle, siteId, edit)) {
              return newest;
            }
            throw new VersionConflictException(newest);
          }
          long parent = position(handle, siteId);
          move(handle, siteId, onVersion + 1, edit.name());
          insert(handle, siteId, onVersion + 1, EDIT, onVersion + 1, parent, edit, author);
          return state(handle, siteId);
        });
  }

  /**
   * Takes back the edit that made the present description.
   *
   * @throws VersionConflictException if another version is the newest
   * @throws StoreException if there is nothing to take back
   */
  public SiteState undo(String siteId, long onVersion, Author author) {
    return step(siteId, onVersion, author, "undo");
  }

  /**
   * Makes again the edit that was taken back last.
   *
   * @throws VersionConflictException if another version is the newest
   * @throws StoreException if there is nothing to make again
   */
  public SiteState redo(String siteId, long onVersion, Author author) {
    return step(siteId, onVersion, author, "redo");
  }

  private SiteState step(String siteId, long onVersion, Author author, String kind) {
    boolean undo = kind.equals("undo");
    return database.write(
        handle -> {
          if (!advance(handle, siteId, onVersion)) {
            throw new VersionConflictException(state(handle, siteId));
          }
          long position = position(handle, siteId);
          OptionalLong target =
              undo ? parent(handle, siteId, position) : child(handle, siteId, position);
          if (target.isEmpty()) {
            throw new StoreException(
                Reason.REFUSED,
                undo
                    ? "There is no earlier edit to undo."
                    : "There is no undone edit to make again.");
          }
          long told = undo ? position : target.getAsLong();
          String label =
              (undo ? "Undid: " : "Made again: ") + column(handle, siteId, told, "label");
          String name = column(handle, siteId, target.getAsLong(), "name");
          move(handle, siteId, target.getAsLong(), name);
          NewEdit row = new NewEdit(Optional.empty(), label, "{}", name, null);
          insert(handle, siteId, onVersion + 1, kind, target.getAsLong(), null, row, author);
          return state(handle, siteId);
        });
  }

  /** The newest lines of the log of edits, newest first. */
  public List<EditRecord> log(String siteId, int most) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "select version, kind, position, label, author, made from site_edit"
                        + " where site_id = :site order by version desc limit :most")
                .bind("site", siteId)
                .bind("most", most)
                .map(
                    (rs, context) ->
                        new EditRecord(
                            rs.getLong("version"),
                            rs.getString("kind"),
                            rs.getLong("position"),
                            rs.getString("label"),
                            rs.getString("author"),
                            Instant.ofEpochMilli(rs.getLong("made"))))
                .list());
  }

  /** Puts a site into the bin, from which it can be brought back. */
  public void delete(String siteId) {
    bin(siteId, "update site set deleted = :now where id = :site and deleted is null");
  }

  /** Brings a site back from the bin. */
  public void restore(String siteId) {
    bin(
        siteId,
        "update site set deleted = null where id = :site and deleted is not null and :now > 0");
  }

  /** Removes a site in the bin for good, with its log and its journal. */
  public void purge(String siteId) {
    bin(siteId, "delete from site where id = :site and deleted is not null and :now > 0");
  }

  private void bin(String siteId, String statement) {
    int changed =
        database.write(
            handle ->
                handle
                    .createUpdate(statement)
                    .bind("site", siteId)
                    .bind("now", clock.millis())
                    .execute());
    if (changed == 0) {
      throw missing();
    }
  }

  /** Who may see a site, owners first. */
  public List<Member> members(String siteId) {
    return database.read(handle -> Members.list(handle, siteId));
  }

  /**
   * Lets an account see a site, or changes what it may do.
   *
   * @throws StoreException if no owner would be left
   */
  public void share(String siteId, String accountId, Role role) {
    database.write(
        handle -> {
          Members.lock(handle, siteId);
          Members.put(handle, siteId, accountId, role);
          Members.checkOwner(handle, siteId);
          return null;
        });
  }

  /**
   * Takes a site from an account, with the calendar addresses the account made for it.
   *
   * @throws StoreException if no owner would be left
   */
  public void unshare(String siteId, String accountId) {
    database.write(
        handle -> {
          Members.lock(handle, siteId);
          Members.remove(handle, siteId, accountId);
          Members.checkOwner(handle, siteId);
          return null;
        });
  }

  private static StoreException missing() {
    return new StoreException(Reason.MISSING, "There is no such site, or it was deleted.");
  }

  private static SiteState state(Handle handle, String siteId) {
    SiteState bare =
        handle
            .createQuery(
                "select s.id, s.name, s.version, s.position, e.description, n.author, n.made"
                    + " from site s"
                    + " join site_edit e on e.site_id = s.id and e.version = s.position"
                    + " join site_edit n on n.site_id = s.id and n.version = s.version"
                    + " where s.id = :site and s.deleted is null")
            .bind("site", siteId)
            .map(
                (rs, context) ->
                    new SiteState(
                        rs.getString("id"),
                        rs.getString("name"),
                        rs.getLong("version"),
                        rs.getString("description"),
                        false,
                        false,
                        rs.getString("author"),
                        Instant.ofEpochMilli(rs.getLong("made"))))
            .findOne()
            .orElseThrow(Sites::missing);
    long position = position(handle, siteId);
    return new SiteState(
        bare.id(),
        bare.name(),
        bare.version(),
        bare.description(),
        parent(handle, siteId, position).isPresent(),
        child(handle, siteId, position).isPresent(),
        bare.changedBy(),
        bare.changed());
  }

  private boolean saved(Handle handle, String siteId, NewEdit edit) {
    return edit.clientId()
        .map(
            client ->
                handle
                        .createQuery(
                            "select count(*) from site_edit"
                                + " where site_id = :site and client_id = :client")
                        .bind("site", siteId)
                        .bind("client", client)
                        .mapTo(Integer.class)
                        .one()
                    > 0)
        .orElse(false);
  }

  /** Takes the next version number if the newest is the given one; nobody else can take it then. */
  private boolean advance(Handle handle, String siteId, long onVersion) {
    return handle
            .createUpdate(
                "update site set version = version + 1, changed = :now"
                    + " where id = :site and version = :version and deleted is null")
            .bind("now", clock.millis())
            .bind("site", siteId)
            .bind("version", onVersion)
            .execute()
        == 1;
  }

  private static void move(Handle handle, String siteId, long position, String name) {
    handle
        .createUpdate("update site set position = :position, name = :name where id = :site")
        .bind("position", position)
        .bind("name", name)
        .bind("site", siteId)
        .execute();
  }

  private void insert(
      Handle handle,
      String siteId,
      long version,
      String kind,
      long position,
      Long parent,
      NewEdit edit,
      Author author) {
    handle
        .createUpdate(
            "insert into site_edit (site_id, version, kind, position, parent, client_id, label,"
                + " operation, name, description, account_id, author, made) values (:site,"
                + " :version, :kind, :position, :parent, :client, :label, :operation, :name,"
                + " :description, :account, :author, :now)")
        .bind("site", siteId)
        .bind("version", version)
        .bind("kind", kind)
        .bind("position", position)
        .bind("parent", parent)
        .bind("client", edit.clientId().orElse(null))
        .bind("label", edit.label())
        .bind("operation", edit.operation())
        .bind("name", edit.name())
        .bind("description", edit.description())
        .bind("account", author.accountId())
        .bind("author", author.name())
        .bind("now", clock.millis())
        .execute();
  }

  private static long position(Handle handle, String siteId) {
    return handle
        .createQuery("select position from site where id = :site")
        .bind("site", siteId)
        .mapTo(Long.class)
        .one();
  }

  private static String column(Handle handle, String siteId, long version, String column) {
    return handle
        .createQuery(
            "select " + column + " from site_edit where site_id = :site and version = :version")
        .bind("site", siteId)
        .bind("version", version)
        .mapTo(String.class)
        .one();
  }

  private static OptionalLong parent(Handle handle, String siteId, long position) {
    return handle
        .createQuery(
            "select parent from site_edit"
                + " where site_id = :site and version = :position and parent is not null")
        .bind("site", siteId)
        .bind("position", position)
        .mapTo(Long.class)
        .findOne()
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  /**
   * The edit after the present one on the way to the newest edit. A new edit starts a new way: what
   * was undone before it stays in the log but is no longer made again.
   */
  private static OptionalLong child(Handle handle, String siteId, long position) {
    return handle
        .createQuery(
            "with recursive way (version, parent) as ("
                + "select version, parent from site_edit where site_id = :site and version ="
                + " (select max(version) from site_edit"
                + " where site_id = :site and kind in ('create', 'edit'))"
                + " union all"
                + " select e.version, e.parent from site_edit e"
                + " join way w on e.version = w.parent and e.site_id = :site"
                + " where w.parent > :position)"
                + " select version from way where parent = :position")
        .bind("site", siteId)
        .bind("position", position)
        .mapTo(Long.class)
        .findOne()
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }
}
