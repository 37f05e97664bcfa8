package org.grovewright.store;

/** What an account may do with a site; each role may do all that the ones after it may. */
public enum Role {
  /** Everything, sharing and deleting too. */
  OWNER,
  /** Write in the journal and tick off what is bought; the plan stays as its owners made it. */
  HELPER,
  /** Look only. */
  VIEWER;

  /** Whether this role may do what the other one may. */
  public boolean includes(Role other) {
    return compareTo(other) <= 0;
  }
}
