package org.grovewright.catalogue;

import java.util.List;

/**
 * A kind of work.
 *
 * @param key catalogue key
 * @param name what is done, in the imperative
 * @param measure what its amount is counted in
 * @param secondsPerUnit person-seconds for one unit of the measure in SI
 * @param setUpSeconds person-seconds to begin, whatever the amount
 * @param waitSeconds time that must pass afterwards before tasks that follow (cement cure)
 * @param after keys of the tasks that come before it
 * @param maxPeople how many can usefully work on it at a time
 * @param cautions keys of the cautions that belong to it
 * @param source where the rate comes from
 */
public record TaskRate(
    String key,
    String name,
    Measure measure,
    double secondsPerUnit,
    double setUpSeconds,
    double waitSeconds,
    List<String> after,
    int maxPeople,
    List<String> cautions,
    String source) {
  /** Copies the lists. */
  public TaskRate {
    after = List.copyOf(after);
    cautions = List.copyOf(cautions);
  }

  /** What an amount of work is counted in: metres, square metres, cubic metres or pieces. */
  public enum Measure {
    LENGTH,
    AREA,
    VOLUME,
    PIECE,
    ONCE
  }
}
