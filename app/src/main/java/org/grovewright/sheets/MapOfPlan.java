package org.grovewright.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.grovewright.catalogue.Species;
import org.grovewright.irrigation.Line;
import org.grovewright.irrigation.Outlet;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.layout.CrownSizes;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.plan.Plan;
import org.grovewright.texts.Language;

/** Gathers what is to be seen on the map of a plan. */
final class MapOfPlan {
  private static final List<String> STAGES =
      List.of("When planted", "After three years", "Full-grown");

  private MapOfPlan() {}

  static MapScene scene(Plan plan, Language language) {
    Grove grove = plan.grove();
    return new MapScene(
        grove.site().name(),
        grove.site().boundary(),
        grove.site().northBearingDeg(),
        grove.site().fixtures(),
        grove.rows().stream().map(row -> new MapScene.RowMark(row.id(), row.line())).toList(),
        STAGES,
        grove.plantings().stream().map(planting -> plant(planting, plan, language)).toList(),
        pipes(plan.watering()),
        plan.watering().zones().stream()
            .flatMap(zone -> zone.design().outlets().stream())
            .map(Outlet::at)
            .toList(),
        List.of(new MapScene.DeviceMark(language.say(supplyWord(grove)), grove.supply().at())));
  }

  private static MapScene.PlantMark plant(Planting planting, Plan plan, Language language) {
    Species species = plan.catalogue().species().get(planting.speciesKey());
    String id = planting.id();
    return new MapScene.PlantMark(
        label(planting, species, language),
        id + ": " + language.say(species.name()),
        planting.at(),
        species.role() == Species.Role.MAIN,
        Stream.of(CrownSizes.firstId(id), CrownSizes.laterId(id), CrownSizes.fullId(id))
            .map(figure -> plan.figure(figure).orElseThrow().value())
            .toList());
  }

  /**
   * What is written beside a plant: a main plant's id and species, a companion's species alone,
   * since there are many and their ids are long.
   */
  private static String label(Planting planting, Species species, Language language) {
    String name = language.say(species.name()).toLowerCase(Locale.ROOT);
    if (species.role() != Species.Role.MAIN) {
      return name;
    }
    return planting.id().toLowerCase(Locale.ROOT).contains(name)
        ? planting.id()
        : planting.id() + " " + name;
  }

  private static List<MapScene.PipeMark> pipes(WateringSystem system) {
    List<MapScene.PipeMark> pipes = new ArrayList<>();
    int number = 0;
    for (ZoneResult zone : system.zones()) {
      ZoneDesign design = zone.design();
      for (List<Point> leg : design.main()) {
        pipes.add(new MapScene.PipeMark("Main of " + Words.zone(design.id()), number, false, leg));
      }
      for (ZoneDesign.LateralDesign lateral : design.laterals()) {
        for (Line line : lateral.lines()) {
          pipes.add(
              new MapScene.PipeMark(
                  "Drip line of " + Words.zone(design.id()), number, true, line.path()));
        }
      }
      number++;
    }
    return pipes;
  }

  private static String supplyWord(Grove grove) {
    return switch (grove.supply().kind()) {
      case HOUSE_TAP -> "Tap";
      case WELL_PUMP -> "Well pump";
      case GRAVITY_TANK -> "Tank outlet";
    };
  }
}
