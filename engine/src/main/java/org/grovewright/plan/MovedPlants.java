package org.grovewright.plan;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.buying.ShoppingList;
import org.grovewright.demand.Requirement;
import org.grovewright.ground.MulchRings;
import org.grovewright.irrigation.KnownDesigns;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.layout.Terrain;
import org.grovewright.model.Grove;
import org.grovewright.quantity.FigureBook;

/**
 * What the goods of a plan would cost if plants stood elsewhere, without making the whole plan anew
 * each time: for looking at while a plant is moved. The watering system is designed again, but
 * zones that no moved plant belongs to are known from before, and so are rings of mulch that
 * nothing near has left. What a plant needs does not depend on where it stands. For one thread.
 */
public final class MovedPlants {
  private final Plan plan;
  private final Terrain terrain;
  private final KnownDesigns designs = new KnownDesigns();
  private final MulchRings.Memory rings = new MulchRings.Memory();

  /** Moves of the plants of a plan. */
  public MovedPlants(Plan plan) {
    this.plan = plan;
    this.terrain = Terrain.of(plan.grove().site());
  }

  /**
   * Cost of all that is to be bought, the same as the total of the shopping list of a plan of the
   * moved grove.
   *
   * @param moved the plan's grove with other places of its plants, and nothing else changed
   * @throws IllegalArgumentException if it has other plants
   */
  public double cost(Grove moved) {
    if (moved.plantings().size() != plan.grove().plantings().size()) {
      throw new IllegalArgumentException("the plants of a moved grove must be those of the plan");
    }
    List<Requirement> goods =
        new ArrayList<>(plan.ground().requirementsWhenMoved(moved, plan.catalogue(), rings));
    goods.addAll(
        WateringSystem.requirementsOf(moved, plan.catalogue(), plan.water(), terrain, designs));
    return ShoppingList.of(goods, moved, plan.catalogue(), new FigureBook()).total();
  }
}
