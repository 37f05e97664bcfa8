package org.grovewright.start;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.grovewright.model.Point;

/** Writes where the land is and how it lies. */
final class LandLines {
  private final Answers answers;
  private final Sheet sheet;

  LandLines(Sheet sheet) {
    this.sheet = sheet;
    this.answers = sheet.answers();
  }

  /**
   * The land as the answers have it.
   *
   * @param corners its corners, metres; empty where they could not be read
   * @param northDeg compass bearing of the upward axis, degrees
   * @param latitudeDeg latitude, degrees
   */
  record Land(List<Point> corners, double northDeg, double latitudeDeg) {}

  /** Writes the units and the site. */
  Land write(UsualClimates climates) {
    Optional<String> name = answers.text("name");
    if (name.isEmpty()) {
      answers.problem("name", "needed");
    }
    Optional<String> latitude = answers.number("latitude", -66, 66);
    Optional<String> longitude = answers.number("longitude", -180, 180);
    Optional<String> climate = answers.text("climate").filter(climates.byKey()::containsKey);
    double usualLatitude =
        climate.map(key -> climates.byKey().get(key).latitudeDeg()).orElse(40.0)
            * (answers.text("half").equals(Optional.of("south")) ? -1 : 1);
    Optional<String> elevation =
        answers.number("elevation", sheet.us() ? -1400 : -430, sheet.us() ? 16000 : 5000);
    sheet.add("units: " + (sheet.us() ? "us" : "metric"));
    sheet.add("site:");
    sheet.add("  name: " + Texts.quoted(name.orElse("")));
    sheet.add(
        "  latitude: "
            + latitude.orElseGet(
                () -> sheet.assume("latitude", "latitude", Texts.number(usualLatitude))));
    sheet.add(
        "  longitude: " + longitude.orElseGet(() -> sheet.assume("longitude", "longitude", "0")));
    sheet.add(
        "  elevation: "
            + elevation
                .map(value -> value + sheet.length())
                .orElseGet(
                    () -> sheet.assume("elevation", "elevation", sheet.us() ? "150 ft" : "50 m")));
    List<Point> corners = outline();
    Optional<String> bearing = answers.number("north", -360, 360);
    sheet.add(
        "  north: "
            + bearing
                .map(v -> v + " deg")
                .orElseGet(() -> sheet.assume("north", "north", "0 deg")));
    slope(corners);
    return new Land(
        corners,
        bearing.map(Double::parseDouble).orElse(0.0),
        latitude.map(Double::parseDouble).orElse(usualLatitude));
  }

  private List<Point> outline() {
    List<List<String>> places;
    if (answers.text("shape").equals(Optional.of("corners"))) {
      double far = sheet.us() ? 16000 : 5000;
      places = answers.pairs("corners", -far, far);
      if (places.size() < 3 && answers.problems().isEmpty()) {
        answers.problem("corners", "threeCorners");
      }
    } else {
      Optional<String> width =
          answers.needed("width", sheet.us() ? 6 : 2, sheet.us() ? 6500 : 2000);
      Optional<String> depth =
          answers.needed("length", sheet.us() ? 6 : 2, sheet.us() ? 6500 : 2000);
      if (width.isEmpty() || depth.isEmpty()) {
        return List.of();
      }
      places =
          List.of(
              List.of("0", "0"),
              List.of(width.get(), "0"),
              List.of(width.get(), depth.get()),
              List.of("0", depth.get()));
    }
    List<Point> corners =
        places.stream()
            .map(p -> new Point(sheet.metres(p.get(0)), sheet.metres(p.get(1))))
            .toList();
    sheet.add("  boundary:");
    for (List<String> place : places) {
      sheet.add("    - " + sheet.place(place.get(0), place.get(1)));
    }
    return corners;
  }

  private void slope(List<Point> corners) {
    Optional<String> higher =
        answers.choice("slope", Set.of("level", "top", "bottom", "left", "right"));
    if (higher.isEmpty()) {
      sheet.note(new Remark("slope", "level", List.of()));
      return;
    }
    if (higher.get().equals("level") || corners.isEmpty()) {
      return;
    }
    Optional<String> rise = answers.needed("slopeRise", 0, sheet.us() ? 600 : 200);
    Optional<String> run = answers.needed("slopeRun", sheet.us() ? 3 : 1, sheet.us() ? 6500 : 2000);
    if (rise.isEmpty() || run.isEmpty()) {
      return;
    }
    double slope = Double.parseDouble(rise.get()) / Double.parseDouble(run.get());
    sheet.add("  heights:");
    double minX = corners.stream().mapToDouble(Point::x).min().orElse(0);
    double maxX = corners.stream().mapToDouble(Point::x).max().orElse(0);
    double minY = corners.stream().mapToDouble(Point::y).min().orElse(0);
    double maxY = corners.stream().mapToDouble(Point::y).max().orElse(0);
    for (double[] at : new double[][] {{minX, minY}, {maxX, minY}, {maxX, maxY}, {minX, maxY}}) {
      double along =
          switch (higher.get()) {
            case "top" -> at[1] - minY;
            case "bottom" -> maxY - at[1];
            case "right" -> at[0] - minX;
            default -> maxX - at[0];
          };
      sheet.add(
          "    - {at: "
              + sheet.place(Texts.length(sheet.own(at[0])), Texts.length(sheet.own(at[1])))
              + ", height: "
              + Texts.length(sheet.own(along * slope))
              + sheet.length()
              + "}");
    }
  }
}
