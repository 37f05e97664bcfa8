package org.grovewright.model;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Who works and when.
 *
 * @param people how many work at a time, at least 1
 * @param hours working times by day of the week; days without an entry are free
 * @param daysOff dates on which nobody works
 */
public record Crew(int people, Map<DayOfWeek, Supply.Hours> hours, Set<LocalDate> daysOff) {
  /** Copies the collections in a fixed order. */
  public Crew {
    EnumMap<DayOfWeek, Supply.Hours> copy = new EnumMap<>(DayOfWeek.class);
    copy.putAll(hours);
    hours = Collections.unmodifiableMap(copy);
    daysOff = Collections.unmodifiableSet(new TreeSet<>(daysOff));
  }
}
