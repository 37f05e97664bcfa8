package org.grovewright.irrigation;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.water.MonthNeed;
import org.grovewright.water.WaterNeeds;

/** Names the plants whose soil cannot carry them from one allowed day to the next. */
final class DaysApart {
  private static final double DAY_S = 86_400;

  private DaysApart() {}

  /** A plant in the month in which its water is gone soonest before the next watering. */
  private record Worst(int plant, int year, int month, double heldS, double gapS) {
    double share() {
      return heldS / gapS;
    }
  }

  /** A remark on all of them; none where the days are counted or all last. */
  static Optional<Finding> of(
      Grove grove, List<TimerSetting> settings, List<PlantSupply> supplies, WaterNeeds needs) {
    Map<Integer, Worst> worst = new LinkedHashMap<>();
    Map<String, TimerSetting> byMonth =
        settings.stream()
            .collect(
                Collectors.toMap(s -> Programme.timerId(s.zone(), s.year(), s.month()), s -> s));
    for (PlantSupply supply : supplies) {
      TimerSetting setting =
          byMonth.get(Programme.timerId(supply.zone(), supply.year(), supply.month()));
      if (!setting.rhythm().byCalendar() || supply.needsM3PerS() <= 0) {
        continue;
      }
      MonthNeed need = needs.plants().get(supply.plant()).at(supply.year(), supply.month());
      double held = need.storeM3() / supply.needsM3PerS();
      double gap = setting.everyDays() * DAY_S;
      if (held < gap) {
        worst.merge(
            supply.plant(),
            new Worst(supply.plant(), supply.year(), supply.month(), held, gap),
            (a, b) -> b.share() < a.share() ? b : a);
      }
    }
    return worst.isEmpty()
        ? Optional.empty()
        : Optional.of(
            finding(
                grove,
                worst.values().stream().sorted(Comparator.comparingDouble(Worst::share)).toList()));
  }

  private static Finding finding(Grove grove, List<Worst> group) {
    Worst first = group.get(0);
    return Finding.of(
        "timer.days-apart",
        Severity.SHORTFALL,
        group.stream()
            .map(w -> grove.plantings().get(w.plant()).id())
            .collect(Collectors.joining(", ")),
        "The allowed days leave up to {0} between waterings. The soil around these plants does not"
            + " hold what they take up with ease for so long: around "
            + grove.plantings().get(first.plant()).id()
            + ", in month {1} of year {2}, it lasts {3}. Thick mulch, emitters that wet more of"
            + " their soil, or a can of water between help; rules often leave water from a tank of"
            + " your own free.",
        new Quantity(first.gapS(), Kind.DAYS),
        new Quantity(first.month(), Kind.COUNT),
        new Quantity(first.year(), Kind.COUNT),
        new Quantity(first.heldS(), Kind.DAYS));
  }
}
