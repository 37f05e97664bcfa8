/**
 * Keeps groves, the record of what was done in them and who may see them, in a database.
 *
 * <p>A site's description is never overwritten: every save adds a row to its log of edits, and undo
 * and redo add rows too, so both still work after a restart and nothing that was ever saved is
 * lost. Each site carries a version number that grows with every save. Whoever saves says which
 * version the change was made on; if somebody else saved meanwhile, the save is refused with the
 * newer version instead of covering it up.
 *
 * <p>{@link org.grovewright.store.Store} opens the database, by default one SQLite file in the
 * user's {@linkplain org.grovewright.store.DataFolder data folder}, or PostgreSQL at an address,
 * with the same tables. {@link org.grovewright.store.Sites}, {@link org.grovewright.store.Journal},
 * {@link org.grovewright.store.Photos}, {@link org.grovewright.store.Ticks}, {@link
 * org.grovewright.store.Accounts}, {@link org.grovewright.store.Sessions} and {@link
 * org.grovewright.store.Feeds} are its parts. {@link org.grovewright.store.Backups} keeps a copy of
 * each of the last days. What goes wrong is a {@link org.grovewright.store.StoreException} with a
 * plain sentence.
 */
package org.grovewright.store;
