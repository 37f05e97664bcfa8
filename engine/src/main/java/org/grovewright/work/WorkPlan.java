package org.grovewright.work;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.demand.WorkAmount;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Crew;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/**
 * The work of setting up the grove, put on the crew's days.
 *
 * <p>Figures: {@code work.<job>.person-time} and {@code work.<job>.clock-time} for each job, {@code
 * work.total.person-time}, and, where there are working hours, {@code work.total.days} (days with
 * work) and {@code work.total.finish} (days from the start of the plan to the end of the last day
 * of work).
 *
 * @param tasks the jobs, in the order in which they start; those that could not be scheduled last
 * @param days the days with work, in order
 * @param finish local time at which all is done; empty if there is no work or it could not be
 *     scheduled
 * @param findings remarks
 */
public record WorkPlan(
    List<WorkTask> tasks,
    List<WorkDay> days,
    Optional<LocalDateTime> finish,
    List<Finding> findings) {
  private static final double WEEK_SECONDS = 7 * 86_400.0;

  /** Copies the lists. */
  public WorkPlan {
    tasks = List.copyOf(tasks);
    days = List.copyOf(days);
    findings = List.copyOf(findings);
  }

  /**
   * Plans the work.
   *
   * @param work all that is to be done; amounts of one kind at one place are added up
   * @param grove gives the crew, the first day and the planting days
   * @param catalogue gives the rates of work
   * @param figures takes the figures of the plan
   * @throws IllegalArgumentException if the catalogue lacks a task, or its tasks wait for each
   *     other in a circle
   */
  public static WorkPlan of(
      List<WorkAmount> work, Grove grove, Catalogue catalogue, FigureBook figures) {
    List<TaskGraph.Job> jobs = TaskGraph.of(work, grove, catalogue).jobs();
    Crew crew = grove.crew();
    int slotSeconds = (int) Math.round(catalogue.constant("work.time-step").value());
    boolean hours = WorkingTime.hasHours(crew, slotSeconds);
    List<Finding> findings = new ArrayList<>();
    List<Scheduler.Placement> placed = List.of();
    WorkingTime time = null;
    if (hours) {
      time = new WorkingTime(crew, grove.start(), slotSeconds);
      int leastChunk =
          (int) Math.ceil(catalogue.constant("work.least-session").value() / slotSeconds);
      placed = new Scheduler(activities(jobs), crew.people(), time, leastChunk).schedule();
    } else if (!jobs.isEmpty()) {
      findings.add(
          Finding.of(
              "work.no-hours",
              Severity.SHORTFALL,
              "",
              "The crew has no working hours, so no day can be set for the work. Give the crew"
                  + " hours on at least one day of the week."));
    }
    CriticalPath path = criticalPath(jobs, crew);
    List<String> ids = ids(jobs);
    List<WorkTask> tasks = new ArrayList<>();
    for (int i = 0; i < jobs.size(); i++) {
      tasks.add(task(i, jobs, ids, path, hours ? placed.get(i) : null, time));
      enterFigures(tasks.get(i), jobs.get(i), crew, figures);
    }
    tasks.sort(
        Comparator.comparing((WorkTask t) -> t.start().orElse(LocalDateTime.MAX))
            .thenComparing(t -> t.finish().orElse(LocalDateTime.MAX))
            .thenComparing(WorkTask::id));
    List<WorkDay> days = days(tasks);
    Optional<LocalDateTime> finish =
        tasks.stream().flatMap(t -> t.finish().stream()).max(Comparator.naturalOrder());
    enterTotals(tasks, days, finish, grove.start(), figures);
    findings.addAll(PlantingDays.check(tasks, grove, catalogue));
    return new WorkPlan(tasks, days, finish, findings);
  }

  private static List<Scheduler.Activity> activities(List<TaskGraph.Job> jobs) {
    List<Scheduler.Activity> activities = new ArrayList<>();
    for (TaskGraph.Job job : jobs) {
      List<Scheduler.Wait> waits = new ArrayList<>();
      for (int before : job.before()) {
        long wait = (long) Math.ceil(jobs.get(before).task().waitSeconds());
        waits.add(new Scheduler.Wait(before, wait));
      }
      activities.add(
          new Scheduler.Activity(
              job.personSeconds(), job.task().maxPeople(), job.notBefore().atStartOfDay(), waits));
    }
    return activities;
  }

  /**
   * The critical path with people enough for every job; waits on the clock are turned into working
   * time by the share of the week that is worked.
   */
  private static CriticalPath criticalPath(List<TaskGraph.Job> jobs, Crew crew) {
    double weekly = crew.hours().values().stream().mapToDouble(h -> h.seconds()).sum();
    double[] duration = new double[jobs.size()];
    List<List<CriticalPath.Link>> links = new ArrayList<>();
    for (int i = 0; i < jobs.size(); i++) {
      TaskGraph.Job job = jobs.get(i);
      duration[i] = job.personSeconds() / mostPeople(job.task(), crew);
      List<CriticalPath.Link> row = new ArrayList<>();
      for (int before : job.before()) {
        double wait = jobs.get(before).task().waitSeconds();
        row.add(new CriticalPath.Link(before, wait * weekly / WEEK_SECONDS));
      }
      links.add(row);
    }
    return new CriticalPath(duration, links);
  }

  private static int mostPeople(TaskRate task, Crew crew) {
    return Math.max(1, Math.min(task.maxPeople(), crew.people()));
  }

  private static WorkTask task(
      int i,
      List<TaskGraph.Job> jobs,
      List<String> ids,
      CriticalPath path,
      Scheduler.Placement placement,
      WorkingTime time) {
    TaskGraph.Job job = jobs.get(i);
    String id = ids.get(i);
    List<String> after = new ArrayList<>();
    for (int before : job.before()) {
      after.add(ids.get(before));
    }
    List<WorkSession> sessions = new ArrayList<>();
    if (placement != null) {
      List<Scheduler.Chunk> chunks = placement.chunks();
      for (int k = 0; k < chunks.size(); k++) {
        sessions.add(
            new WorkSession(
                id,
                k + 1,
                chunks.size(),
                time.startOf(chunks.get(k).from()),
                time.endOf(chunks.get(k).until() - 1),
                placement.people()));
      }
    }
    double slack = path.slack(i);
    return new WorkTask(
        id,
        job.task(),
        job.subject(),
        job.notBefore(),
        job.amount(),
        job.personSeconds(),
        placement == null ? 0 : placement.people(),
        after,
        slack,
        slack < 1e-6 * Math.max(1, path.length()),
        job.segments(),
        sessions);
  }

  private static List<String> ids(List<TaskGraph.Job> jobs) {
    Set<String> ids = new LinkedHashSet<>();
    for (TaskGraph.Job job : jobs) {
      StringBuilder id = new StringBuilder(FigureBook.slugOfKey(job.task().key()));
      if (!job.subject().isEmpty()) {
        id.append('.').append(FigureBook.slug(job.subject()));
      }
      // Planting on several days has one job for each; two places may have names
      // that differ only in letters an id cannot hold.
      String plain = id.toString();
      for (int k = 2; !ids.add(id.toString()); k++) {
        id.setLength(0);
        id.append(plain).append('-').append(k);
      }
    }
    return List.copyOf(ids);
  }

  private static void enterFigures(
      WorkTask task, TaskGraph.Job job, Crew crew, FigureBook figures) {
    TaskRate kind = task.kind();
    String where = task.subject().isEmpty() ? "" : ", " + task.subject();
    List<Input> inputs = new ArrayList<>();
    String origin = "catalogue: tasks, " + kind.key();
    inputs.add(new Input("t0 (set-up)", kind.setUpSeconds(), Kind.RUN_TIME, origin));
    for (WorkAmount part : job.amounts()) {
      inputs.add(
          new Input(
              "A (amount)",
              part.amount(),
              kindOf(kind.measure()),
              part.figureId().isEmpty() ? "done once" : part.figureId()));
    }
    inputs.add(new Input("r (time for one unit)", kind.secondsPerUnit(), Kind.RUN_TIME, origin));
    Figure hours =
        figures.enter(
            "work." + task.id() + ".person-time",
            kind.name() + where + ": work of one person",
            task.personSeconds(),
            Kind.WORK_TIME,
            new Working("t = t0 + sum(A) * r", inputs, kind.source()));
    int hands = task.people() > 0 ? task.people() : mostPeople(kind, crew);
    figures.enter(
        "work." + task.id() + ".clock-time",
        kind.name() + where + ": time on the clock",
        task.personSeconds() / hands,
        Kind.WORK_TIME,
        Working.of(
            "T = t / n",
            Working.COMMON_PRACTICE,
            Input.from("t", hours),
            new Input("n (people at it)", hands, Kind.COUNT, "the schedule")));
  }

  private static Kind kindOf(TaskRate.Measure measure) {
    return switch (measure) {
      case LENGTH -> Kind.LENGTH;
      case AREA -> Kind.AREA;
      case VOLUME -> Kind.BULK_VOLUME;
      case PIECE, ONCE -> Kind.COUNT;
    };
  }

  private static List<WorkDay> days(List<WorkTask> tasks) {
    TreeMap<LocalDate, List<WorkSession>> byDate = new TreeMap<>();
    for (WorkTask task : tasks) {
      for (WorkSession session : task.sessions()) {
        byDate.computeIfAbsent(session.start().toLocalDate(), d -> new ArrayList<>()).add(session);
      }
    }
    List<WorkDay> days = new ArrayList<>();
    byDate.forEach(
        (date, sessions) -> {
          sessions.sort(
              Comparator.comparing(WorkSession::start).thenComparing(WorkSession::taskId));
          days.add(new WorkDay(date, sessions));
        });
    return days;
  }

  private static void enterTotals(
      List<WorkTask> tasks,
      List<WorkDay> days,
      Optional<LocalDateTime> finish,
      LocalDate start,
      FigureBook figures) {
    List<Input> parts = new ArrayList<>();
    double total = 0;
    for (WorkTask task : tasks) {
      parts.add(Input.from("t", figures.get("work." + task.id() + ".person-time")));
      total += task.personSeconds();
    }
    figures.enter(
        "work.total.person-time",
        "All work: hours of one person",
        total,
        Kind.WORK_TIME,
        new Working("sum(t)", parts, Working.COMMON_PRACTICE));
    if (finish.isEmpty()) {
      return;
    }
    figures.enter(
        "work.total.days",
        "Days on which there is work",
        days.size(),
        Kind.COUNT,
        Working.of("counted in the schedule", Working.COMMON_PRACTICE));
    LocalDate last = days.get(days.size() - 1).date();
    figures.enter(
        "work.total.finish",
        "Days from the start of the plan to the end of the last day of work",
        86_400.0 * (ChronoUnit.DAYS.between(start, last) + 1),
        Kind.DAYS,
        Working.of(
            "the schedule that ends first among tries of serial schedule generation, first day "
                + start
                + ", last day "
                + last,
            "Kolisch (1996), Serial and parallel resource-constrained project scheduling methods"
                + " revisited, from memory"));
  }

  /** The job with this id, if there is one. */
  public Optional<WorkTask> find(String id) {
    return tasks.stream().filter(t -> t.id().equals(id)).findFirst();
  }
}
