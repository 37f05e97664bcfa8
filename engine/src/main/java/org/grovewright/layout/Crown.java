package org.grovewright.layout;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.growth.Growth;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;

/**
 * The crown of one plant on the plan's time scale, whose zero is the day the plan starts. A plant
 * that stands already has its size of that day at zero; one planted later has no crown until then.
 */
public final class Crown {
  private static final double DAYS_PER_YEAR = 365.25;

  private final Planting planting;
  private final Species species;
  private final Growth growth;
  private final Growth kindGrowth;
  private final double ageAtStart;
  private final boolean standing;

  private Crown(
      Planting planting, Species species, Growth growth, Growth kindGrowth, LocalDate start) {
    this.planting = planting;
    this.species = species;
    this.growth = growth;
    this.kindGrowth = kindGrowth;
    this.ageAtStart = ChronoUnit.DAYS.between(planting.plantedOn(), start) / DAYS_PER_YEAR;
    this.standing = planting.plantedOn().isBefore(start);
  }

  /**
   * The crown of a plant.
   *
   * @throws IllegalArgumentException if the catalogue does not have the plant's species
   */
  public static Crown of(Planting planting, Grove grove, Catalogue catalogue) {
    Species species = catalogue.species().get(planting.speciesKey());
    if (species == null) {
      throw new IllegalArgumentException(
          "Plant " + planting.id() + " is of an unknown species: " + planting.speciesKey());
    }
    Growth growth = Growth.of(planting, species, grove.start(), catalogue.constants());
    Planting free =
        new Planting(
            planting.id(),
            planting.speciesKey(),
            planting.cultivar(),
            planting.at(),
            planting.rowId(),
            planting.plantedOn(),
            planting.containerM3(),
            Planting.Measured.NOTHING,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    Growth kindGrowth = Growth.of(free, species, grove.start(), catalogue.constants());
    return new Crown(planting, species, growth, kindGrowth, grove.start());
  }

  /** The plant. */
  public Planting planting() {
    return planting;
  }

  /** Its species. */
  public Species species() {
    return species;
  }

  /** The plant in words: its id and the name of its species. */
  public String label() {
    return planting.id() + " (" + species.name() + ")";
  }

  /** Whether it stood already when the plan starts. */
  public boolean standing() {
    return standing;
  }

  /** Whether it is a main plant of the grove. */
  public boolean isMain() {
    return species.role() == Species.Role.MAIN;
  }

  /** Years since planting, so many years into the plan; negative before it is planted. */
  public double ageAt(double planYears) {
    return ageAtStart + planYears;
  }

  /** Crown diameter so many years into the plan, metres; 0 before planting. */
  public double spreadM(double planYears) {
    double age = ageAt(planYears);
    return age < 0 ? 0 : growth.spreadM(age);
  }

  /**
   * Crown diameter of a plant of the kind that is neither measured nor pruned, so many years after
   * planting, metres.
   */
  public double spreadOfKindM(double age) {
    return kindGrowth.spreadM(age);
  }

  /** Crown radius so many years into the plan, metres; 0 before planting. */
  public double radiusM(double planYears) {
    return spreadM(planYears) / 2;
  }

  /** Crown radius when the plant comes into the ground or, if it stands already, at the start. */
  public double firstRadiusM() {
    return growth.spreadM(Math.max(0, ageAtStart)) / 2;
  }

  /** Radius that the crown comes to in the end, under the pruning the owner intends, metres. */
  public double fullRadiusM() {
    return radiusM(horizonYears());
  }

  /** Years into the plan after which the crown grows no more worth speaking of. */
  public double horizonYears() {
    return 10 * species.yearsToMature() + Math.max(0, -ageAtStart);
  }
}
