package org.grovewright.trouble;

import java.util.List;

/**
 * What a mishap would change.
 *
 * @param title what happens and where, in a sentence
 * @param plants every plant of the zones it touches, before and after
 * @param zones what those zones draw, before and after
 * @param remarks what is worth knowing besides
 */
public record WhatIfAnswer(
    Told title, List<PlantChange> plants, List<ZoneChange> zones, List<Told> remarks) {
  /** Copies the lists. */
  public WhatIfAnswer {
    plants = List.copyOf(plants);
    zones = List.copyOf(zones);
    remarks = List.copyOf(remarks);
  }

  /**
   * A plant before and after. A plant that is added by the case has no flow before.
   *
   * @param plantId the plant
   * @param zoneId its zone
   * @param flowBefore flow of its emitters together, m3/s
   * @param flowAfter the same after, m3/s
   * @param pressureBefore least pressure at its emitters, pascals
   * @param pressureAfter the same after, pascals
   * @param needBefore share of its need in its thirstiest month of the third year that the timer
   *     gives it
   * @param needAfter the same after, if the timer is left as it is
   */
  public record PlantChange(
      String plantId,
      String zoneId,
      double flowBefore,
      double flowAfter,
      double pressureBefore,
      double pressureAfter,
      double needBefore,
      double needAfter) {}

  /**
   * Flow of a zone past the meter before and after.
   *
   * @param zoneId the zone
   * @param before m3/s
   * @param after m3/s
   */
  public record ZoneChange(String zoneId, double before, double after) {}

  /** The plant with the least share of its need afterwards, or null where no plant is touched. */
  public PlantChange worst() {
    PlantChange worst = null;
    for (PlantChange plant : plants) {
      if (worst == null || plant.needAfter() < worst.needAfter()) {
        worst = plant;
      }
    }
    return worst;
  }
}
