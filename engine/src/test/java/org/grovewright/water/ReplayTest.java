package org.grovewright.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.junit.jupiter.api.Test;

class ReplayTest {
  private static final Catalogue CATALOGUE = TestCatalogue.of(TestCatalogue.evergreen());
  private static final int YEARS = 19;
  private static final Planting TREE = TestGroves.plant("tree", "evergreen", 20, TestGroves.START);

  private final Grove grove = TestGroves.grove(37, drawn(), TREE);
  private final FigureBook book = new FigureBook();
  private final WaterNeeds needs = WaterNeeds.of(grove, CATALOGUE, book);
  private final DailyClimate weather =
      DailyClimate.of(grove.site(), grove.climate(), needs.climate().arid(), CATALOGUE);

  private static Climate drawn() {
    Climate normals = TestGroves.drySummer();
    return new Climate(
        normals.normals(),
        WeatherGenerator.days(normals, CATALOGUE, 2001, YEARS, 5),
        2,
        "invented");
  }

  private Replay.OfPlant replay(double factor) {
    Replay replay =
        Replay.of(
            grove,
            CATALOGUE,
            needs,
            weather,
            2,
            (planting, series) -> {
              double[] days = NeedWatering.days(grove, needs.plant(planting.id()), 2, series);
              for (int i = 0; i < days.length; i++) {
                days[i] *= factor;
              }
              return days;
            },
            factor == 1 ? book : new FigureBook());
    return replay.plants().get(0);
  }

  @Test
  void wateringByNeedKeepsThePlantFromMuchStress() {
    Replay.OfPlant tree = replay(1);
    assertThat(tree.years()).hasSize(YEARS);
    assertThat(tree.years()).allMatch(year -> year.shortfall() < 0.12);
    assertThat(tree.worst().stressedDays())
        .isGreaterThanOrEqualTo((int) tree.oneInTenStressedDays().value());
    assertThat(book.get("water.replay.tree.worst-stressed-days").value())
        .isEqualTo(tree.worst().stressedDays());
    assertThat(tree.meanStressedDays().value())
        .isCloseTo(
            tree.years().stream().mapToInt(Replay.Year::stressedDays).average().orElseThrow(),
            within(1e-12));
  }

  @Test
  void lessWaterMeansMoreStressAndMoreWaterMoreLoss() {
    Replay.OfPlant half = replay(0.5);
    Replay.OfPlant full = replay(1);
    Replay.OfPlant twice = replay(2);
    assertThat(half.meanStressedDays().value()).isGreaterThan(full.meanStressedDays().value() + 30);
    for (int i = 0; i < YEARS; i++) {
      assertThat(half.years().get(i).shortfall()).isGreaterThan(full.years().get(i).shortfall());
      assertThat(twice.years().get(i).lostM3()).isGreaterThan(full.years().get(i).lostM3());
      assertThat(twice.years().get(i).irrigationM3())
          .isCloseTo(2 * full.years().get(i).irrigationM3(), within(1e-9));
    }
  }

  @Test
  void oneInTenFollowsThePlottingPosition() {
    // Weibull's plotting position r / (n + 1): of 9 years the worst has the chance 0.1, of 19 the
    // second, of 14 one half-way between the first and the second.
    assertThat(Replay.exceeded(years(9), 0.1)).isEqualTo(9);
    assertThat(Replay.exceeded(years(19), 0.1)).isEqualTo(18);
    assertThat(Replay.exceeded(years(14), 0.1)).isCloseTo(13.5, within(1e-9));
    assertThat(Replay.exceeded(years(4), 0.1)).isEqualTo(4);
    assertThat(Replay.exceeded(years(1), 0.1)).isEqualTo(1);
  }

  private static List<Replay.Year> years(int count) {
    List<Replay.Year> years = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      years.add(new Replay.Year(2000 + i, i, 0, 0, 0));
    }
    return years;
  }
}
