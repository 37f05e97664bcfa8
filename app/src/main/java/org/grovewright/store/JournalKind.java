package org.grovewright.store;

import java.util.List;
import org.grovewright.quantity.Kind;

/** What an entry of the journal tells of, and which kinds of number it may carry. */
public enum JournalKind {
  /** Water was given. */
  WATERED(Kind.WATER_VOLUME, Kind.RUN_TIME, Kind.WATER_DEPTH),
  /** Fertiliser or compost was given. */
  FED(Kind.MASS, Kind.BULK_VOLUME),
  /** Somebody looked. */
  INSPECTED(Kind.COUNT),
  /** Spread of the crown as measured. */
  MEASURED_SPREAD(Kind.LENGTH),
  /** Height as measured. */
  MEASURED_HEIGHT(Kind.LENGTH),
  /** What the rain gauge caught. */
  RAIN(Kind.WATER_DEPTH),
  /** A plant died. */
  LOSS(Kind.COUNT),
  /** A plant was replaced. */
  REPLACED(Kind.COUNT),
  /** Anything else, in words. */
  NOTE;

  private final List<Kind> amounts;

  JournalKind(Kind... amounts) {
    this.amounts = List.of(amounts);
  }

  /** Kinds of number an entry may carry. */
  public List<Kind> amounts() {
    return amounts;
  }

  /** Whether an entry without a number says nothing. */
  public boolean needsAmount() {
    return this == MEASURED_SPREAD || this == MEASURED_HEIGHT || this == RAIN;
  }
}
