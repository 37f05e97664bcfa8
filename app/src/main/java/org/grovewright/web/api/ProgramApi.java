package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.catalogue.Species;
import org.grovewright.texts.Language;

/** What is the same for all sites: health, texts, catalogue, checking a description. */
final class ProgramApi {
  private final Desk desk;

  ProgramApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/health", this::health, Access.ANYBODY);
    routes.get(
        "/api/texts/{lang}",
        context -> Json.send(context, Language.of(context.pathParam("lang")).texts()),
        Access.ANYBODY);
    routes.get("/api/catalogue/{table}", this::catalogue, Access.SIGNED_IN);
    routes.post("/api/check", this::check, Access.SIGNED_IN);
  }

  private void health(Context context) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("ok", desk.store().trouble().isEmpty());
    addTrouble(answer, desk, context);
    Json.send(context, answer);
  }

  /** Says in an answer what is wrong with the store, in the reader's language, if anything is. */
  static void addTrouble(Map<String, Object> answer, Desk desk, Context context) {
    desk.store()
        .trouble()
        .ifPresent(
            trouble -> {
              Map<String, Object> said = new LinkedHashMap<>();
              said.put("code", Api.code(trouble));
              said.put("message", trouble.sentence().in(desk.language(context)));
              answer.put("trouble", said);
            });
  }

  /** A species to choose; lengths in metres. */
  private record SpeciesView(
      String key,
      String name,
      String latin,
      String group,
      String role,
      boolean evergreen,
      double spacing,
      double matureSpread,
      double matureHeight,
      double yearsToMature,
      double coldLimit) {
    static SpeciesView of(Species species, Language language) {
      return new SpeciesView(
          species.key(),
          language.say(species.name()),
          species.latin(),
          lower(species.group()),
          lower(species.role()),
          species.evergreen(),
          species.spacingM(),
          species.matureSpreadM(),
          species.matureHeightM(),
          species.yearsToMature(),
          species.coldLimitC());
    }
  }

  /** A pipe; {@code use} is main, lateral or feeder. */
  private record PipeRow(String key, String name, String use) {}

  private record NamedView(String key, String name) {}

  private static String lower(Enum<?> value) {
    return value.name().toLowerCase(java.util.Locale.ROOT);
  }

  private static <R> List<NamedView> named(
      Map<String, R> rows, Function<R, String> name, Language language) {
    return rows.entrySet().stream()
        .map(row -> new NamedView(row.getKey(), language.say(name.apply(row.getValue()))))
        .toList();
  }

  private void catalogue(Context context) {
    var catalogue = desk.groves().catalogue();
    Language language = desk.language(context);
    List<?> rows =
        switch (context.pathParam("table")) {
          case "species" ->
              catalogue.species().values().stream()
                  .map(row -> SpeciesView.of(row, language))
                  .toList();
          case "textures" -> named(catalogue.textures(), SoilTexture::name, language);
          case "pipes" ->
              catalogue.pipes().values().stream()
                  .map(
                      row -> new PipeRow(row.key(), language.say(row.name()), Json.word(row.use())))
                  .toList();
          case "emitters" -> named(catalogue.emitters(), EmitterType::name, language);
          case "mixes" -> named(catalogue.mixes(), SoilMix::name, language);
          case "mulches" -> named(catalogue.mulches(), Mulch::name, language);
          default ->
              throw new ApiException(
                  404,
                  "missing",
                  "There is no such table; there are species, textures, pipes, emitters, mixes and"
                      + " mulches.");
        };
    Json.send(context, rows);
  }

  private void check(Context context) {
    JsonNode body = Json.body(context);
    Map<String, Object> answer = new LinkedHashMap<>();
    try {
      var grove = desk.groves().describe(Json.text(body, "description")).grove();
      answer.put("ok", true);
      answer.put("name", grove.site().name());
      answer.put("plants", grove.plantings().size());
      answer.put("problems", List.of());
    } catch (ApiException e) {
      if (e.problems().isEmpty()) {
        throw e;
      }
      answer.put("ok", false);
      answer.put("problems", Api.ProblemView.of(e.problems(), desk.language(context)));
    }
    Json.send(context, answer);
  }
}
