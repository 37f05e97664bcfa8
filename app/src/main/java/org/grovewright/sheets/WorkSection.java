package org.grovewright.sheets;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Caution;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;
import org.grovewright.work.WorkDay;
import org.grovewright.work.WorkPlan;
import org.grovewright.work.WorkSession;
import org.grovewright.work.WorkTask;

/** Work days: dated evenings with their jobs, each with the cautions that belong to it. */
final class WorkSection {
  private final WorkPlan work;
  private final Catalogue catalogue;
  private final Workings workings;
  private final ReaderUnits units;
  private final Set<String> read = new HashSet<>();

  WorkSection(WorkPlan work, Catalogue catalogue, Workings workings, ReaderUnits units) {
    this.work = work;
    this.catalogue = catalogue;
    this.workings = workings;
    this.units = units;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    List<Cell> lead = new ArrayList<>();
    lead.add(Cell.of("All jobs together are "));
    lead.add(workings.cell("work.total.person-time"));
    lead.add(Cell.of(" of work for one person"));
    if (work.finish().isPresent()) {
      lead.add(Cell.of(", spread over "));
      lead.add(workings.cell("work.total.days"));
      lead.add(Cell.of(" days; done on " + Words.date(work.finish().get().toLocalDate())));
    }
    lead.add(Cell.of("."));
    blocks.add(new Block.Paragraph(lead));
    blocks.add(
        Block.Paragraph.of(
            "The days keep to your working hours, and no job starts before those it waits for."
                + " A caution stands where it is first needed; later days point back to it."));
    for (WorkDay day : work.days()) {
      blocks.add(day(day));
    }
    blocks.add(new Block.Fold("All jobs at a glance", false, List.of(jobs())));
    return blocks;
  }

  private Block day(WorkDay day) {
    List<Block.Job> jobs = new ArrayList<>();
    for (WorkSession session : day.sessions()) {
      WorkTask task = work.find(session.taskId()).orElseThrow();
      List<Block.Caution> cautions = new ArrayList<>();
      List<Block.Reminder> again = new ArrayList<>();
      for (String key : task.kind().cautions()) {
        Caution caution = catalogue.cautions().get(key);
        String id = "caution-" + FigureBook.slug(key);
        if (read.add(key)) {
          cautions.add(new Block.Caution(id, caution.title(), caution.text()));
        } else {
          again.add(new Block.Reminder(id, caution.title()));
        }
      }
      jobs.add(
          new Block.Job(
              session.start().toLocalTime() + "\u2013" + session.end().toLocalTime(),
              workings.cell("work." + task.id() + ".person-time", name(task)),
              note(session) + onSegments(task),
              cautions,
              again));
    }
    return new Block.Day(Words.date(day.date()), jobs);
  }

  private static String note(WorkSession session) {
    String people = Words.count(session.people(), "person", "people");
    return session.parts() == 1
        ? people
        : people + ", part " + session.part() + " of " + session.parts();
  }

  private static String onSegments(WorkTask task) {
    return task.segments().isEmpty() ? "" : ", trench segments " + task.segments();
  }

  private String name(WorkTask task) {
    String work = units.language().say(task.kind().name());
    return task.subject().isEmpty() ? work : work + ", " + units.language().say(task.subject());
  }

  private Block jobs() {
    List<List<Cell>> rows = new ArrayList<>();
    for (WorkTask task : work.tasks()) {
      String after =
          String.join(
              "; ",
              task.after().stream().map(id -> work.find(id).map(this::name).orElse(id)).toList());
      rows.add(
          List.of(
              Cell.of(name(task)),
              workings.cell(
                  "work." + task.id() + ".person-time",
                  units.text(task.personSeconds(), Kind.WORK_TIME)),
              Cell.of(task.start().map(WorkSection::moment).orElse("no day found")),
              task.finish().map(t -> Cell.of(moment(t))).orElse(Cell.NONE),
              after.isEmpty() ? Cell.NONE : Cell.of(after),
              Cell.of(
                  task.critical()
                      ? "none: a delay here delays the end"
                      : units.text(task.slackSeconds(), Kind.WORK_TIME))));
    }
    return new Block.Table(
        "All jobs",
        List.of(
            Block.Column.words("Job"),
            Block.Column.numbers("Work of one person"),
            Block.Column.words("Starts"),
            Block.Column.words("Done"),
            Block.Column.words("After"),
            Block.Column.words("Time to spare")),
        rows);
  }

  private static String moment(LocalDateTime time) {
    return Words.shortDate(time.toLocalDate()) + ", " + time.toLocalTime();
  }
}
