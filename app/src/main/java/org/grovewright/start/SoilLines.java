package org.grovewright.start;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.grovewright.catalogue.SoilTexture;

/** Writes what is known of the soil. */
final class SoilLines {
  private final Answers answers;
  private final Sheet sheet;

  SoilLines(Sheet sheet) {
    this.sheet = sheet;
    this.answers = sheet.answers();
  }

  void write(Map<String, SoilTexture> textures) {
    sheet.add("soil:");
    Optional<String> layers = jar();
    Optional<String> texture = answers.choice("texture", textures.keySet()).or(() -> layers);
    sheet.add("  texture: " + texture.orElseGet(() -> sheet.assume("texture", "texture", "loam")));
    Optional<String> depth = answers.number("depth", sheet.us() ? 4 : 10, sheet.us() ? 390 : 1000);
    sheet.add(
        "  depth: "
            + depth
                .map(value -> value + (sheet.us() ? " in" : " cm"))
                .orElseGet(() -> sheet.assume("depth", "depth", sheet.us() ? "40 in" : "100 cm")));
    Optional<String> drop = answers.number("holeDrop", 0.1, sheet.us() ? 78 : 200);
    Optional<String> hours = answers.number("holeHours", 0.01, 168);
    if (drop.isPresent() != hours.isPresent() && answers.problems().isEmpty()) {
      answers.problem(drop.isPresent() ? "holeHours" : "holeDrop", "needed");
    } else if (drop.isPresent() && hours.isPresent()) {
      sheet.add(
          "  drainage_test: {drop: "
              + drop.get()
              + (sheet.us() ? " in" : " cm")
              + ", time: "
              + hours.get()
              + " h}");
    } else {
      sheet.note(new Remark("holeDrop", "drains", List.of()));
    }
    answers.number("ph", 3, 11).ifPresent(ph -> sheet.add("  ph: " + ph));
  }

  private Optional<String> jar() {
    Optional<String> sand = answers.number("sandLayer", 0, 1000);
    Optional<String> silt = answers.number("siltLayer", 0, 1000);
    Optional<String> clay = answers.number("clayLayer", 0, 1000);
    if (sand.isEmpty() && silt.isEmpty() && clay.isEmpty()) {
      return Optional.empty();
    }
    double total =
        Stream.of(sand, silt, clay)
            .mapToDouble(layer -> layer.map(Double::parseDouble).orElse(0.0))
            .sum();
    if (total <= 0) {
      answers.problem("sandLayer", "layers");
      return Optional.empty();
    }
    return Optional.of(
        TextureTriangle.classOf(
            sand.map(Double::parseDouble).orElse(0.0),
            silt.map(Double::parseDouble).orElse(0.0),
            clay.map(Double::parseDouble).orElse(0.0)));
  }
}
