package org.grovewright.start;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.grovewright.model.Point;

/** Writes where the water comes from. */
final class SupplyLines {
  private final Answers answers;
  private final Sheet sheet;

  SupplyLines(Sheet sheet) {
    this.sheet = sheet;
    this.answers = sheet.answers();
  }

  void write(List<Point> corners) {
    Map<String, String> kinds =
        Map.of("house-tap", "house tap", "well-pump", "well pump", "gravity-tank", "gravity tank");
    Optional<String> kind = answers.choice("supply", kinds.keySet());
    if (kind.isEmpty() && answers.text("supply").isEmpty()) {
      answers.problem("supply", "choose");
    }
    double far = sheet.us() ? 16000 : 5000;
    Optional<String> x = answers.number("tapX", -far, far);
    Optional<String> y = answers.number("tapY", -far, far);
    sheet.add("supply:");
    sheet.add("  kind: " + kinds.get(kind.orElse("house-tap")));
    if (x.isPresent() && y.isPresent()) {
      sheet.add("  at: " + sheet.place(x.get(), y.get()));
    } else {
      if (x.isPresent() != y.isPresent() && answers.problems().isEmpty()) {
        answers.problem(x.isPresent() ? "tapY" : "tapX", "needed");
      }
      Point corner = corners.isEmpty() ? new Point(0, 0) : corners.get(0);
      sheet.add(
          "  at: "
              + sheet.assume(
                  "tapX",
                  "tap",
                  sheet.place(
                      Texts.length(sheet.own(corner.x())), Texts.length(sheet.own(corner.y())))));
    }
    List<String> days = answers.words("waterDays", WorkLines.WEEK);
    if (!days.isEmpty() && days.size() < WorkLines.WEEK.size()) {
      sheet.add(
          "  days: ["
              + WorkLines.WEEK.stream().filter(days::contains).collect(Collectors.joining(", "))
              + "]");
    }
    if (kind.equals(Optional.of("gravity-tank"))) {
      Optional<String> level =
          answers.number("tankLevel", sheet.us() ? 0.2 : 0.05, sheet.us() ? 190 : 60);
      Optional<String> volume = answers.number("tankVolume", 1, sheet.us() ? 260000 : 1e6);
      sheet.add(
          "  outlet_height: " + sheet.assume("tankLevel", "outlet", sheet.us() ? "1 ft" : "0.3 m"));
      sheet.add(
          "  tank_level: "
              + level
                  .map(v -> v + sheet.length())
                  .orElseGet(
                      () -> sheet.assume("tankLevel", "tankLevel", sheet.us() ? "5 ft" : "1.5 m")));
      sheet.add(
          "  tank_volume: "
              + volume
                  .map(v -> v + (sheet.us() ? " gal" : " L"))
                  .orElseGet(
                      () ->
                          sheet.assume(
                              "tankVolume", "tankVolume", sheet.us() ? "275 gal" : "1000 L")));
      return;
    }
    sheet.add("  outlet_height: " + (sheet.us() ? "1.5 ft" : "0.5 m") + "   # assumed");
    Optional<String> pressure =
        answers.number("pressure", sheet.us() ? 1 : 0.05, sheet.us() ? 200 : 14);
    sheet.add(
        "  static_pressure: "
            + pressure
                .map(v -> v + (sheet.us() ? " psi" : " bar"))
                .orElseGet(
                    () -> sheet.assume("pressure", "pressure", sheet.us() ? "40 psi" : "2.5 bar")));
    Optional<String> volume =
        answers.number("bucketVolume", sheet.us() ? 0.1 : 0.5, sheet.us() ? 500 : 2000);
    Optional<String> seconds = answers.number("bucketSeconds", 1, 3600);
    if (volume.isPresent() && seconds.isPresent()) {
      sheet.add("  flow_tests:");
      sheet.add("    - " + flowTest(volume.get(), seconds.get()));
      return;
    }
    if (volume.isPresent() != seconds.isPresent()
        && answers.problems().stream().noneMatch(p -> p.field().startsWith("bucket"))) {
      answers.problem(volume.isPresent() ? "bucketSeconds" : "bucketVolume", "needed");
    }
    sheet.note(
        new Remark("bucketSeconds", "bucket", List.of(sheet.us() ? "4 gal/min" : "15 L/min")));
    sheet.add("  flow_tests:   # assumed");
    sheet.add("    - " + (sheet.us() ? flowTest("4", "60") : flowTest("10", "40")));
  }

  private String flowTest(String volume, String seconds) {
    return String.format(
        Locale.ROOT,
        "{volume: %s %s, time: %s s, pressure: 0 %s}",
        volume,
        sheet.us() ? "gal" : "L",
        seconds,
        sheet.us() ? "psi" : "bar");
  }
}
