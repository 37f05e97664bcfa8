package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.edit.EditException;
import org.grovewright.store.StoreException;
import org.grovewright.store.VersionConflictException;
import org.grovewright.texts.Language;
import org.grovewright.texts.Sentence;

/** All routes of the API and how their failures are told. */
public final class Api {
  private final Desk desk;

  /** The API on a desk. */
  public Api(Desk desk) {
    this.desk = desk;
  }

  /** Adds the routes. */
  public void addTo(RoutesConfig routes) {
    new ProgramApi(desk).addTo(routes);
    new AccountApi(desk).addTo(routes);
    new StartApi(desk).addTo(routes);
    new MemberApi(desk).addTo(routes);
    new CopyApi(desk).addTo(routes);
    new SiteApi(desk).addTo(routes);
    new TryApi(desk).addTo(routes);
    new PageApi(desk).addTo(routes);
    new JournalApi(desk).addTo(routes);
    new PhotoApi(desk).addTo(routes);
    new TickApi(desk).addTo(routes);
    new ExchangeApi(desk).addTo(routes);
    failures(routes);
  }

  private void failures(RoutesConfig routes) {
    routes.exception(
        ApiException.class,
        (e, context) -> {
          Language language = desk.language(context);
          Map<String, Object> answer = failure(e.code(), e.sentence(), e.field(), language);
          if (!e.problems().isEmpty()) {
            answer.put("problems", ProblemView.of(e.problems(), language));
          }
          send(context, e.status(), answer);
        });
    routes.exception(
        VersionConflictException.class,
        (e, context) -> {
          Map<String, Object> answer =
              failure("stale", e.sentence(), Optional.empty(), desk.language(context));
          answer.put("state", desk.view(context, e.newest()));
          send(context, 409, answer);
        });
    routes.exception(
        StoreException.class,
        (e, context) ->
            send(
                context,
                status(e.reason()),
                failure(code(e), e.sentence(), e.field(), desk.language(context))));
    routes.exception(
        EditException.class, (e, context) -> fail(context, 422, "invalid", e.sentence()));
    routes.exception(
        HttpResponseException.class,
        (e, context) ->
            fail(context, e.getStatus(), codeOf(e.getStatus()), sentence(e.getStatus())));
    routes.exception(
        Exception.class,
        (e, context) -> {
          desk.log().accept(e);
          fail(
              context,
              500,
              "bug",
              Sentence.of(
                  "Something went wrong, and this is our bug, not yours. Nothing was changed; the"
                      + " terminal that Grovewright runs in says more."));
        });
    routes.error(
        404,
        "*",
        context -> {
          if (context.path().startsWith("/api/") && context.result() == null) {
            fail(context, 404, "missing", sentence(404));
          }
        });
  }

  /**
   * One thing wrong with a description, as a caller reads it.
   *
   * @param field the field; empty for the whole
   * @param line line of the text, from 1; 0 for none
   * @param column column of the text, from 1; 0 for none
   * @param message what is wrong, in the caller's language
   */
  record ProblemView(String field, int line, int column, String message) {
    static List<ProblemView> of(List<ApiException.FieldProblem> problems, Language language) {
      return problems.stream()
          .map(p -> new ProblemView(p.field(), p.line(), p.column(), p.message().in(language)))
          .toList();
    }
  }

  private void fail(Context context, int status, String code, Sentence sentence) {
    send(context, status, failure(code, sentence, Optional.empty(), desk.language(context)));
  }

  private static void send(Context context, int status, Map<String, Object> answer) {
    context.status(status);
    Json.send(context, answer);
  }

  static String code(StoreException e) {
    return e.reason().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static Map<String, Object> failure(
      String code, Sentence sentence, Optional<String> field, Language language) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("code", code);
    answer.put("message", sentence.in(language));
    field.ifPresent(name -> answer.put("field", name));
    return answer;
  }

  private static int status(StoreException.Reason reason) {
    return switch (reason) {
      case MISSING -> 404;
      case REFUSED -> 409;
      default -> 503;
    };
  }

  private static String codeOf(int status) {
    return Map.of(404, "missing", 405, "missing", 413, "too-large").getOrDefault(status, "refused");
  }

  private static Sentence sentence(int status) {
    return switch (status) {
      case 404, 405 -> Sentence.of("There is nothing at this address.");
      case 413 -> Sentence.of("This is too large to be sent here.");
      default -> Sentence.of("The request cannot be answered.");
    };
  }
}
