package org.grovewright.work;

import java.time.LocalDateTime;

/**
 * An unbroken stretch of work on one job.
 *
 * @param taskId the job
 * @param part which part of the job this is, from 1
 * @param parts how many parts the job has
 * @param start local time of its start
 * @param end local time of its end
 * @param people how many work on it
 */
public record WorkSession(
    String taskId, int part, int parts, LocalDateTime start, LocalDateTime end, int people) {
  /** Its length on the clock, minutes. */
  public long minutes() {
    return java.time.Duration.between(start, end).toMinutes();
  }
}
