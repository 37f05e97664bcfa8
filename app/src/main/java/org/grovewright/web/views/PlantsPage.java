package org.grovewright.web.views;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;

/**
 * How is each plant doing?
 *
 * @param groups the plants by row, in the order of the description
 * @param mains how many main plants there are
 * @param others how many companions and ground covers
 */
public record PlantsPage(List<Group> groups, int mains, int others) {
  /**
   * Plants of one row.
   *
   * @param row name of the row, empty for plants in none
   * @param plants its plants
   */
  public record Group(String row, List<Item> plants) {}

  /**
   * One plant.
   *
   * @param id its name in the description
   * @param species common name
   * @param cultivar cultivar, empty if not said
   * @param role main, companion or groundcover
   * @param zone what its zone is called, empty if no zone waters it
   * @param planted when it was or will be planted, in words
   * @param standing whether it stands on the day asked for
   * @param needs what it needs in the month asked for
   * @param shortfalls remarks in which the plan falls short for it
   * @param notes other remarks on it
   */
  public record Item(
      String id,
      String species,
      String cultivar,
      String role,
      String zone,
      String planted,
      boolean standing,
      Shown needs,
      int shortfalls,
      int notes) {}

  /** The page of a plan on a day. */
  public static PlantsPage of(Plan plan, LocalDate day, Voice voice) {
    Map<String, List<Item>> groups = new LinkedHashMap<>();
    int mains = 0;
    for (Planting plant : plan.grove().plantings()) {
      Item item = item(plan, plant, day, voice);
      mains += item.role().equals("main") ? 1 : 0;
      groups.computeIfAbsent(plant.rowId().orElse(""), r -> new ArrayList<>()).add(item);
    }
    List<Group> all = new ArrayList<>();
    groups.forEach((row, plants) -> all.add(new Group(row, plants)));
    return new PlantsPage(all, mains, plan.grove().plantings().size() - mains);
  }

  /** One plant of a plan on a day. */
  static Item item(Plan plan, Planting plant, LocalDate day, Voice voice) {
    Species species = plan.catalogue().species().get(plant.speciesKey());
    PlanMonth now = PlanMonth.of(day, plan.grove());
    List<Finding> about = about(plan, plant);
    int shortfalls =
        (int) about.stream().filter(f -> f.severity() == Finding.Severity.SHORTFALL).count();
    return new Item(
        plant.id(),
        voice.say(species.name()),
        plant.cultivar().orElse(""),
        species.role().name().toLowerCase(Locale.ROOT),
        zone(plan, plant).map(voice::zone).orElse(""),
        voice.language().shortDate(plant.plantedOn()),
        !plant.plantedOn().isAfter(day),
        voice.figure(plan, plan.water().plant(plant.id()).at(now.year(), now.month()).need().id()),
        shortfalls,
        about.size() - shortfalls);
  }

  /** The zone that waters a plant. */
  static Optional<String> zone(Plan plan, Planting plant) {
    int index = plan.grove().plantings().indexOf(plant);
    return plan.watering().zones().stream()
        .filter(zone -> zone.plantFlows().containsKey(index))
        .map(zone -> zone.design().id())
        .findFirst();
  }

  /** The remarks that name a plant. */
  static List<Finding> about(Plan plan, Planting plant) {
    return plan.findings().stream()
        .filter(finding -> List.of(finding.subject().split(", ")).contains(plant.id()))
        .toList();
  }
}
