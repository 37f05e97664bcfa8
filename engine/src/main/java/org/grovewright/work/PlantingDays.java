package org.grovewright.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
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
  /** Tasks whose key is this word, or begins with it and a hyphen, put plants into the ground. */
  private static final String PLANTING = "plant";

  private PlantingDays() {}

  private static boolean isPlanting(String taskKey) {
    return taskKey.equals(PLANTING) || taskKey.startsWith(PLANTING + "-");
  }

  /** The plants that a job puts in, without those that stand already. */
  private static List<Planting> plants(String taskKey, String subject, Grove grove) {
    List<Planting> plants = new ArrayList<>();
    for (Planting planting : grove.plantings()) {
      boolean here = subject.isEmpty() || planting.rowId().orElse("").equals(subject);
      if (isPlanting(taskKey) && here && !planting.plantedOn().isBefore(grove.start())) {
        plants.add(planting);
      }
    }
    return plants;
  }

  private static LocalDate lastDay(List<Planting> plants, LocalDate start) {
    LocalDate last = start;
    for (Planting planting : plants) {
      last = planting.plantedOn().isAfter(last) ? planting.plantedOn() : last;
    }
    return last;
  }

  /** The first day on which a job may be done. */
  static LocalDate notBefore(TaskGraph.Job job, Grove grove) {
    return lastDay(plants(job.task().key(), job.subject(), grove), grove.start());
  }

  /** What there is to say of the planting days. */
  static List<Finding> check(List<WorkTask> tasks, Grove grove, Catalogue catalogue) {
    List<Finding> findings = new ArrayList<>();
    for (WorkTask task : tasks) {
      List<Planting> plants = plants(task.kind().key(), task.subject(), grove);
      if (plants.isEmpty() || task.finish().isEmpty()) {
        continue;
      }
      LocalDate done = task.finish().get().toLocalDate();
      LocalDate wanted = lastDay(plants, grove.start());
      if (done.isAfter(wanted)) {
        findings.add(
            Finding.of(
                "work.planting-late",
                Severity.SHORTFALL,
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

  private static List<Finding> tooCold(
      WorkTask task, List<Planting> plants, LocalDate done, Grove grove, Catalogue catalogue) {
    double lowest = ColdNights.lowest(grove.climate(), done.getMonthValue(), catalogue);
    Map<String, Species> tender = new LinkedHashMap<>();
    for (Planting planting : plants) {
      Species species = catalogue.species().get(planting.speciesKey());
      if (species != null && lowest < ColdNights.youngLimit(species, catalogue)) {
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
