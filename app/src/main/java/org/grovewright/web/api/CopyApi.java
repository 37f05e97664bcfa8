package org.grovewright.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The daily copies of the database, and going back to one. */
final class CopyApi {
  private final Desk desk;

  CopyApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/copies", this::list, Access.KEEPER);
    routes.post("/api/copies/{name}/restore", this::restore, Access.KEEPER);
  }

  private record CopyView(String name, String day, long bytes) {}

  private void list(Context context) {
    List<CopyView> copies =
        desk.store().copies().stream()
            .map(copy -> new CopyView(copy.name(), copy.day().toString(), copy.bytes()))
            .toList();
    Json.send(context, copies);
  }

  private void restore(Context context) {
    String kept = desk.store().restore(context.pathParam("name")).getFileName().toString();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("ok", desk.store().trouble().isEmpty());
    answer.put("keptAs", kept);
    Json.send(context, answer);
  }
}
