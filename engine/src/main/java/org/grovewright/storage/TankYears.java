package org.grovewright.storage;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.irrigation.Programme;
import org.grovewright.irrigation.WateringSystem;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;

/**
 * How a plan's tank fares under its roof through many years of weather.
 *
 * @param weatherYears whole years of weather that were gone through
 * @param drawn whether they were drawn from monthly normals, for want of daily weather
 * @param years the years of the plan, each with the draws of its timer
 * @param levels level through the calendar year with the draws of the last year of the plan
 * @param enoughM3 the smallest tank that runs dry in no more than one year of ten, m3, if any does
 * @param findings whether the tank is enough
 */
public record TankYears(
    int weatherYears,
    boolean drawn,
    List<OfPlan> years,
    List<Level> levels,
    OptionalDouble enoughM3,
    List<Finding> findings) {
  /** Copies the lists. */
  public TankYears {
    years = List.copyOf(years);
    levels = List.copyOf(levels);
    findings = List.copyOf(findings);
  }

  /**
   * One year of the plan, put on every year of weather.
   *
   * @param year year of the plan, from 1
   * @param caughtM3 what the roof gives in a year, m3, mean
   * @param card how the tank fares while the timer runs its whole card, after rain too
   * @param skipping how it fares where waterings are skipped or shortened by the soil
   */
  public record OfPlan(int year, Figure caughtM3, Use card, Use skipping) {
    /** Share of the years in which the tank runs dry under the card. */
    public Figure dryChance() {
      return card.dryChance();
    }

    /** Days a year on which it lacks water under the card, mean. */
    public Figure dryDays() {
      return card.dryDays();
    }

    /** What the card would draw in a year, m3, mean. */
    public Figure wantedM3() {
      return card.wantedM3();
    }

    /** What the card can draw, m3, mean. */
    public Figure drawnM3() {
      return card.drawnM3();
    }

    /** What runs over under the card, m3, mean. */
    public Figure spilledM3() {
      return card.spilledM3();
    }
  }

  /**
   * How the tank fares under one way to draw from it.
   *
   * @param dryChance share of the years in which the tank runs dry
   * @param dryDays days a year on which it lacks water, mean
   * @param wantedM3 what would be drawn in a year, m3, mean
   * @param drawnM3 what can be drawn, m3, mean
   * @param spilledM3 what runs over, m3, mean
   * @param sufferingDays days a year on which a plant suffers, those of all plants added up, mean
   */
  public record Use(
      Figure dryChance,
      Figure dryDays,
      Figure wantedM3,
      Figure drawnM3,
      Figure spilledM3,
      Figure sufferingDays) {}

  /**
   * Level of the tank at the end of a day of the year, m3.
   *
   * @param dayOfYear 1 to 365
   * @param mean mean of all years
   * @param low level that one year in ten falls below
   * @param lowest of all years
   */
  public record Level(int dayOfYear, double mean, double low, double lowest) {}

  /**
   * Follows the tank of a grove whose supply is a tank under a roof; empty for any other grove, and
   * where nothing is known of the rain. Enters {@code storage.year-Y.dry-chance}, {@code
   * .dry-days}, {@code .wanted}, {@code .drawn}, {@code .caught} and {@code .spilled} of the timer
   * that runs its whole card, and all but {@code .caught} again as {@code storage.year-Y.skipping}
   * where waterings are skipped or shortened after rain.
   */
  public static Optional<TankYears> of(
      Grove grove,
      Catalogue catalogue,
      WaterNeeds needs,
      WateringSystem system,
      Programme programme,
      FigureBook book) {
    boolean rainKnown =
        grove.climate().daily().isEmpty()
            ? grove.climate().normals().stream().allMatch(m -> m.rainM().isPresent())
            : grove.climate().daily().stream().anyMatch(d -> d.rainM().isPresent());
    if (grove.supply().roof().isEmpty() || grove.supply().tankVolumeM3().isEmpty() || !rainKnown) {
      return Optional.empty();
    }
    return Optional.of(new TankStudy(grove, catalogue, needs, system, programme, book).make());
  }
}
