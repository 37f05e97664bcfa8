package org.grovewright.web.api;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.github.bucket4j.Bandwidth;
import io.github.bucket4j.Bucket;
import io.github.bucket4j.TimeMeter;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Locale;

/** How often somebody may do something. */
public final class Limits {
  private static final int MOST_CALLERS = 20_000;
  private static final Duration LOGIN_TIME = Duration.ofMinutes(15);

  /** Times a password may be tried from one address in a quarter of an hour. */
  public static final int TRIES_PER_ADDRESS = 20;

  /** Times a password may be tried for one name in a quarter of an hour. */
  public static final int TRIES_PER_NAME = 10;

  /** Changes that one caller may make in a minute. */
  public static final int CHANGES_PER_MINUTE = 300;

  /** Looks at a change that one caller may take in a second, as when dragging. */
  public static final int LOOKS_PER_SECOND = 60;

  /** Fetches of calendars from one address in a minute. */
  public static final int FEEDS_PER_MINUTE = 60;

  private final InstantSource clock;
  private final Cache<String, Bucket> buckets =
      Caffeine.newBuilder()
          .maximumSize(MOST_CALLERS)
          .expireAfterAccess(LOGIN_TIME.multipliedBy(2))
          .build();

  /** Limits by a clock. */
  public Limits(InstantSource clock) {
    this.clock = clock;
  }

  /**
   * Counts a try of a password.
   *
   * @throws ApiException if there were too many
   */
  void login(String address, String name) {
    String key = name.strip().toLowerCase(Locale.ROOT);
    boolean fromHere = take("login from " + address, TRIES_PER_ADDRESS, LOGIN_TIME);
    // The names are many and chosen by the caller; a name's digits are enough to tell it.
    boolean asThis = take("login as " + key.hashCode(), TRIES_PER_NAME, LOGIN_TIME);
    if (!fromHere || !asThis) {
      throw new ApiException(
          429,
          "too-many",
          "The password was tried too often. Wait a quarter of an hour, then try again.");
    }
  }

  /**
   * Counts a change.
   *
   * @throws ApiException if there were too many
   */
  public void change(String caller) {
    check("change by " + caller, CHANGES_PER_MINUTE, Duration.ofMinutes(1));
  }

  /**
   * Counts a look at a change.
   *
   * @throws ApiException if there were too many
   */
  public void look(String caller) {
    check("look by " + caller, LOOKS_PER_SECOND, Duration.ofSeconds(1));
  }

  /**
   * Counts a fetch of a calendar.
   *
   * @throws ApiException if there were too many
   */
  void feed(String address) {
    check("feed to " + address, FEEDS_PER_MINUTE, Duration.ofMinutes(1));
  }

  private void check(String key, int most, Duration time) {
    if (!take(key, most, time)) {
      throw new ApiException(
          429, "too-many", "That was too much at once. Wait a moment, then go on.");
    }
  }

  private boolean take(String key, int most, Duration time) {
    Bucket bucket = buckets.get(key, name -> bucket(most, time));
    return bucket.tryConsume(1);
  }

  private Bucket bucket(int most, Duration time) {
    return Bucket.builder()
        .addLimit(Bandwidth.builder().capacity(most).refillGreedy(most, time).build())
        .withCustomTimePrecision(
            new TimeMeter() {
              @Override
              public long currentTimeNanos() {
                return clock.millis() * 1_000_000;
              }

              @Override
              public boolean isWallClockBased() {
                return true;
              }
            })
        .build();
  }
}
