package org.grovewright.start;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.Problem;
import org.grovewright.texts.Language;

/** Writes the first description of a grove from the answers of a form. */
public final class FirstPlan {
  private final Catalogue catalogue;
  private final DescriptionReader reader;
  private final UsualClimates climates = UsualClimates.load();

  /**
   * A writer.
   *
   * @param catalogue knows the plants
   * @param reader reads the description that was written, to be sure of it
   */
  public FirstPlan(Catalogue catalogue, DescriptionReader reader) {
    this.catalogue = catalogue;
    this.reader = reader;
  }

  /**
   * What came of the answers.
   *
   * @param description the description; empty if there are problems
   * @param problems what is wrong, by the fields of the form in their order
   * @param assumptions what was taken because it was not said
   * @param rows the proposed rows, for a picture
   */
  public record Draft(
      Optional<String> description,
      List<Remark> problems,
      List<Remark> assumptions,
      List<DraftRow> rows) {
    /** Copies the lists. */
    public Draft {
      problems = List.copyOf(problems);
      assumptions = List.copyOf(assumptions);
      rows = List.copyOf(rows);
    }
  }

  /**
   * A row of the proposal.
   *
   * @param id its name
   * @param plants the names of its kinds of plants with their numbers, in order along it
   */
  public record DraftRow(String id, Map<String, Integer> plants) {
    /** Copies the plants in their order. */
    public DraftRow {
      plants = Collections.unmodifiableMap(new LinkedHashMap<>(plants));
    }
  }

  /**
   * Writes a description.
   *
   * @param answers the form: texts as typed, in the units that {@code units} names; docs/api.md
   *     lists the fields
   * @param today first day on which work may be done, unless planting is to be earlier
   * @param language language of what the reader of descriptions finds wrong
   */
  public Draft draft(JsonNode answers, LocalDate today, Language language) {
    Sheet sheet = new Sheet(new Answers(answers));
    sheet.add(
        "# Written from a first set of answers. What was assumed is marked so: replace it by");
    sheet.add("# what you measure.");
    LandLines.Land land = new LandLines(sheet).write(climates);
    new SoilLines(sheet).write(catalogue.textures());
    new WeatherLines(sheet, climates).write(land.latitudeDeg());
    new SupplyLines(sheet).write(land.corners());
    List<DraftRow> rows = new PlantLines(sheet, catalogue).write(land, today);
    new WorkLines(sheet).write();
    List<Remark> problems = sheet.answers().problems();
    if (problems.isEmpty()) {
      String text = sheet.text();
      try {
        reader.describe(text, "description");
        return new Draft(Optional.of(text), List.of(), sheet.assumptions(), rows);
      } catch (DescriptionException e) {
        for (Problem problem : e.problems()) {
          sheet
              .answers()
              .problem(fieldOf(problem.path()), "other", problem.sentence().whole().in(language));
        }
      }
    }
    return new Draft(Optional.empty(), problems, sheet.assumptions(), rows);
  }

  /** Fields by the part of the description they become; the longest beginning that fits holds. */
  private static final Map<String, String> FIELDS =
      Map.ofEntries(
          Map.entry("site.latitude", "latitude"),
          Map.entry("site.longitude", "longitude"),
          Map.entry("site.elevation", "elevation"),
          Map.entry("site.boundary", "corners"),
          Map.entry("site.heights", "slopeRise"),
          Map.entry("site", "name"),
          Map.entry("soil", "depth"),
          Map.entry("soil.drainage_test", "holeDrop"),
          Map.entry("climate", "climate"),
          Map.entry("supply", "supply"),
          Map.entry("supply.flow_tests", "bucketSeconds"),
          Map.entry("supply.static_pressure", "pressure"),
          Map.entry("supply.tank_level", "tankLevel"),
          Map.entry("supply.tank_volume", "tankVolume"),
          Map.entry("crew", "from"),
          Map.entry("prices", "currency"));

  private static String fieldOf(String path) {
    String best = "";
    String field = "plants";
    for (Map.Entry<String, String> entry : FIELDS.entrySet()) {
      if (path.startsWith(entry.getKey()) && entry.getKey().length() > best.length()) {
        best = entry.getKey();
        field = entry.getValue();
      }
    }
    return field;
  }
}
