package org.grovewright.web.api;

import org.grovewright.store.Role;
import org.grovewright.store.SiteState;

/**
 * A site as the browser knows it.
 *
 * @param id lasting id
 * @param name what it is called
 * @param role what the caller may do: owner, helper or viewer
 * @param version number of the newest save
 * @param canUndo whether there is an edit to take back
 * @param canRedo whether there is an undone edit to make again
 * @param savedAt when it was last saved, ISO 8601
 * @param savedBy who saved last
 * @param readOnly whether the caller can change nothing of the plan
 * @param journalReadOnly whether the caller can neither write in the journal nor tick
 */
record SiteView(
    String id,
    String name,
    String role,
    long version,
    boolean canUndo,
    boolean canRedo,
    String savedAt,
    String savedBy,
    boolean readOnly,
    boolean journalReadOnly) {
  static SiteView of(SiteState state, Role role, boolean trouble) {
    boolean readOnly = trouble || !role.includes(Role.OWNER);
    return new SiteView(
        state.id(),
        state.name(),
        Json.word(role),
        state.version(),
        state.canUndo() && !readOnly,
        state.canRedo() && !readOnly,
        state.changed().toString(),
        state.changedBy(),
        readOnly,
        trouble || !role.includes(Role.HELPER));
  }
}
