package org.grovewright.store;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that the test moves on. */
public final class HandClock implements InstantSource {
  private Instant now;

  /** A clock standing at a moment. */
  public HandClock(String moment) {
    now = Instant.parse(moment);
  }

  @Override
  public synchronized Instant instant() {
    return now;
  }

  /** Moves on. */
  public synchronized void pass(Duration time) {
    now = now.plus(time);
  }
}
