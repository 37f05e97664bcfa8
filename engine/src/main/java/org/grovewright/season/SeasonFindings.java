package org.grovewright.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Remarks on a card. */
final class SeasonFindings {
  /** Fewer years than this say little about one year in ten. */
  private static final int ENOUGH_YEARS = 20;

  private SeasonFindings() {}

  static List<Finding> of(
      SeasonSettings settings,
      WaterRule rule,
      WeatherYears years,
      Outcome outcome,
      CardMaker.Found found,
      boolean fits) {
    List<Finding> findings = new ArrayList<>();
    List<PlantHistory> lost =
        outcome.plants().stream()
            .filter(plant -> found.beyondHelp().contains(plant.plantId()))
            .toList();
    if (!lost.isEmpty()) {
      findings.add(notKept(settings, rule, lost));
    }
    List<String> tooDry =
        outcome.plants().stream()
            .map(PlantHistory::plantId)
            .filter(found.beyondRule()::contains)
            .toList();
    if (!tooDry.isEmpty()) {
      findings.add(
          Finding.of(
              "season.rule-short",
              Severity.SHORTFALL,
              String.join(", ", tooDry),
              "With the days and the water that are allowed, no setting was found that keeps these"
                  + " above their limit in {0} of the years. The card gives the mean need of each"
                  + " month as far as the rule lets it. Thick mulch, water from a tank of your own,"
                  + " or fewer plants help; water the youngest trees by hand first.",
              new Quantity(settings.keptShare(), Kind.SHARE)));
    }
    if (!fits) {
      findings.add(
          Finding.of(
              "season.no-room",
              Severity.SHORTFALL,
              "",
              "The programmes of the card do not all fit into one day of the allowed hours and the"
                  + " allowed volume, so it has no start times; set the programmes on different"
                  + " days, or allow more hours."));
    }
    Quantity count = new Quantity(years.spans().size(), Kind.COUNT);
    if (years.drawn()) {
      findings.add(
          Finding.of(
              "season.drawn-weather",
              Severity.NOTE,
              "",
              "There is no daily weather of the place, so the card was tested in {0} years drawn"
                  + " from the monthly normals. Real years may swing more; daily weather from a"
                  + " station near you makes the card surer.",
              count));
    } else if (years.spans().size() < ENOUGH_YEARS) {
      findings.add(
          Finding.of(
              "season.few-years",
              Severity.NOTE,
              "",
              "The daily weather holds too few whole years to say much about what happens once in"
                  + " ten: {0}.",
              count));
    }
    return findings;
  }

  private static Finding notKept(SeasonSettings settings, WaterRule rule, List<PlantHistory> lost) {
    PlantHistory worst =
        lost.stream().max(Comparator.comparingDouble(PlantHistory::meanStressedDays)).orElseThrow();
    String help =
        rule.days().any()
            ? "More emitters, a deeper mulch or a zone of their own help."
            : "Waterings on the allowed days alone are too far apart for what their soil holds: a"
                + " deep mulch, and a can of water or a tank of your own for the days between, help.";
    return Finding.of(
        "season.not-kept",
        Severity.SHORTFALL,
        lost.stream().map(PlantHistory::plantId).collect(Collectors.joining(", ")),
        "No setting of the timer keeps these above their limit in {0} of the years. The card gives"
            + " them nearly all that helps; the worst off, "
            + worst.plantId()
            + ", still is stressed on {1} of a mean year. "
            + help,
        new Quantity(settings.keptShare(), Kind.SHARE),
        new Quantity(worst.meanStressedDays() * 86_400, Kind.DAYS));
  }
}
