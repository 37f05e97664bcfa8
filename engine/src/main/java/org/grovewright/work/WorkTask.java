package org.grovewright.work;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.TaskRate;

/**
 * One job: a kind of work at one place.
 *
 * @param id stable id, e.g. {@code dig-hole.row-a}; also names the job's figures, {@code
 *     work.<id>.<what>}
 * @param kind the kind of work
 * @param subject the row, zone or thing it is done on; empty text for the whole grove
 * @param notBefore first day on which it may be done: the planting day where it plants, else the
 *     start
 * @param amount how much, in the SI unit of the kind's measure
 * @param personSeconds work of one person, seconds
 * @param people how many do it, as scheduled; 0 if it could not be scheduled
 * @param after ids of the jobs it waits for
 * @param slackSeconds how much later it could start without moving the end of the work if there
 *     were always enough people, in working seconds
 * @param critical whether it lies on the critical path, where there is no slack
 * @param segments numbers of the segments of the trench it is done on, as text; empty for other
 *     work
 * @param sessions when it is done, in order; empty if it could not be scheduled
 */
public record WorkTask(
    String id,
    TaskRate kind,
    String subject,
    LocalDate notBefore,
    double amount,
    double personSeconds,
    int people,
    List<String> after,
    double slackSeconds,
    boolean critical,
    String segments,
    List<WorkSession> sessions) {
  /** Copies the lists. */
  public WorkTask {
    after = List.copyOf(after);
    sessions = List.copyOf(sessions);
  }

  /** Local time at which it starts, if it could be scheduled. */
  public Optional<LocalDateTime> start() {
    return sessions.isEmpty() ? Optional.empty() : Optional.of(sessions.get(0).start());
  }

  /** Local time at which it is finished, if it could be scheduled. */
  public Optional<LocalDateTime> finish() {
    return sessions.isEmpty()
        ? Optional.empty()
        : Optional.of(sessions.get(sessions.size() - 1).end());
  }
}
