package org.grovewright.start;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Point;
import org.grovewright.start.FirstPlan.DraftRow;

/** Writes the rows with their plants, and when work may begin. */
final class PlantLines {
  private static final int MOST_PLANTS = 400;

  private final Answers answers;
  private final Sheet sheet;
  private final Catalogue catalogue;
  private final List<DraftRow> draftRows = new ArrayList<>();

  PlantLines(Sheet sheet, Catalogue catalogue) {
    this.sheet = sheet;
    this.answers = sheet.answers();
    this.catalogue = catalogue;
  }

  List<DraftRow> write(LandLines.Land land, LocalDate today) {
    List<Answers.Wish> wishes = answers.wishes("plants", catalogue.species().keySet(), MOST_PLANTS);
    Optional<String> companion =
        answers.choice(
            "companion",
            catalogue.species().values().stream()
                .filter(species -> species.role() != Species.Role.MAIN)
                .map(Species::key)
                .collect(Collectors.toSet()));
    LocalDate day =
        answers
            .date("planting")
            .orElseGet(
                () -> {
                  LocalDate usual = today.plusDays(45);
                  sheet.note(new Remark("planting", "planting", List.of(usual.toString())));
                  return usual;
                });
    LocalDate first = day.isBefore(today.plusDays(14)) ? day.minusDays(14) : today;
    sheet.add("start: " + first);
    if (wishes.isEmpty()) {
      if (answers.problems().stream().noneMatch(p -> p.field().startsWith("plants"))) {
        answers.problem("plants", "nothing");
      }
      return List.of();
    }
    List<Species> wanted = new ArrayList<>();
    for (Answers.Wish wish : wishes) {
      for (int i = 0; i < wish.count(); i++) {
        wanted.add(catalogue.species().get(wish.species()));
      }
    }
    if (wanted.size() > MOST_PLANTS) {
      answers.problem("plants", "tooMany", Integer.toString(MOST_PLANTS));
      return List.of();
    }
    if (land.corners().size() < 3) {
      return List.of();
    }
    List<RowProposal.ProposedRow> rows =
        RowProposal.of(land.corners(), wanted, land.northDeg(), land.latitudeDeg());
    int placed = rows.stream().mapToInt(row -> row.plants().size()).sum();
    if (placed < wanted.size()) {
      answers.problem(
          "plants", "noRoom", Integer.toString(placed), Integer.toString(wanted.size()));
      return List.of();
    }
    sheet.add("rows:");
    for (int i = 0; i < rows.size(); i++) {
      row(rows.get(i), rowName(i), day, companion);
    }
    sheet.note(new Remark("plants", "rows", List.of(Integer.toString(rows.size()))));
    sheet.note(new Remark("plants", "container", List.of(sheet.us() ? "5 gal" : "20 L")));
    return draftRows;
  }

  private void row(
      RowProposal.ProposedRow row, String id, LocalDate day, Optional<String> companion) {
    sheet.add("  - id: " + id);
    sheet.add("    from: " + point(row.from()));
    sheet.add("    to: " + point(row.to()));
    sheet.add("    planted: " + day);
    sheet.add("    container: " + (sheet.us() ? "5 gal" : "20 L") + "   # assumed");
    sheet.add("    plants:");
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (RowProposal.Placed plant : row.plants()) {
      counts.merge(plant.species().key(), 1, Integer::sum);
      sheet.add(
          "      - {species: "
              + plant.species().key()
              + ", at: "
              + Texts.length(Math.floor(sheet.own(plant.stationM()) * 100) / 100)
              + sheet.length()
              + "}");
    }
    if (companion.isPresent() && row.plants().size() > 1) {
      sheet.add("    companions:");
      sheet.add(
          "      - {species: "
              + companion.get()
              + ", between: each, count: 1, container: "
              + (sheet.us() ? "1 gal" : "2 L")
              + "}");
    }
    draftRows.add(new DraftRow(id, counts));
  }

  private String point(Point point) {
    return sheet.place(Texts.length(sheet.own(point.x())), Texts.length(sheet.own(point.y())));
  }

  private static String rowName(int index) {
    String letter = String.valueOf((char) ('A' + index % 26));
    return index < 26 ? letter : rowName(index / 26 - 1) + letter;
  }
}
