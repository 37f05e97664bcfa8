package org.grovewright.trench;

import java.util.List;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.TrenchGround;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;

/**
 * How deep pipes lie: below traffic, and below the frost where that can be dug by hand.
 *
 * <p>Where the owner does not say how deep frost goes it is taken from the mean temperatures of the
 * months, each made colder as in a cold winter: the kelvin days below freezing, of which a share
 * reaches the ground, go in by Stefan's formula {@code x = c sqrt(n I)}. It leaves the heat of the
 * ground out and so goes rather too deep.
 *
 * @param frostM how deep frost goes, metres
 * @param given whether the owner said so
 * @param freezingKelvinDays kelvin days below freezing in a cold winter; 0 where the owner said how
 *     deep frost goes
 * @param deepestM deepest cover that is dug against frost, metres
 */
public record Burial(double frostM, boolean given, double freezingKelvinDays, double deepestM) {
  private static final List<Integer> DAYS = List.of(31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31);

  /** The depths of a grove. */
  public static Burial of(Grove grove, Catalogue catalogue) {
    double deepest = catalogue.constant("irrigation.frost-deepest").value();
    OptionalDouble given = grove.site().frostDepthM();
    if (given.isPresent()) {
      return new Burial(given.getAsDouble(), true, 0, deepest);
    }
    double index =
        freezing(grove.climate(), catalogue.constant("irrigation.frost-cold-winter").value());
    double reaching = index * catalogue.constant("irrigation.frost-surface").value();
    double depth = catalogue.constant("irrigation.frost-penetration").value() * Math.sqrt(reaching);
    return new Burial(depth, false, index, deepest);
  }

  /** Kelvin days below freezing of a year whose months are colder than usual. */
  static double freezing(Climate climate, double colderK) {
    double sum = 0;
    for (Climate.MonthNormal month : climate.normals()) {
      double mean = (month.tminC() + month.tmaxC()) / 2 - colderK;
      sum += DAYS.get(month.month() - 1) * Math.max(0, -mean);
    }
    return sum;
  }

  /** Whether frost goes deeper than the mains, so that they must be drained before winter. */
  public boolean drained() {
    return frostM > deepestM;
  }

  /** Least soil over a main in a kind of ground, metres. */
  public double coverM(TrenchGround ground, boolean vehicles) {
    double cover = ground.mainCover().of(vehicles);
    return drained() ? cover : Math.max(cover, frostM);
  }
}
