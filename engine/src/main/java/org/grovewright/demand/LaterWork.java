package org.grovewright.demand;

import java.util.List;
import org.grovewright.quantity.Quantity;

/**
 * Work that falls due at the start of a later year of the plan.
 *
 * @param id stable id below {@code care.}, lower case words parted by dots
 * @param year year of the plan, from 2
 * @param title a few words
 * @param message plain sentences, in which {@code {0}}, {@code {1}} ... stand for the quantities
 * @param quantities the numbers of the message
 * @param source where it comes from
 */
public record LaterWork(
    String id, int year, String title, String message, List<Quantity> quantities, String source) {
  /** Copies the quantities. */
  public LaterWork {
    quantities = List.copyOf(quantities);
  }
}
