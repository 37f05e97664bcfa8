package org.grovewright.catalogue.files;

import static org.grovewright.catalogue.files.Column.choice;
import static org.grovewright.catalogue.files.Column.key;
import static org.grovewright.catalogue.files.Column.keys;
import static org.grovewright.catalogue.files.Column.number;
import static org.grovewright.catalogue.files.Column.reference;
import static org.grovewright.catalogue.files.Column.source;
import static org.grovewright.catalogue.files.Column.text;
import static org.grovewright.catalogue.files.Column.whole;

import java.util.List;
import org.grovewright.catalogue.Caution;
import org.grovewright.catalogue.Clearance;
import org.grovewright.catalogue.TaskRate;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.model.FixtureKind;

/** The tables of work, its cautions, distances kept from fixed things, and ground to dig in. */
final class WorkTables {
  private WorkTables() {}

  static final Table<TaskRate> TASKS =
      new Table<>(
          "tasks",
          "kinds of work with their rates and order",
          List.of(
              key("key of the task"),
              text("name", "what is done"),
              choice("measure", "what its amount is counted in", TaskRate.Measure.class),
              number(
                      "minutes_per_unit",
                      "min",
                      0,
                      10_000,
                      "person-minutes for a metre, square metre, cubic metre or piece")
                  .times(60),
              number("set_up_minutes", "min", 0, 10_000, "person-minutes to begin").times(60),
              number("wait_hours", "h", 0, 2000, "time to wait before the tasks that follow")
                  .times(3600),
              keys("after", "keys of the tasks that come before it"),
              whole("max_people", "", 1, 50, "how many can usefully work on it at a time"),
              keys("cautions", "keys of its cautions"),
              source()),
          List.of("key", "name", "measure", "minutes_per_unit", "set_up_minutes", "wait_hours"),
          List.of(),
          v ->
              new TaskRate(
                  v.text("key"),
                  v.text("name"),
                  v.choice("measure", TaskRate.Measure.class),
                  v.si("minutes_per_unit"),
                  v.si("set_up_minutes"),
                  v.si("wait_hours"),
                  v.words("after"),
                  v.whole("max_people"),
                  v.words("cautions"),
                  v.source()));

  static final Table<Caution> CAUTIONS =
      new Table<>(
          "cautions",
          "warnings shown with the tasks, goods and plants they belong to",
          List.of(
              key("key of the caution"),
              text("title", "a few words"),
              text("text", "what to do, in plain sentences"),
              source()),
          List.of("key", "title"),
          List.of(),
          v -> new Caution(v.text("key"), v.text("title"), v.text("text"), v.source()));

  static final Table<Clearance> CLEARANCES =
      new Table<>(
          "clearances",
          "distances that plants keep from fixed things",
          List.of(
              choice("kind", "the fixed thing", FixtureKind.class),
              number("trunk_m", "m", 0, 100, "least distance of a trunk from its edge"),
              number(
                  "crown_m",
                  "m",
                  -100,
                  100,
                  "least gap between a mature crown and its edge; negative lets crowns reach over"),
              source()),
          List.of("kind", "trunk_m", "crown_m"),
          List.of(),
          v ->
              new Clearance(
                  v.choice("kind", FixtureKind.class),
                  v.si("trunk_m"),
                  v.si("crown_m"),
                  v.source()));

  static final Table<TrenchGround> GROUNDS =
      new Table<>(
          "grounds",
          "ground that the trench of a main may go through, with what that asks for",
          List.of(
              choice("kind", "the ground", TrenchGround.Kind.class),
              text("name", "name in plain words"),
              reference("dig_task", "key of the task of digging there, counted by volume"),
              reference("lift_task", "key of the task of taking up its surface, counted by area")
                  .optional(),
              reference("mend_task", "key of the task of putting that back, counted by area")
                  .optional(),
              cover("main_cover_mm", "least soil over a main where people walk"),
              cover("main_cover_vehicles_mm", "least soil over a main where vehicles drive"),
              cover("lateral_cover_mm", "least soil over a lateral where people walk"),
              cover("lateral_cover_vehicles_mm", "least soil over a lateral where vehicles drive"),
              number("reluctance", "", 1, 1000, "times its cost counts when ways are compared"),
              source()),
          List.of("kind", "name", "dig_task", "main_cover_mm", "main_cover_vehicles_mm"),
          List.of(
              new Table.Rule("main_cover_mm", "main_cover_vehicles_mm", true),
              new Table.Rule("lateral_cover_mm", "lateral_cover_vehicles_mm", true)),
          v ->
              new TrenchGround(
                  v.choice("kind", TrenchGround.Kind.class),
                  v.text("name"),
                  v.text("dig_task"),
                  v.textIfAny("lift_task"),
                  v.textIfAny("mend_task"),
                  new TrenchGround.Cover(v.si("main_cover_mm"), v.si("main_cover_vehicles_mm")),
                  new TrenchGround.Cover(
                      v.si("lateral_cover_mm"), v.si("lateral_cover_vehicles_mm")),
                  v.si("reluctance"),
                  v.source()));

  private static Column cover(String name, String meaning) {
    return number(name, "mm", 0, 3000, meaning).over(1000);
  }
}
