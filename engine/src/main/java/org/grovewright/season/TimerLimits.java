package org.grovewright.season;

import org.grovewright.catalogue.Catalogue;

/**
 * What a simple timer can do.
 *
 * @param programmes programmes it has
 * @param starts start times of a programme
 * @param percentStep step of its seasonal percentage
 * @param mostPercent greatest percentage
 * @param longestGap most days from one watering to the next
 */
record TimerLimits(int programmes, int starts, int percentStep, int mostPercent, int longestGap) {
  static TimerLimits of(Catalogue catalogue) {
    return new TimerLimits(
        whole(catalogue, "season.programmes", 1),
        whole(catalogue, "season.starts", 1),
        whole(catalogue, "season.percent-step", 0.01),
        whole(catalogue, "season.most-percent", 0.01),
        whole(catalogue, "irrigation.longest-gap", 86_400));
  }

  private static int whole(Catalogue catalogue, String key, double unit) {
    return (int) Math.round(catalogue.constant(key).value() / unit);
  }
}
