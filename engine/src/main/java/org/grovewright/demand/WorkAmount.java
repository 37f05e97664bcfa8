package org.grovewright.demand;

/**
 * An amount of one kind of work.
 *
 * @param taskKey catalogue key of the task
 * @param subject where or on what, e.g. a row or zone id; empty text for the whole grove
 * @param amount how much, in the SI unit of the task's measure (1 for a task done once)
 * @param figureId id of the figure that shows the working of the amount, or empty text for tasks
 *     done once
 * @param segments numbers of the segments of the trench it is done on, as text; empty for other
 *     work
 */
public record WorkAmount(
    String taskKey, String subject, double amount, String figureId, String segments) {
  /** Work that is not done on the trench. */
  public WorkAmount(String taskKey, String subject, double amount, String figureId) {
    this(taskKey, subject, amount, figureId, "");
  }
}
