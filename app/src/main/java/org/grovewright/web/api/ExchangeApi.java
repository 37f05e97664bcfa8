package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Species;
import org.grovewright.exchange.ExchangeException;
import org.grovewright.exchange.ExportFile;
import org.grovewright.exchange.GeoJson;
import org.grovewright.exchange.Gpx;
import org.grovewright.exchange.OnEarth;
import org.grovewright.exchange.Places;
import org.grovewright.exchange.Places.PlantPlace;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.formats.geo.LocalPlane;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.FigureBook;
import org.grovewright.sheets.Sheets;
import org.grovewright.store.SiteState;
import org.grovewright.texts.Language;
import org.grovewright.texts.Sentence;

/** Files to take away and to bring in, and the calendar's address. */
final class ExchangeApi {
  private static final double SAME_PLACE_M = 0.006;

  /** What is said of a plant from a file that does not say it. */
  private static final String USUAL_CONTAINER = "15 L";

  private final Desk desk;

  ExchangeApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/sites/{id}/export/{file}", this::export, Access.VIEWER);
    routes.post("/api/exchange/read", this::read, Access.SIGNED_IN);
    routes.post("/api/sites/{id}/import", this::operations, Access.OWNER);
    routes.post("/api/sites/{id}/feed", this::feed, Access.VIEWER);
    routes.delete("/api/sites/{id}/feed", this::endFeed, Access.VIEWER);
    routes.get("/calendar/{token}", this::calendar, Access.ANYBODY);
  }

  private void export(Context context) {
    if (context.pathParam("file").equals(JournalZip.FILE_NAME)) {
      journal(context);
      return;
    }
    ExportFile file =
        ExportFile.named(context.pathParam("file"))
            .orElseThrow(() -> new ApiException(404, "missing", "There is no such file."));
    SiteState state = desk.site(context);
    Plan plan = desk.groves().planNow(state.description());
    byte[] content =
        file.content(state.description(), plan, desk.voice(context, plan.grove()).units());
    context
        .header("Content-Security-Policy", alone())
        .header("Content-Disposition", disposition(context, state, file.fileName()))
        .contentType(file.type())
        .result(content);
  }

  private void journal(Context context) {
    SiteState state = desk.site(context);
    context
        .header("Content-Disposition", disposition(context, state, JournalZip.FILE_NAME))
        .contentType("application/zip");
    new JournalZip(desk.store(), state.id(), desk.voice(context).units())
        .write(context.outputStream());
  }

  private static String disposition(Context context, SiteState state, String fileName) {
    return (context.queryParam("show") == null ? "attachment" : "inline")
        + "; filename=\""
        + FigureBook.slug(state.name())
        + "-"
        + fileName
        + "\"";
  }

  /** A sheet stands alone: whatever is in it, it can neither fetch nor act as the reader. */
  private static String alone() {
    return "sandbox allow-scripts allow-modals; default-src 'none'; img-src data:; style-src"
        + " 'unsafe-inline'; script-src 'unsafe-inline'; frame-ancestors 'none'";
  }

  private record PlaceView(String name, String species, double x, double y) {}

  private static Places places(JsonNode body) {
    String format = Json.text(body, "format");
    String text = Json.text(body, "text");
    try {
      return switch (format) {
        case "geojson" -> GeoJson.read(text);
        case "gpx" -> Gpx.read(text);
        default -> throw ApiException.field("format", "'format' must be geojson or gpx.");
      };
    } catch (ExchangeException e) {
      throw ApiException.field("text", e.sentence());
    }
  }

  /** Lays a file out on a sketch of its own, whose point 0, 0 is the outline's first corner. */
  private void read(Context context) {
    Places places = places(Json.body(context));
    if (places.outline().isEmpty()) {
      throw ApiException.field("text", "The file has no outline of the land.");
    }
    double[] origin = places.outline().get(0);
    OnEarth earth = new OnEarth(new LocalPlane(origin[0], origin[1]), 0);
    List<double[]> outline = new ArrayList<>();
    for (double[] corner : places.outline()) {
      Point point = earth.toSketch(corner[0], corner[1]);
      outline.add(new double[] {point.x(), point.y()});
    }
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("latitude", origin[0]);
    answer.put("longitude", origin[1]);
    answer.put("outline", outline);
    answer.put(
        "plants",
        places.plants().stream()
            .map(
                plant -> {
                  Point at = earth.toSketch(plant.latitude(), plant.longitude());
                  String species = species(plant).map(Species::key).orElse(null);
                  return new PlaceView(plant.name(), species, at.x(), at.y());
                })
            .toList());
    Json.send(context, answer);
  }

  private Optional<Species> species(PlantPlace plant) {
    Map<String, Species> known = desk.groves().catalogue().species();
    for (String word :
        List.of(plant.species().orElse(""), plant.name().replaceAll("[-\\s]*\\d+$", ""))) {
      String slug = FigureBook.slug(word);
      for (Species one : known.values()) {
        if (one.key().equals(word) || FigureBook.slug(one.name()).equals(slug)) {
          return Optional.of(one);
        }
      }
    }
    return Optional.empty();
  }

  /** The changes that bring a file into the site, to be looked at and then saved as an edit. */
  private void operations(Context context) {
    Places places = places(Json.body(context));
    Described described = desk.groves().described(desk.site(context).description());
    Grove grove = described.grove();
    OnEarth earth = OnEarth.of(grove.site());
    List<Map<String, Object>> operations = new ArrayList<>();
    List<Sentence> left = new ArrayList<>();
    if (!places.outline().isEmpty() && moved(places, grove, earth)) {
      Map<String, Object> set = new LinkedHashMap<>();
      set.put("type", "set");
      set.put("path", "/site/boundary");
      set.put(
          "value",
          places.outline().stream()
              .map(corner -> lengths(earth.toSketch(corner[0], corner[1])))
              .toList());
      operations.add(set);
    }
    Map<String, Planting> standing =
        grove.plantings().stream().collect(Collectors.toMap(Planting::id, Function.identity()));
    for (PlantPlace plant : places.plants()) {
      Point at = earth.toSketch(plant.latitude(), plant.longitude());
      Planting there = standing.get(plant.name());
      if (there != null) {
        move(there, at, described, operations, left);
      } else {
        add(plant, at, grove, operations, left);
      }
    }
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("operations", operations);
    Language language = desk.language(context);
    answer.put("leftOut", left.stream().map(one -> one.in(language)).toList());
    Json.send(context, answer);
  }

  private static boolean moved(Places places, Grove grove, OnEarth earth) {
    List<Point> there = grove.site().boundary();
    return places.outline().size() != there.size()
        || places.outline().stream()
            .map(corner -> earth.toSketch(corner[0], corner[1]))
            .anyMatch(corner -> there.stream().noneMatch(t -> t.distanceTo(corner) < SAME_PLACE_M));
  }

  private static void move(
      Planting plant,
      Point at,
      Described described,
      List<Map<String, Object>> operations,
      List<Sentence> left) {
    if (plant.at().distanceTo(at) < SAME_PLACE_M) {
      return;
    }
    if (described.isSpread(plant.id())) {
      left.add(Sentence.of("{0} stands where the companions of its row are spread.", plant.id()));
      return;
    }
    Map<String, Object> move = new LinkedHashMap<>();
    move.put("type", "movePlant");
    move.put("plant", plant.id());
    move.put("x", at.x());
    move.put("y", at.y());
    operations.add(move);
  }

  private void add(
      PlantPlace plant,
      Point at,
      Grove grove,
      List<Map<String, Object>> operations,
      List<Sentence> left) {
    Optional<Species> species = species(plant);
    if (species.isEmpty()) {
      left.add(
          Sentence.of(
              "{0} is of no species that is known here.",
              plant.name().isEmpty() ? Sentence.of("A plant without a name") : plant.name()));
      return;
    }
    Map<String, Object> add = new LinkedHashMap<>();
    add.put("type", "addPlant");
    add.put("species", species.get().key());
    add.put("x", at.x());
    add.put("y", at.y());
    add.put("fields", Map.of("planted", grove.start().toString(), "container", USUAL_CONTAINER));
    operations.add(add);
  }

  private static List<String> lengths(Point point) {
    return List.of(metres(point.x()), metres(point.y()));
  }

  private static String metres(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return (rounded.signum() == 0 ? "0" : rounded.toPlainString()) + " m";
  }

  private void feed(Context context) {
    String token =
        desk.store().feeds().make(context.pathParam("id"), Caller.from(context).signedIn().id());
    Language language = desk.language(context);
    String spoken = language == Language.ENGLISH ? "" : "." + language.tag();
    Json.send(context, Map.of("path", "/calendar/" + token + spoken + ".ics"));
  }

  private void endFeed(Context context) {
    desk.store().feeds().end(context.pathParam("id"), Caller.from(context).signedIn().id());
    context.status(204);
  }

  /**
   * Calendar programs cannot sign in; the address itself is the secret. They do not say what
   * language they want either, so the address says which one it was given in.
   */
  private void calendar(Context context) {
    desk.limits().feed(context.ip());
    String name = context.pathParam("token").replaceFirst("\\.ics$", "");
    int dot = name.indexOf('.');
    String token = dot < 0 ? name : name.substring(0, dot);
    Language language = dot < 0 ? Language.ENGLISH : Language.of(name.substring(dot + 1));
    SiteState state =
        desk.store()
            .feeds()
            .site(token)
            .map(desk.store().sites()::get)
            .orElseThrow(() -> new ApiException(404, "missing", "There is no such calendar."));
    Plan plan = desk.groves().planNow(state.description());
    context
        .header("Cache-Control", "no-store")
        .contentType(ExportFile.CALENDAR.type())
        .result(
            ExportFile.CALENDAR.content(state.description(), plan, Sheets.unitsOf(plan, language)));
  }
}
