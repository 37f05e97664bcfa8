package org.grovewright.store;

import java.util.List;
import java.util.Optional;
import org.grovewright.store.StoreException.Reason;
import org.jdbi.v3.core.Handle;

/** Who may do what with a site, as the parts of a transaction. */
final class Members {
  private Members() {}

  static Optional<Role> role(Handle handle, String siteId, String accountId) {
    return handle
        .createQuery("select role from member where site_id = :site and account_id = :account")
        .bind("site", siteId)
        .bind("account", accountId)
        .mapTo(String.class)
        .findOne()
        .map(Role::valueOf);
  }

  static List<Member> list(Handle handle, String siteId) {
    return handle
        .createQuery(
            "select a.id, a.name, m.role from member m join account a on a.id = m.account_id"
                + " where m.site_id = :site"
                + " order by case m.role when 'OWNER' then 0 when 'HELPER' then 1 else 2 end,"
                + " a.name_key")
        .bind("site", siteId)
        .map(
            (rs, context) ->
                new Member(
                    rs.getString("id"), rs.getString("name"), Role.valueOf(rs.getString("role"))))
        .list();
  }

  /** Makes changes of a site's members wait for one another. */
  static void lock(Handle handle, String siteId) {
    int found =
        handle
            .createUpdate("update site set version = version where id = :site")
            .bind("site", siteId)
            .execute();
    if (found == 0) {
      throw new StoreException(Reason.MISSING, "There is no such site.");
    }
  }

  static void put(Handle handle, String siteId, String accountId, Role role) {
    handle
        .createUpdate(
            "insert into member (site_id, account_id, role) values (:site, :account, :role)"
                + " on conflict (site_id, account_id) do update set role = excluded.role")
        .bind("site", siteId)
        .bind("account", accountId)
        .bind("role", role.name())
        .execute();
  }

  static void remove(Handle handle, String siteId, String accountId) {
    for (String table : List.of("member", "feed")) {
      handle
          .createUpdate("delete from " + table + " where site_id = :site and account_id = :account")
          .bind("site", siteId)
          .bind("account", accountId)
          .execute();
    }
  }

  static void checkOwner(Handle handle, String siteId) {
    int owners =
        handle
            .createQuery("select count(*) from member where site_id = :site and role = 'OWNER'")
            .bind("site", siteId)
            .mapTo(Integer.class)
            .one();
    if (owners == 0) {
      throw new StoreException(
          Reason.REFUSED, "A site needs an owner: make somebody else an owner first.");
    }
  }
}
