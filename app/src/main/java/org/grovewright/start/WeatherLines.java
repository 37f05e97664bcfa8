package org.grovewright.start;

import java.util.List;
import java.util.Optional;

/** Writes the means of the months. */
final class WeatherLines {
  private final Answers answers;
  private final Sheet sheet;
  private final UsualClimates climates;

  WeatherLines(Sheet sheet, UsualClimates climates) {
    this.sheet = sheet;
    this.answers = sheet.answers();
    this.climates = climates;
  }

  void write(double latitude) {
    sheet.add("climate:");
    String degrees = sheet.us() ? " F" : " °C";
    double[] range = sheet.us() ? new double[] {-76, 140} : new double[] {-60, 60};
    boolean own = answers.text("climate").equals(Optional.of("months"));
    Optional<List<String>> tmin =
        own ? answers.months("tmin", range[0], range[1]) : Optional.empty();
    Optional<List<String>> tmax =
        own ? answers.months("tmax", range[0], range[1]) : Optional.empty();
    Optional<List<String>> rain =
        own ? answers.months("rain", 0, sheet.us() ? 190 : 5000) : Optional.empty();
    if (own && tmin.isEmpty()) {
      answers.problem("tmin", "twelve");
    }
    if (own && tmax.isEmpty()) {
      answers.problem("tmax", "twelve");
    }
    if (own) {
      sheet.add("  source: as given by the owner");
      sheet.add("  months:");
      tmin.ifPresent(v -> sheet.add("    tmin: " + String.join(" ", v) + degrees));
      tmax.ifPresent(v -> sheet.add("    tmax: " + String.join(" ", v) + degrees));
      rain.ifPresentOrElse(
          v -> sheet.add("    rain: " + String.join(" ", v) + (sheet.us() ? " in" : " mm")),
          () -> sheet.note(new Remark("rain", "noRain", List.of())));
      return;
    }
    Optional<String> chosen = answers.choice("climate", climates.byKey().keySet());
    UsualClimates.UsualClimate climate =
        chosen.map(climates.byKey()::get).orElseGet(() -> climates.near(latitude));
    sheet.note(new Remark("climate", "climate", List.of(climate.key())));
    sheet.add("  source: assumed, usual in a region of this kind (" + climate.key() + ")");
    sheet.add("  months:   # assumed");
    sheet.add("    tmin: " + months(climate.tmin(), latitude) + " °C");
    sheet.add("    tmax: " + months(climate.tmax(), latitude) + " °C");
    sheet.add("    rain: " + months(climate.rain(), latitude) + " mm");
  }

  private static String months(List<String> values, double latitude) {
    return String.join(" ", UsualClimates.turned(values, latitude));
  }
}
