package org.grovewright.start;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.description.Problem;
import org.grovewright.model.Point;

/** Writes the first description of a grove from the answers of a form. */
public final class FirstPlan {
  private static final double METRES_PER_FOOT = 0.3048;
  private static final int MOST_PLANTS = 400;
  private static final Set<String> DAYS = Set.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");
  private static final List<String> WEEK = List.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");

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
      plants = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(plants));
    }
  }

  /**
   * Writes a description.
   *
   * @param answers the form: texts as typed, in the units that {@code units} names; docs/api.md
   *     lists the fields
   * @param today first day on which work may be done, unless planting is to be earlier
   */
  public Draft draft(JsonNode answers, LocalDate today) {
    Form form = new Form(new Answers(answers));
    List<String> lines = form.lines(today);
    List<Remark> problems = form.answers.problems();
    if (problems.isEmpty()) {
      String text = String.join("\n", lines) + "\n";
      try {
        reader.describe(text, "description");
        return new Draft(Optional.of(text), List.of(), form.assumptions, form.draftRows);
      } catch (DescriptionException e) {
        for (Problem problem : e.problems()) {
          form.answers.problem(fieldOf(problem.path()), "other", problem.message());
        }
      }
    }
    return new Draft(Optional.empty(), problems, form.assumptions, form.draftRows);
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

  /** One form being turned into lines. */
  private final class Form {
    private final Answers answers;
    private final List<Remark> assumptions = new ArrayList<>();
    private final List<DraftRow> draftRows = new ArrayList<>();
    private final boolean us;
    private final String length;

    Form(Answers answers) {
      this.answers = answers;
      this.us = answers.choice("units", Set.of("metric", "us")).orElse("metric").equals("us");
      this.length = us ? " ft" : " m";
    }

    List<String> lines(LocalDate today) {
      List<String> lines = new ArrayList<>();
      lines.add(
          "# Written from a first set of answers. What was assumed is marked so: replace it by");
      lines.add("# what you measure.");
      double latitude = site(lines);
      soil(lines);
      climate(lines, latitude);
      supply(lines);
      planting(lines, latitude, today);
      rest(lines);
      return lines;
    }

    /** A value that was taken because it was not said. */
    private String assume(String field, String code, String value) {
      assumptions.add(new Remark(field, code, List.of(value)));
      return value + "   # assumed";
    }

    private double feet(double metres) {
      return us ? metres / METRES_PER_FOOT : metres;
    }

    private double metres(String value) {
      return Double.parseDouble(value) * (us ? METRES_PER_FOOT : 1);
    }

    private List<Point> corners = List.of();
    private double north;

    private double site(List<String> lines) {
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
          answers.number("elevation", us ? -1400 : -430, us ? 16000 : 5000);
      lines.add("units: " + (us ? "us" : "metric"));
      lines.add("site:");
      lines.add("  name: " + Texts.quoted(name.orElse("")));
      lines.add(
          "  latitude: "
              + latitude.orElseGet(
                  () -> assume("latitude", "latitude", Texts.number(usualLatitude))));
      lines.add("  longitude: " + longitude.orElseGet(() -> assume("longitude", "longitude", "0")));
      lines.add(
          "  elevation: "
              + elevation
                  .map(value -> value + length)
                  .orElseGet(() -> assume("elevation", "elevation", us ? "150 ft" : "50 m")));
      outline(lines);
      Optional<String> bearing = answers.number("north", -360, 360);
      north = bearing.map(Double::parseDouble).orElse(0.0);
      lines.add(
          "  north: "
              + bearing.map(v -> v + " deg").orElseGet(() -> assume("north", "north", "0 deg")));
      slope(lines);
      return latitude.map(Double::parseDouble).orElse(usualLatitude);
    }

    private void outline(List<String> lines) {
      List<List<String>> places;
      if (answers.text("shape").equals(Optional.of("corners"))) {
        double far = us ? 16000 : 5000;
        places = answers.pairs("corners", -far, far);
        if (places.size() < 3 && answers.problems().isEmpty()) {
          answers.problem("corners", "threeCorners");
        }
      } else {
        Optional<String> width = answers.needed("width", us ? 6 : 2, us ? 6500 : 2000);
        Optional<String> depth = answers.needed("length", us ? 6 : 2, us ? 6500 : 2000);
        if (width.isEmpty() || depth.isEmpty()) {
          return;
        }
        places =
            List.of(
                List.of("0", "0"),
                List.of(width.get(), "0"),
                List.of(width.get(), depth.get()),
                List.of("0", depth.get()));
      }
      corners = places.stream().map(p -> new Point(metres(p.get(0)), metres(p.get(1)))).toList();
      lines.add("  boundary:");
      for (List<String> place : places) {
        lines.add("    - " + place(place.get(0), place.get(1)));
      }
    }

    private String place(String x, String y) {
      return "[" + x + length + ", " + y + length + "]";
    }

    private void slope(List<String> lines) {
      Optional<String> higher =
          answers.choice("slope", Set.of("level", "top", "bottom", "left", "right"));
      if (higher.isEmpty()) {
        assumptions.add(new Remark("slope", "level", List.of()));
        return;
      }
      if (higher.get().equals("level") || corners.isEmpty()) {
        return;
      }
      Optional<String> rise = answers.needed("slopeRise", 0, us ? 600 : 200);
      Optional<String> run = answers.needed("slopeRun", us ? 3 : 1, us ? 6500 : 2000);
      if (rise.isEmpty() || run.isEmpty()) {
        return;
      }
      double slope = Double.parseDouble(rise.get()) / Double.parseDouble(run.get());
      lines.add("  heights:");
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
        lines.add(
            "    - {at: "
                + place(Texts.length(feet(at[0])), Texts.length(feet(at[1])))
                + ", height: "
                + Texts.length(feet(along * slope))
                + length
                + "}");
      }
    }

    private void soil(List<String> lines) {
      lines.add("soil:");
      Optional<String> layers = jar();
      Optional<String> texture =
          answers.choice("texture", catalogue.textures().keySet()).or(() -> layers);
      lines.add("  texture: " + texture.orElseGet(() -> assume("texture", "texture", "loam")));
      Optional<String> depth = answers.number("depth", us ? 4 : 10, us ? 390 : 1000);
      lines.add(
          "  depth: "
              + depth
                  .map(value -> value + (us ? " in" : " cm"))
                  .orElseGet(() -> assume("depth", "depth", us ? "40 in" : "100 cm")));
      Optional<String> drop = answers.number("holeDrop", 0.1, us ? 78 : 200);
      Optional<String> hours = answers.number("holeHours", 0.01, 168);
      if (drop.isPresent() != hours.isPresent() && answers.problems().isEmpty()) {
        answers.problem(drop.isPresent() ? "holeHours" : "holeDrop", "needed");
      } else if (drop.isPresent() && hours.isPresent()) {
        lines.add(
            "  drainage_test: {drop: "
                + drop.get()
                + (us ? " in" : " cm")
                + ", time: "
                + hours.get()
                + " h}");
      } else {
        assumptions.add(new Remark("holeDrop", "drains", List.of()));
      }
      answers.number("ph", 3, 11).ifPresent(ph -> lines.add("  ph: " + ph));
    }

    private Optional<String> jar() {
      Optional<String> sand = answers.number("sandLayer", 0, 1000);
      Optional<String> silt = answers.number("siltLayer", 0, 1000);
      Optional<String> clay = answers.number("clayLayer", 0, 1000);
      if (sand.isEmpty() && silt.isEmpty() && clay.isEmpty()) {
        return Optional.empty();
      }
      double total =
          java.util.stream.Stream.of(sand, silt, clay)
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

    private void climate(List<String> lines, double latitude) {
      lines.add("climate:");
      String degrees = us ? " F" : " °C";
      double[] range = us ? new double[] {-76, 140} : new double[] {-60, 60};
      boolean own = answers.text("climate").equals(Optional.of("months"));
      Optional<List<String>> tmin =
          own ? answers.months("tmin", range[0], range[1]) : Optional.empty();
      Optional<List<String>> tmax =
          own ? answers.months("tmax", range[0], range[1]) : Optional.empty();
      Optional<List<String>> rain =
          own ? answers.months("rain", 0, us ? 190 : 5000) : Optional.empty();
      if (own && tmin.isEmpty()) {
        answers.problem("tmin", "twelve");
      }
      if (own && tmax.isEmpty()) {
        answers.problem("tmax", "twelve");
      }
      if (own) {
        lines.add("  source: as given by the owner");
        lines.add("  months:");
        tmin.ifPresent(v -> lines.add("    tmin: " + String.join(" ", v) + degrees));
        tmax.ifPresent(v -> lines.add("    tmax: " + String.join(" ", v) + degrees));
        rain.ifPresentOrElse(
            v -> lines.add("    rain: " + String.join(" ", v) + (us ? " in" : " mm")),
            () -> assumptions.add(new Remark("rain", "noRain", List.of())));
        return;
      }
      Optional<String> chosen = answers.choice("climate", climates.byKey().keySet());
      UsualClimates.UsualClimate climate =
          chosen.map(climates.byKey()::get).orElseGet(() -> climates.near(latitude));
      assumptions.add(new Remark("climate", "climate", List.of(climate.key())));
      lines.add("  source: assumed, usual in a region of this kind (" + climate.key() + ")");
      lines.add("  months:   # assumed");
      lines.add("    tmin: " + months(climate.tmin(), latitude) + " °C");
      lines.add("    tmax: " + months(climate.tmax(), latitude) + " °C");
      lines.add("    rain: " + months(climate.rain(), latitude) + " mm");
    }

    private static String months(List<String> values, double latitude) {
      return String.join(" ", UsualClimates.turned(values, latitude));
    }

    private void supply(List<String> lines) {
      Map<String, String> kinds =
          Map.of(
              "house-tap", "house tap", "well-pump", "well pump", "gravity-tank", "gravity tank");
      Optional<String> kind = answers.choice("supply", kinds.keySet());
      if (kind.isEmpty() && answers.text("supply").isEmpty()) {
        answers.problem("supply", "choose");
      }
      double far = us ? 16000 : 5000;
      Optional<String> x = answers.number("tapX", -far, far);
      Optional<String> y = answers.number("tapY", -far, far);
      lines.add("supply:");
      lines.add("  kind: " + kinds.get(kind.orElse("house-tap")));
      if (x.isPresent() && y.isPresent()) {
        lines.add("  at: " + place(x.get(), y.get()));
      } else {
        if (x.isPresent() != y.isPresent() && answers.problems().isEmpty()) {
          answers.problem(x.isPresent() ? "tapY" : "tapX", "needed");
        }
        Point corner = corners.isEmpty() ? new Point(0, 0) : corners.get(0);
        lines.add(
            "  at: "
                + assume(
                    "tapX",
                    "tap",
                    place(Texts.length(feet(corner.x())), Texts.length(feet(corner.y())))));
      }
      if (kind.equals(Optional.of("gravity-tank"))) {
        Optional<String> level = answers.number("tankLevel", us ? 0.2 : 0.05, us ? 190 : 60);
        Optional<String> volume = answers.number("tankVolume", 1, us ? 260000 : 1e6);
        lines.add("  outlet_height: " + assume("tankLevel", "outlet", us ? "1 ft" : "0.3 m"));
        lines.add(
            "  tank_level: "
                + level
                    .map(v -> v + length)
                    .orElseGet(() -> assume("tankLevel", "tankLevel", us ? "5 ft" : "1.5 m")));
        lines.add(
            "  tank_volume: "
                + volume
                    .map(v -> v + (us ? " gal" : " L"))
                    .orElseGet(
                        () -> assume("tankVolume", "tankVolume", us ? "275 gal" : "1000 L")));
        return;
      }
      lines.add("  outlet_height: " + (us ? "1.5 ft" : "0.5 m") + "   # assumed");
      Optional<String> pressure = answers.number("pressure", us ? 1 : 0.05, us ? 200 : 14);
      lines.add(
          "  static_pressure: "
              + pressure
                  .map(v -> v + (us ? " psi" : " bar"))
                  .orElseGet(() -> assume("pressure", "pressure", us ? "40 psi" : "2.5 bar")));
      Optional<String> volume = answers.number("bucketVolume", us ? 0.1 : 0.5, us ? 500 : 2000);
      Optional<String> seconds = answers.number("bucketSeconds", 1, 3600);
      if (volume.isPresent() && seconds.isPresent()) {
        lines.add("  flow_tests:");
        lines.add("    - " + flowTest(volume.get(), seconds.get()));
        return;
      }
      if (volume.isPresent() != seconds.isPresent()
          && answers.problems().stream().noneMatch(p -> p.field().startsWith("bucket"))) {
        answers.problem(volume.isPresent() ? "bucketSeconds" : "bucketVolume", "needed");
      }
      assumptions.add(
          new Remark("bucketSeconds", "bucket", List.of(us ? "4 gal/min" : "15 L/min")));
      lines.add("  flow_tests:   # assumed");
      lines.add("    - " + (us ? flowTest("4", "60") : flowTest("10", "40")));
    }

    private String flowTest(String volume, String seconds) {
      return String.format(
          Locale.ROOT,
          "{volume: %s %s, time: %s s, pressure: 0 %s}",
          volume,
          us ? "gal" : "L",
          seconds,
          us ? "psi" : "bar");
    }

    private void planting(List<String> lines, double latitude, LocalDate today) {
      List<Answers.Wish> wishes =
          answers.wishes("plants", catalogue.species().keySet(), MOST_PLANTS);
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
                    assumptions.add(new Remark("planting", "planting", List.of(usual.toString())));
                    return usual;
                  });
      LocalDate first = day.isBefore(today.plusDays(14)) ? day.minusDays(14) : today;
      lines.add("start: " + first);
      if (wishes.isEmpty()) {
        if (answers.problems().stream().noneMatch(p -> p.field().startsWith("plants"))) {
          answers.problem("plants", "nothing");
        }
        return;
      }
      List<Species> wanted = new ArrayList<>();
      for (Answers.Wish wish : wishes) {
        for (int i = 0; i < wish.count(); i++) {
          wanted.add(catalogue.species().get(wish.species()));
        }
      }
      if (wanted.size() > MOST_PLANTS) {
        answers.problem("plants", "tooMany", Integer.toString(MOST_PLANTS));
        return;
      }
      if (corners.size() < 3) {
        return;
      }
      List<RowProposal.ProposedRow> rows = RowProposal.of(corners, wanted, north, latitude);
      int placed = rows.stream().mapToInt(row -> row.plants().size()).sum();
      if (placed < wanted.size()) {
        answers.problem(
            "plants", "noRoom", Integer.toString(placed), Integer.toString(wanted.size()));
        return;
      }
      lines.add("rows:");
      for (int i = 0; i < rows.size(); i++) {
        row(lines, rows.get(i), rowName(i), day, companion);
      }
      assumptions.add(new Remark("plants", "rows", List.of(Integer.toString(rows.size()))));
      assumptions.add(new Remark("plants", "container", List.of(us ? "5 gal" : "20 L")));
    }

    private void row(
        List<String> lines,
        RowProposal.ProposedRow row,
        String id,
        LocalDate day,
        Optional<String> companion) {
      lines.add("  - id: " + id);
      lines.add("    from: " + point(row.from()));
      lines.add("    to: " + point(row.to()));
      lines.add("    planted: " + day);
      lines.add("    container: " + (us ? "5 gal" : "20 L") + "   # assumed");
      lines.add("    plants:");
      Map<String, Integer> counts = new LinkedHashMap<>();
      for (RowProposal.Placed plant : row.plants()) {
        counts.merge(plant.species().key(), 1, Integer::sum);
        lines.add(
            "      - {species: "
                + plant.species().key()
                + ", at: "
                + Texts.length(Math.floor(feet(plant.stationM()) * 100) / 100)
                + length
                + "}");
      }
      if (companion.isPresent() && row.plants().size() > 1) {
        lines.add("    companions:");
        lines.add(
            "      - {species: "
                + companion.get()
                + ", between: each, count: 1, container: "
                + (us ? "1 gal" : "2 L")
                + "}");
      }
      draftRows.add(new DraftRow(id, counts));
    }

    private String point(Point point) {
      return place(Texts.length(feet(point.x())), Texts.length(feet(point.y())));
    }

    private static String rowName(int index) {
      String letter = String.valueOf((char) ('A' + index % 26));
      return index < 26 ? letter : rowName(index / 26 - 1) + letter;
    }

    private void rest(List<String> lines) {
      lines.add("watering:");
      lines.add("  propose: true");
      Optional<String> currency = answers.text("currency");
      if (currency.isPresent()) {
        if (Currency.getAvailableCurrencies().stream()
            .noneMatch(c -> c.getCurrencyCode().equals(currency.get()))) {
          answers.problem("currency", "choose");
        }
        lines.add("prices:");
        lines.add("  currency: " + Texts.quoted(currency.get()));
        if (!currency.get().equals("USD")) {
          Optional<String> times = answers.number("times", 0.0001, 1e6);
          lines.add("  typical_times: " + times.orElseGet(() -> assume("times", "times", "1")));
        }
      }
      Optional<String> people = answers.number("people", 1, 50);
      people
          .filter(number -> !number.matches("\\d+"))
          .ifPresent(number -> answers.problem("people", "wholeNumber"));
      List<String> days = answers.words("days", DAYS);
      String hours =
          answers.text("from").orElse("09:00") + "-" + answers.text("until").orElse("13:00");
      lines.add("crew:");
      lines.add("  people: " + people.orElseGet(() -> assume("people", "people", "1")));
      if (days.isEmpty()) {
        assumptions.add(new Remark("days", "days", List.of(hours)));
        days = List.of("Sat");
      }
      List<String> worked = days;
      lines.add(
          "  hours: {"
              + WEEK.stream()
                  .filter(worked::contains)
                  .map(day -> day + ": " + hours)
                  .collect(Collectors.joining(", "))
              + "}");
    }
  }
}
