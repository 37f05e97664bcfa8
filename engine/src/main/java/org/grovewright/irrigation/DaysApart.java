package org.grovewright.irrigation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
  private record Worst(int plant, String zone, int year, int month, double heldS, double gapS) {}

  /** Remarks, one for the plants of a species and zone; none where the days are counted. */
  static List<Finding> of(
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
            new Worst(supply.plant(), supply.zone(), supply.year(), supply.month(), held, gap),
            (a, b) -> b.heldS() / b.gapS() < a.heldS() / a.gapS() ? b : a);
      }
    }
    Map<String, List<Worst>> alike = new LinkedHashMap<>();
    for (Worst w : worst.values()) {
      String species = grove.plantings().get(w.plant()).speciesKey();
      alike.computeIfAbsent(w.zone() + "/" + species, k -> new ArrayList<>()).add(w);
    }
    return alike.values().stream().map(group -> finding(grove, group)).toList();
  }

  private static Finding finding(Grove grove, List<Worst> group) {
    Worst first =
        group.stream()
            .reduce((a, b) -> b.heldS() / b.gapS() < a.heldS() / a.gapS() ? b : a)
            .orElseThrow();
    return Finding.of(
        "timer.days-apart",
        Severity.SHORTFALL,
        group.stream()
            .map(w -> grove.plantings().get(w.plant()).id())
            .collect(Collectors.joining(", ")),
        "The allowed days leave up to {0} between waterings. In month {1} of year {2} the soil"
            + " around the plant holds what it takes up with ease for {3} only, so it goes short"
            + " before the next. Thick mulch, emitters that wet more of its soil, or a can of water"
            + " between help; rules often leave water from a tank of your own free.",
        new Quantity(first.gapS(), Kind.DAYS),
        new Quantity(first.month(), Kind.COUNT),
        new Quantity(first.year(), Kind.COUNT),
        new Quantity(first.heldS(), Kind.DAYS));
  }
}
