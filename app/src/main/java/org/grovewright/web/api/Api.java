package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import java.util.LinkedHashMap;
import java.util.Map;
import org.grovewright.store.StoreException;
import org.grovewright.store.VersionConflictException;

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
          Map<String, Object> answer = failure(e.code(), e.getMessage());
          e.field().ifPresent(field -> answer.put("field", field));
          if (!e.problems().isEmpty()) {
            answer.put("problems", e.problems());
          }
          context.status(e.status());
          Json.send(context, answer);
        });
    routes.exception(
        VersionConflictException.class,
        (e, context) -> {
          Map<String, Object> answer = failure("stale", e.getMessage());
          answer.put("state", desk.view(context, e.newest()));
          context.status(409);
          Json.send(context, answer);
        });
    routes.exception(
        StoreException.class,
        (e, context) -> {
          context.status(status(e.reason()));
          Json.send(context, failure(code(e), e.getMessage()));
        });
    routes.exception(
        org.grovewright.edit.EditException.class,
        (e, context) -> {
          context.status(422);
          Json.send(context, failure("invalid", e.getMessage()));
        });
    routes.exception(
        io.javalin.http.HttpResponseException.class,
        (e, context) -> {
          context.status(e.getStatus());
          Json.send(context, failure(codeOf(e.getStatus()), sentence(e.getStatus())));
        });
    routes.exception(
        Exception.class,
        (e, context) -> {
          desk.log().accept(e);
          context.status(500);
          Json.send(
              context,
              failure(
                  "bug",
                  "Something went wrong, and this is our bug, not yours. Nothing was changed; the"
                      + " terminal that Grovewright runs in says more."));
        });
    routes.error(
        404,
        "*",
        context -> {
          if (context.path().startsWith("/api/") && context.result() == null) {
            Json.send(context, failure("missing", sentence(404)));
          }
        });
  }

  static String code(StoreException e) {
    return e.reason().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static Map<String, Object> failure(String code, String message) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("code", code);
    answer.put("message", message);
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

  private static String sentence(int status) {
    return switch (status) {
      case 404, 405 -> "There is nothing at this address.";
      case 413 -> "This is too large to be sent here.";
      default -> "The request cannot be answered.";
    };
  }
}
