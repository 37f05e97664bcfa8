package org.grovewright.advice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;

/** Finds the plants to look at. */
final class Looks {
  private static final double DAY_S = 86_400;

  /** Watering or rain that reaches a root ball through mulch, mm. */
  private static final double FELT_MM = 3;

  /** A plant with its reason, and how far it has gone to its limit. */
  private record Found(LookAt look, double dryness) {}

  private final PlantTrack[] tracks;
  private final boolean[] served;
  private final boolean[] wateredToday;
  private final AdviceFigures figures;
  private final int today;
  private final LocalDate date;
  private final int newDays;
  private final int newInterval;

  /**
   * The plants among which to look.
   *
   * @param shares what each zone is to be watered today, by its id
   */
  Looks(
      PlantTrack[] tracks,
      List<ZoneDay> zones,
      Map<String, RoomToday.Share> shares,
      Catalogue catalogue,
      AdviceFigures figures,
      int today,
      LocalDate date) {
    this.tracks = tracks;
    this.figures = figures;
    this.today = today;
    this.date = date;
    newDays = days(catalogue, "water.establishment-time");
    newInterval = days(catalogue, "water.establishment-interval");
    served = new boolean[tracks.length];
    wateredToday = new boolean[tracks.length];
    for (ZoneDay zone : zones) {
      for (ZoneDay.Plant plant : zone.plants) {
        served[plant.index()] = true;
        wateredToday[plant.index()] = shares.get(zone.id()).minutes() > 0;
      }
    }
  }

  private static int days(Catalogue catalogue, String key) {
    return (int) (catalogue.constant(key).value() / DAY_S);
  }

  /** The plants, at most one reason each, the most pressing first. */
  List<LookAt> list() {
    List<Found> looks = new ArrayList<>();
    for (int i = 0; i < tracks.length; i++) {
      if (tracks[i] != null) {
        look(tracks[i], i, looks);
      }
    }
    looks.sort(
        Comparator.comparing((Found found) -> found.look().reason())
            .thenComparing(Found::dryness, Comparator.reverseOrder()));
    return looks.stream().map(Found::look).toList();
  }

  private void look(PlantTrack track, int plant, List<Found> looks) {
    int dryDays = 0;
    while (track.isPlanted(today - 1 - dryDays)
        && today - 1 - dryDays >= 0
        && track.isDry(today - 1 - dryDays)) {
      dryDays++;
    }
    double perMm = track.soilM2(today) / 1000;
    if (!served[plant] && track.isDry(today)) {
      add(looks, track, LookAt.Reason.BY_HAND, track.startMm(today) * perMm);
    } else if (dryDays > 0) {
      add(looks, track, LookAt.Reason.THIRSTY, dryDays * DAY_S);
    } else {
      int sincePlanted = (int) (date.toEpochDay() - track.planting().plantedOn().toEpochDay());
      int without = daysWithout(track);
      if (!wateredToday[plant] && sincePlanted <= newDays && without > newInterval) {
        add(looks, track, LookAt.Reason.NEWLY_SET, without * DAY_S);
      }
    }
  }

  private void add(List<Found> looks, PlantTrack track, LookAt.Reason reason, double amount) {
    looks.add(
        new Found(
            new LookAt(track.planting().id(), reason, figures.look(track, reason, amount)),
            track.dryness(today)));
  }

  /** Whole days since water last came to the plant's roots. */
  private int daysWithout(PlantTrack track) {
    int days = 0;
    while (today - days >= 0
        && track.isPlanted(today - days)
        && track.rainMm(today - days) < FELT_MM
        && track.givenMm(today - days) < FELT_MM) {
      days++;
    }
    return Math.max(0, days - 1);
  }
}
