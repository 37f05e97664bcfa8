package org.grovewright.work;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.demand.WorkAmount;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;

/**
 * Amounts of work gathered into jobs, each a kind of work at one place, and which job waits for
 * which.
 *
 * <p>Work on a plant is gathered by the plant's row. A job waits for every kind of work that the
 * catalogue puts before it: for that work in its own place if it is done there, else for all of it.
 * Where the work that comes before is not part of this plan, the job waits for what would have come
 * before that. Nothing waits for plants that are wanted long after the first: the first need their
 * water before the last are there; and plants and their stakes do not wait for plants that are
 * wanted on a later day.
 */
final class TaskGraph {
  private final List<Job> jobs;

  private TaskGraph(List<Job> jobs) {
    this.jobs = List.copyOf(jobs);
  }

  /** The jobs, in the order in which their work was first named. */
  List<Job> jobs() {
    return jobs;
  }

  /**
   * Gathers the work.
   *
   * @throws IllegalArgumentException if the catalogue lacks a task, an amount is negative or not
   *     finite, or the tasks wait for each other in a circle
   */
  static TaskGraph of(List<WorkAmount> work, Grove grove, Catalogue catalogue) {
    Map<String, String> rowOf = new HashMap<>();
    for (Planting planting : grove.plantings()) {
      rowOf.put(planting.id(), planting.rowId().orElse(""));
    }
    Map<Place, List<WorkAmount>> gathered = new LinkedHashMap<>();
    for (WorkAmount amount : work) {
      task(catalogue, amount.taskKey());
      if (!(amount.amount() >= 0) || Double.isInfinite(amount.amount())) {
        throw new IllegalArgumentException(
            "the amount of work of the task "
                + amount.taskKey()
                + " must be zero or more, but it is "
                + amount.amount());
      }
      if (amount.amount() > 0) {
        String subject = rowOf.getOrDefault(amount.subject(), amount.subject());
        gather(amount, subject, grove, catalogue, gathered);
      }
    }
    List<Place> places = List.copyOf(gathered.keySet());
    Set<String> present = new LinkedHashSet<>();
    for (Place place : places) {
      present.add(place.taskKey());
    }
    LocalDate held = PlantingDays.holdingUntil(grove, catalogue);
    List<Job> jobs = new ArrayList<>();
    for (Place place : places) {
      Set<Integer> before = new LinkedHashSet<>();
      for (String key : presentBefore(place.taskKey(), present, catalogue)) {
        for (int i : jobsOf(key, place.subject(), places)) {
          Place other = places.get(i);
          boolean laterPlants =
              PlantingDays.parts(place.taskKey()) && other.day().isAfter(place.day());
          if (!other.day().isAfter(held) && !laterPlants) {
            before.add(i);
          }
        }
      }
      jobs.add(
          new Job(
              task(catalogue, place.taskKey()),
              place.subject(),
              place.day(),
              gathered.get(place),
              List.copyOf(before)));
    }
    return new TaskGraph(jobs);
  }

  /**
   * Planting and staking are parted by the day on which the plants are wanted, other work is not.
   */
  private static void gather(
      WorkAmount amount,
      String subject,
      Grove grove,
      Catalogue catalogue,
      Map<Place, List<WorkAmount>> gathered) {
    Map<LocalDate, Double> shares =
        PlantingDays.shares(amount.taskKey(), amount.subject(), grove, catalogue);
    shares.forEach(
        (day, share) ->
            gathered
                .computeIfAbsent(new Place(amount.taskKey(), subject, day), p -> new ArrayList<>())
                .add(
                    new WorkAmount(
                        amount.taskKey(),
                        subject,
                        amount.amount() * share,
                        amount.figureId(),
                        amount.segments())));
  }

  private static TaskRate task(Catalogue catalogue, String key) {
    TaskRate task = catalogue.tasks().get(key);
    if (task == null) {
      throw new IllegalArgumentException("the catalogue has no task " + key);
    }
    return task;
  }

  /**
   * The kinds of work in this plan that come before a kind of work, looking through absent ones.
   */
  private static Set<String> presentBefore(String key, Set<String> present, Catalogue catalogue) {
    rejectCircle(key, catalogue);
    Set<String> found = new LinkedHashSet<>();
    Set<String> seen = new LinkedHashSet<>();
    ArrayDeque<String> open = new ArrayDeque<>(task(catalogue, key).after());
    while (!open.isEmpty()) {
      String before = open.poll();
      if (!seen.add(before)) {
        continue;
      }
      if (present.contains(before)) {
        found.add(before);
      } else {
        open.addAll(task(catalogue, before).after());
      }
    }
    return found;
  }

  private static void rejectCircle(String key, Catalogue catalogue) {
    Map<String, String> reachedFrom = new LinkedHashMap<>();
    ArrayDeque<String> open = new ArrayDeque<>(List.of(key));
    while (!open.isEmpty()) {
      String at = open.poll();
      for (String before : task(catalogue, at).after()) {
        if (before.equals(key)) {
          StringBuilder circle = new StringBuilder(key);
          for (String step = at; step != null; step = reachedFrom.get(step)) {
            circle.append(", which comes before ").append(step);
          }
          throw new IllegalArgumentException(
              "the catalogue's tasks wait for each other in a circle: " + circle);
        }
        if (!reachedFrom.containsKey(before)) {
          reachedFrom.put(before, at.equals(key) ? null : at);
          open.add(before);
        }
      }
    }
  }

  private static List<Integer> jobsOf(String key, String subject, List<Place> places) {
    List<Integer> here = new ArrayList<>();
    List<Integer> everywhere = new ArrayList<>();
    boolean doneHere = false;
    for (int i = 0; i < places.size(); i++) {
      Place place = places.get(i);
      if (place.taskKey().equals(key)) {
        everywhere.add(i);
        doneHere |= place.subject().equals(subject);
        if (place.subject().equals(subject) || place.subject().isEmpty()) {
          here.add(i);
        }
      }
    }
    return doneHere && !subject.isEmpty() ? here : everywhere;
  }

  private record Place(String taskKey, String subject, LocalDate day) {}

  /**
   * A kind of work at one place.
   *
   * @param task the kind of work
   * @param subject the place, or empty text for the whole grove
   * @param notBefore first day on which it may be done
   * @param amounts the amounts gathered, none zero
   * @param before indices of the jobs it waits for
   */
  record Job(
      TaskRate task,
      String subject,
      LocalDate notBefore,
      List<WorkAmount> amounts,
      List<Integer> before) {
    Job {
      amounts = List.copyOf(amounts);
    }

    double amount() {
      double sum = 0;
      for (WorkAmount part : amounts) {
        sum += part.amount();
      }
      return sum;
    }

    /** Segments of the trench it is done on; empty for other work. */
    String segments() {
      return amounts.stream()
          .map(WorkAmount::segments)
          .filter(text -> !text.isEmpty())
          .collect(Collectors.joining(", "));
    }

    double personSeconds() {
      return task.setUpSeconds() + amount() * task.secondsPerUnit();
    }
  }
}
