package org.grovewright.season;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.model.Grove;

/**
 * What a simple timer can do, and on which days it may.
 *
 * @param programmes programmes it has
 * @param starts start times of a programme
 * @param percentStep step of its seasonal percentage
 * @param mostPercent greatest percentage
 * @param rhythms days on which it can water, the most frequent first; a setting names one of them
 *     by its place, counted from 1
 */
record TimerLimits(
    int programmes, int starts, int percentStep, int mostPercent, List<Rhythm> rhythms) {
  TimerLimits {
    rhythms = List.copyOf(rhythms);
  }

  static TimerLimits of(Grove grove, Catalogue catalogue) {
    List<Rhythm> rhythms = new ArrayList<>();
    Rhythm.choices(grove.supply().allowedDays(), whole(catalogue, "irrigation.longest-gap", 86_400))
        .forEach(alike -> rhythms.add(alike.get(0)));
    Collections.reverse(rhythms);
    return new TimerLimits(
        whole(catalogue, "season.programmes", 1),
        whole(catalogue, "season.starts", 1),
        whole(catalogue, "season.percent-step", 0.01),
        whole(catalogue, "season.most-percent", 0.01),
        rhythms);
  }

  /** The place of the rarest rhythm. */
  int rarest() {
    return rhythms.size();
  }

  /** The rhythm at a place. */
  Rhythm rhythm(int place) {
    return rhythms.get(place - 1);
  }

  /** The place of the rarest rhythm without a longer gap than so many days, or of the first. */
  int within(int days) {
    int place = 1;
    while (place < rhythms.size() && rhythm(place + 1).everyDays() <= days) {
      place++;
    }
    return place;
  }

  private static int whole(Catalogue catalogue, String key, double unit) {
    return (int) Math.round(catalogue.constant(key).value() / unit);
  }
}
