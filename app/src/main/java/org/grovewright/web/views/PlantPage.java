package org.grovewright.web.views;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Species;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.model.Planting;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Kind;

/**
 * How is this plant doing?
 *
 * @param plant what the list of plants says of it
 * @param latin botanical name
 * @param row its row, empty if it is in none
 * @param size crown and place
 * @param ground hole, soil and what goes in
 * @param water what it needs and gets, month by month in the year of the day asked for
 * @param waterYear what that year is called
 * @param emitters its emitters
 * @param feedings its feedings from the day asked for on
 * @param remarks remarks on it and its kind
 * @param cautions cautions that belong to its kind
 * @param before the plant before it in the description, empty for the first
 * @param next the plant after it, empty for the last
 */
public record PlantPage(
    PlantsPage.Item plant,
    String latin,
    String row,
    List<Fact> size,
    List<Fact> ground,
    List<Month> water,
    String waterYear,
    List<Emitter> emitters,
    List<Feeding> feedings,
    List<Remark> remarks,
    List<CautionText> cautions,
    String before,
    String next) {
  private static final int MOST_FEEDINGS = 8;

  /**
   * A named number.
   *
   * @param label what it is
   * @param value the number
   */
  public record Fact(String label, Shown value) {}

  /**
   * Water of a month.
   *
   * @param month month, 1 to 12
   * @param name its name
   * @param needs what the plant needs
   * @param gets what the timer gives it, empty if no zone waters it
   * @param share share of the need that is met, 0 and up; 1 where nothing is needed
   * @param met the share in words
   */
  public record Month(int month, String name, Shown needs, Shown gets, double share, String met) {}

  /**
   * Emitters of one sort.
   *
   * @param name what they are
   * @param flow flow of one
   * @param pressure pressure at it
   */
  public record Emitter(String name, Shown flow, Shown pressure) {}

  /**
   * One feeding.
   *
   * @param month the month
   * @param amount how much
   * @param fertiliser of what
   */
  public record Feeding(String month, Shown amount, String fertiliser) {}

  /** The page of a plant on a day, if the plan has the plant. */
  public static Optional<PlantPage> of(Plan plan, String plantId, LocalDate day, Voice voice) {
    List<Planting> all = plan.grove().plantings();
    for (int i = 0; i < all.size(); i++) {
      if (all.get(i).id().equals(plantId)) {
        return Optional.of(of(plan, i, day, voice));
      }
    }
    return Optional.empty();
  }

  private static PlantPage of(Plan plan, int index, LocalDate day, Voice voice) {
    List<Planting> all = plan.grove().plantings();
    Planting plant = all.get(index);
    Species species = plan.catalogue().species().get(plant.speciesKey());
    String slug = FigureBook.slug(plant.id());
    PlanMonth now = PlanMonth.of(day, plan.grove());
    List<Remark> remarks = new ArrayList<>();
    plan.findings().stream()
        .filter(f -> PlantsPage.about(plan, plant).contains(f) || f.subject().equals(species.key()))
        .forEach(finding -> remarks.add(voice.remark(plan, finding)));
    return new PlantPage(
        PlantsPage.item(plan, plant, day, voice),
        species.latin(),
        plant.rowId().orElse(""),
        facts(
            plan,
            "layout.plant." + slug + ".",
            List.of("spread-first", "spread-year-3", "spread-full", "nearest"),
            voice),
        facts(
            plan,
            "ground.plant." + slug + ".",
            List.of(
                "hole-width",
                "hole-depth",
                "hole-volume",
                "raise",
                "ball-mass",
                "mix-bought",
                "dug-loose",
                "surplus"),
            voice),
        months(plan, index, now.year(), voice),
        voice.text("plant.water-year", now.year()),
        emitters(plan, index, voice),
        feedings(plan, plant, day, voice),
        remarks,
        CautionText.of(species.caution().stream().toList(), plan.catalogue(), voice),
        index == 0 ? "" : all.get(index - 1).id(),
        index == all.size() - 1 ? "" : all.get(index + 1).id());
  }

  private static List<Fact> facts(Plan plan, String prefix, List<String> ends, Voice voice) {
    return ends.stream()
        .map(end -> plan.figures().get(prefix + end))
        .filter(figure -> figure != null)
        .map(figure -> new Fact(voice.say(figure.label()), voice.figure(plan, figure.id())))
        .toList();
  }

  private static List<Month> months(Plan plan, int index, int year, Voice voice) {
    List<Month> months = new ArrayList<>();
    Planting plant = plan.grove().plantings().get(index);
    int first = plan.grove().start().getMonthValue();
    for (int i = 0; i < 12; i++) {
      int month = (first + i - 1) % 12 + 1;
      Shown needs = voice.figure(plan, plan.water().plant(plant.id()).at(year, month).need().id());
      String name = voice.language().month(month);
      months.add(
          plan.programme().supplies().stream()
              .filter(s -> s.plant() == index && s.year() == year && s.month() == month)
              .findFirst()
              .map(
                  supply ->
                      new Month(
                          month,
                          name,
                          needs,
                          WaterPage.gets(plan, supply, voice),
                          supply.share(),
                          voice.units().text(supply.share(), Kind.SHARE)))
              .orElse(new Month(month, name, needs, Shown.NONE, 0, "")));
    }
    return months;
  }

  private static List<Emitter> emitters(Plan plan, int index, Voice voice) {
    List<Emitter> emitters = new ArrayList<>();
    for (ZoneResult zone : plan.watering().zones()) {
      for (ZoneResult.OutletResult result : zone.outlets()) {
        if (result.outlet().plant() == index) {
          String id =
              "hydraulics.zone."
                  + FigureBook.slug(zone.design().id())
                  + ".outlet."
                  + FigureBook.slug(result.outlet().id())
                  + ".";
          emitters.add(
              new Emitter(
                  voice.say(result.outlet().emitter().name()),
                  voice.figure(plan, id + "flow"),
                  voice.figure(plan, id + "pressure")));
        }
      }
    }
    return emitters;
  }

  private static List<Feeding> feedings(Plan plan, Planting plant, LocalDate day, Voice voice) {
    return plan.ground().feedings().stream()
        .filter(feeding -> feeding.plantId().equals(plant.id()))
        .filter(feeding -> !feeding.when().atEndOfMonth().isBefore(day))
        .limit(MOST_FEEDINGS)
        .map(
            feeding -> {
              Amendment fertiliser = plan.catalogue().amendments().get(feeding.fertiliserKey());
              return new Feeding(
                  voice.language().month(feeding.when()),
                  voice.shown(plan, feeding.figureId(), feeding.fertiliserKg(), Kind.MASS),
                  voice.say(fertiliser.name()));
            })
        .toList();
  }
}
