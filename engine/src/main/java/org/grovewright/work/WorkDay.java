package org.grovewright.work;

import java.time.LocalDate;
import java.util.List;

/**
 * What is done on one day.
 *
 * @param date the day; a session that runs past midnight belongs to the day it starts on
 * @param sessions the day's sessions in order of their start
 */
public record WorkDay(LocalDate date, List<WorkSession> sessions) {
  /** Copies the sessions. */
  public WorkDay {
    sessions = List.copyOf(sessions);
  }
}
