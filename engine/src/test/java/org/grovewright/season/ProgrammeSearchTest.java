package org.grovewright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.grovewright.season.ProgrammeSearch.ZoneLoad;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.TestCatalogue;
import org.grovewright.water.TestGroves;
import org.grovewright.water.WaterNeeds;
import org.grovewright.water.WeatherGenerator;
import org.junit.jupiter.api.Test;

/** The search against trying every setting of small cases. */
class ProgrammeSearchTest {
  private static final Catalogue CATALOGUE =
      TestCatalogue.of(TestCatalogue.evergreen(), TestCatalogue.deciduous());
  private static final int[][] SEASONS = {{11, 0, 1}, {2, 3, 4}, {5, 6, 7}, {8, 9, 10}};
  private static final TimerLimits LIMITS =
      new TimerLimits(3, 4, 25, 200, List.of(Rhythm.every(1, 0), Rhythm.every(2, 0)));
  private static final Planting YOUNG =
      TestGroves.plant("young", "evergreen", 20, TestGroves.START);
  private static final Planting OTHER =
      TestGroves.plant("other", "deciduous", 35, TestGroves.START);

  /** Two young trees behind one valve, in four drawn years. */
  private static final class Case {
    private final WeatherYears years;
    private final ZoneLoad zone;

    Case(long seed, double litresPerMinute) {
      Climate normals = TestGroves.drySummer();
      Climate climate =
          new Climate(
              normals.normals(),
              WeatherGenerator.days(normals, CATALOGUE, 2026, 5, seed),
              2,
              "invented");
      Grove grove = TestGroves.grove(37, climate, YOUNG, OTHER);
      WaterNeeds needs = WaterNeeds.of(grove, CATALOGUE, new FigureBook());
      years = WeatherYears.of(grove, CATALOGUE, needs.climate(), 0);
      zone =
          new ZoneLoad(
              0.003,
              grove.plantings().stream()
                  .map(
                      planting ->
                          new PlantRun(
                              planting.id(),
                              "zone-1",
                              true,
                              years,
                              PlantSeries.inYear(
                                  grove, planting, 1, needs, years.daily(), CATALOGUE),
                              0,
                              false,
                              litresPerMinute / 1000))
                  .toList());
    }

    ProgrammeSearch search() {
      return new ProgrammeSearch(List.of(zone), LIMITS, SEASONS, years, setting -> true);
    }
  }

  private static Setting setting(int minutes, int percent, int gap) {
    int[] percents = new int[12];
    int[] gaps = new int[12];
    Arrays.fill(percents, percent);
    Arrays.fill(gaps, gap);
    return new Setting(1, new int[] {minutes}, new int[] {600}, percents, gaps, LIMITS.rhythms());
  }

  /** The least water of all settings with these minutes, any percentage and any allowed gap. */
  private static double leastOfAll(ProgrammeSearch search, Setting start, int most) {
    double least = Double.POSITIVE_INFINITY;
    int choices = (LIMITS.mostPercent() / LIMITS.percentStep() + 1) * LIMITS.rarest();
    int all = (int) Math.pow(choices, SEASONS.length);
    for (int code = 0; code < all; code++) {
      Setting trial = start;
      int left = code;
      boolean twice = false;
      for (int[] season : SEASONS) {
        int percent = left % choices / LIMITS.rarest() * LIMITS.percentStep();
        int gap = left % LIMITS.rarest() + 1;
        left /= choices;
        // A season that is off needs to be tried with one gap only.
        twice |= percent == 0 && gap > 1;
        trial = trial.with(season, percent, gap);
      }
      if (!twice) {
        double water = search.water(trial);
        if (water < least && search.keepsAll(trial, most)) {
          least = water;
        }
      }
    }
    return least;
  }

  @Test
  void comesNearTheBestOfAllSettings() {
    for (int seed = 1; seed <= 4; seed++) {
      for (int most = 0; most <= 1; most++) {
        Case of = new Case(seed, 0.25);
        Setting ample = setting(60, 200, 1);
        ProgrammeSearch search = of.search();
        double found = search.water(search.improve(ample, most));
        double least = leastOfAll(of.search(), ample, most);
        assertThat(found)
            .as("seed %s, %s years may fail", seed, most)
            .isBetween(least, least * 1.01);
      }
    }
  }

  @Test
  void noSingleStepBetters() {
    Case of = new Case(9, 0.25);
    ProgrammeSearch search = of.search();
    Setting found = search.improve(setting(60, 200, 1), 1);
    assertThat(search.keepsAll(found, 1)).isTrue();
    for (int[] season : SEASONS) {
      int percent = found.percent(season[0]);
      if (percent > 0) {
        Setting lower = found.with(season, percent - 25, found.gap(season[0]));
        assertThat(search.keepsAll(lower, 1)).isFalse();
      }
    }
  }

  @Test
  void aLaxerPromiseNeverTakesMoreWater() {
    Case of = new Case(3, 0.25);
    ProgrammeSearch search = of.search();
    Setting strict = search.improve(setting(60, 200, 1), 0);
    Setting lax = search.improve(strict, 2);
    assertThat(search.water(lax)).isLessThanOrEqualTo(search.water(strict));
    assertThat(search.keepsAll(lax, 2)).isTrue();
  }

  @Test
  void refusesAStartThatKeepsNothing() {
    Case of = new Case(1, 0.25);
    assertThatThrownBy(() -> of.search().improve(setting(1, 0, 1), 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void keepsWithinTheRoomOfTheTimer() {
    Case of = new Case(1, 0.25);
    ProgrammeSearch search =
        new ProgrammeSearch(
            List.of(of.zone),
            LIMITS,
            SEASONS,
            of.years,
            setting -> setting.minutesPerStart(0, setting.percent(6)) <= 60);
    Setting start = setting(60, 100, 1);
    assertThat(search.keepsAll(start, 0)).isTrue();
    assertThat(search.keepsAll(start.with(new int[] {6}, 125, 1), 0)).isFalse();
    Setting found = search.improve(start, 0);
    assertThat(found.minutesPerStart(0, found.percent(6))).isLessThanOrEqualTo(60);
  }
}
