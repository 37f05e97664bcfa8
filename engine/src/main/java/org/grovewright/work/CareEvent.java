package org.grovewright.work;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.grovewright.quantity.Quantity;

/**
 * Something to do in the years after planting, on a day or on days that come back.
 *
 * @param id stable id, lower case words parted by dots
 * @param kind what sort of care it is
 * @param date the first day
 * @param recurrence how it comes back, if it does
 * @param title a few words
 * @param message plain sentences, in which {@code {0}}, {@code {1}} ... stand for the quantities
 * @param quantities the numbers of the message
 * @param cautions catalogue keys of the cautions that belong to it
 * @param source where the interval or the amount comes from
 */
public record CareEvent(
    String id,
    Kind kind,
    LocalDate date,
    Optional<Recurrence> recurrence,
    String title,
    String message,
    List<Quantity> quantities,
    List<String> cautions,
    String source) {
  /** Copies the lists. */
  public CareEvent {
    quantities = List.copyOf(quantities);
    cautions = List.copyOf(cautions);
  }

  /** All days on which it falls due. */
  public List<LocalDate> dates() {
    return recurrence.map(r -> r.dates(date)).orElse(List.of(date));
  }

  /** Sorts of care. */
  public enum Kind {
    FEEDING,
    INSPECTION,
    WATERING,
    MULCH,
    MEASURING,
    SUPPORT,
    COLD
  }
}
