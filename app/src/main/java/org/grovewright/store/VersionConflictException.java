package org.grovewright.store;

import org.grovewright.texts.Sentence;
import org.grovewright.texts.ToldException;

/** A save was made on a version that is no longer the newest; nothing was changed. */
public final class VersionConflictException extends ToldException {
  private static final long serialVersionUID = 1L;

  private final transient SiteState newest;

  /** A save that came too late for this newest state. */
  public VersionConflictException(SiteState newest) {
    super(
        Sentence.of(
            "Somebody saved '{0}' since you opened it. Your change is not saved yet: look at the"
                + " newer version and make it again there.",
            newest.name()));
    this.newest = newest;
  }

  /** The state that is newer than the one the change was made on. */
  public SiteState newest() {
    return newest;
  }
}
