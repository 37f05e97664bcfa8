package org.grovewright.advice;

import org.grovewright.quantity.Figure;

/**
 * A plant to look at today.
 *
 * @param plantId the plant
 * @param reason why
 * @param amount how much: days, or water to bring by hand
 */
public record LookAt(String plantId, Reason reason, Figure amount) {
  /** Why a plant wants a look. */
  public enum Reason {
    /** It has been beyond its limit; the amount is for how long. */
    THIRSTY,
    /** No valve serves it and it is dry; the amount is what it wants by hand. */
    BY_HAND,
    /** Newly set and long without water at its root ball; the amount is for how long. */
    NEWLY_SET
  }
}
