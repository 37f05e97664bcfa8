package org.grovewright.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Species;
import org.grovewright.catalogue.Species.Role;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/**
 * The planting days the owner set, against the days on which the work lets them be planted: plants
 * are not put in before their day, and it is said where the work comes too late for it or where the
 * month is too cold for a young plant.
 */
final class PlantingDays {
  /** The tasks that put plants into the ground, and the plants each puts in. */
  private static final Map<String, Role> PLANTING =
      Map.of(
          "plant-tree", Role.MAIN,
          "plant-companion", Role.COMPANION,
          "plant-groundcover", Role.GROUNDCOVER);

  /** A tree is tied to its stakes on the day on which it is planted, before a wind rocks it. */
  private static final String STAKING = "stake-tree";

  private PlantingDays() {}

  /** Whether work of a task is parted by the days on which plants are wanted. */
  static boolean parts(String taskKey) {
    return PLANTING.containsKey(taskKey) || taskKey.equals(STAKING);
  }

  private static boolean isFor(String taskKey, Species species, Catalogue catalogue) {
    return taskKey.equals(STAKING)
        ? species.role() == Role.MAIN
            && species.matureHeightM() >= catalogue.constant("ground.stake-height").value()
        : species.role() == PLANTING.get(taskKey);
  }

  /**
   * The plants that a task puts in or stakes at a place (a row or a plant, or everywhere), without
   * those that stand already.
   */
  private static List<Planting> plants(
      String taskKey, String subject, Grove grove, Catalogue catalogue) {
    List<Planting> plants = new ArrayList<>();
    if (!parts(taskKey)) {
      return plants;
    }
    for (Planting planting : grove.plantings()) {
      Species species = catalogue.species().get(planting.speciesKey());
      boolean here =
          subject.isEmpty()
              || planting.rowId().orElse("").equals(subject)
              || planting.id().equals(subject);
      if (species != null
          && isFor(taskKey, species, catalogue)
          && here
          && !planting.plantedOn().isBefore(grove.start())) {
        plants.add(planting);
      }
    }
    return plants;
  }

  /**
   * The first days on which parts of a task may be done, with the share of the task that falls to
   * each: for planting the days on which the plants are wanted, for other work the start.
   */
  static SortedMap<LocalDate, Double> shares(
      String taskKey, String subject, Grove grove, Catalogue catalogue) {
    SortedMap<LocalDate, Double> shares = new TreeMap<>();
    List<Planting> plants = plants(taskKey, subject, grove, catalogue);
    for (Planting planting : plants) {
      shares.merge(planting.plantedOn(), 1.0 / plants.size(), Double::sum);
    }
    if (plants.isEmpty()) {
      shares.put(grove.start(), 1.0);
    }
    return shares;
  }

  /** The last planting day for which other work waits. */
  static LocalDate holdingUntil(Grove grove, Catalogue catalogue) {
    LocalDate first = LocalDate.MAX;
    for (Planting planting : grove.plantings()) {
      LocalDate day = planting.plantedOn();
      first = day.isBefore(grove.start()) || day.isAfter(first) ? first : day;
    }
    Constant days = catalogue.constant("work.waits-for-planting");
    return first.equals(LocalDate.MAX) ? first : first.plusDays(Math.round(days.value() / 86_400));
  }

  /** What there is to say of the planting days. */
  static List<Finding> check(List<WorkTask> tasks, Grove grove, Catalogue catalogue) {
    List<Finding> findings = new ArrayList<>();
    for (WorkTask task : tasks) {
      List<Planting> plants =
          plants(task.kind().key(), task.subject(), grove, catalogue).stream()
              .filter(p -> p.plantedOn().equals(task.notBefore()))
              .toList();
      boolean planting = PLANTING.containsKey(task.kind().key());
      if (!planting || plants.isEmpty() || task.finish().isEmpty()) {
        continue;
      }
      LocalDate done = task.finish().get().toLocalDate();
      LocalDate wanted = task.notBefore();
      if (done.isAfter(wanted)) {
        findings.add(
            Finding.of(
                "work.planting-late",
                done.isAfter(wanted.plusDays(slackDays(catalogue)))
                    ? Severity.SHORTFALL
                    : Severity.NOTE,
                task.subject(),
                "Planting is wanted by "
                    + wanted
                    + ", but with the crew's hours it is done on "
                    + done
                    + ", {0} later. Start sooner, work longer hours, or order the plants for the"
                    + " later day.",
                new Quantity(86_400.0 * (done.toEpochDay() - wanted.toEpochDay()), Kind.DAYS)));
      }
      findings.addAll(tooCold(task, plants, done, grove, catalogue));
    }
    return findings;
  }

  /** Days by which planting may be late before the plan falls short. */
  private static long slackDays(Catalogue catalogue) {
    return Math.round(catalogue.constant("work.planting-slack").value() / 86_400);
  }

  private static List<Finding> tooCold(
      WorkTask task, List<Planting> plants, LocalDate done, Grove grove, Catalogue catalogue) {
    double lowest = ColdNights.lowest(grove.climate(), done.getMonthValue(), catalogue);
    Map<String, Species> tender = new LinkedHashMap<>();
    for (Planting planting : plants) {
      Species species = catalogue.species().get(planting.speciesKey());
      if (lowest < ColdNights.youngLimit(species, catalogue)) {
        tender.put(species.key(), species);
      }
    }
    List<Finding> findings = new ArrayList<>();
    for (Species species : tender.values()) {
      findings.add(
          Finding.of(
              "work.planting-cold",
              Severity.NOTE,
              task.subject(),
              "A young "
                  + species.name()
                  + " stands about {0}, and in the month of planting nights of {1} are to be"
                  + " expected. Plant in a warmer month or cover it on cold nights.",
              new Quantity(ColdNights.youngLimit(species, catalogue), Kind.TEMPERATURE),
              new Quantity(lowest, Kind.TEMPERATURE)));
    }
    return findings;
  }
}
