package org.grovewright.web.api;

import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.formats.description.OpenDescription;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.plan.MovedPlants;
import org.grovewright.plan.Plan;

/** A site in which plants are being moved, with what is known of it from one step to the next. */
final class Drag {
  private final OpenDescription open;
  private final double needM3PerS;
  private MovedPlants plants;

  Drag(OpenDescription open, Catalogue catalogue) {
    this.open = open;
    this.needM3PerS = QuickFigures.need(open.described().grove(), catalogue);
  }

  /** The site with its plants where they stand. */
  Described described() {
    return open.described();
  }

  /** Its need of water, m3/s; where a plant stands makes no difference to what it needs. */
  double needM3PerS() {
    return needM3PerS;
  }

  /**
   * The grove with plants in other places.
   *
   * @throws ApiException if they cannot stand there
   */
  Grove moved(Map<String, Point> moves) {
    return Groves.told(() -> open.moved(moves));
  }

  /**
   * What is to be bought would cost, with plants in other places.
   *
   * @param plan the plan of the site as it stands
   */
  synchronized double cost(Plan plan, Grove moved) {
    if (plants == null) {
      plants = new MovedPlants(plan);
    }
    return plants.cost(moved);
  }
}
