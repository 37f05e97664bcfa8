package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.grovewright.edit.Operation;
import org.grovewright.formats.description.DescriptionReader.Described;
import org.grovewright.plan.Plan;
import org.grovewright.store.NewEdit;
import org.grovewright.store.Role;
import org.grovewright.store.SiteState;
import org.grovewright.store.SiteSummary;
import org.grovewright.store.VersionConflictException;

/** The sites: list, make, change, undo, see. */
final class SiteApi {
  private static final long SHORT_WAIT_MS = 300;
  private static final long LONG_WAIT_MS = 20_000;
  private static final int LOG_LINES = 200;
  private static final int LONGEST_LABEL = 200;

  private final Desk desk;

  SiteApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/sites", this::list, Access.SIGNED_IN);
    routes.post("/api/sites", this::create, Access.SIGNED_IN);
    routes.get(
        "/api/sites/{id}",
        context -> Json.send(context, desk.view(context, desk.site(context))),
        Access.VIEWER);
    routes.delete("/api/sites/{id}", this::delete, Access.OWNER);
    routes.post("/api/sites/{id}/restore", this::restore, Access.OWNER);
    routes.get("/api/sites/{id}/description", this::description, Access.VIEWER);
    routes.post("/api/sites/{id}/edits", this::edit, Access.OWNER);
    routes.post("/api/sites/{id}/undo", context -> step(context, true), Access.OWNER);
    routes.post("/api/sites/{id}/redo", context -> step(context, false), Access.OWNER);
    routes.get("/api/sites/{id}/log", this::log, Access.VIEWER);
    routes.get("/api/sites/{id}/scene", this::scene, Access.VIEWER);
  }

  private record SummaryView(String id, String name, String role, long version, String savedAt) {}

  /** The caller's sites; with {@code ?bin=true} those it owns that were deleted. */
  private void list(Context context) {
    boolean bin = "true".equals(context.queryParam("bin"));
    List<SummaryView> views =
        desk.store().sites().list(Caller.from(context).signedIn().id()).stream()
            .filter(site -> site.inBin() == bin)
            .map(SiteApi::view)
            .toList();
    Json.send(context, views);
  }

  private static SummaryView view(SiteSummary site) {
    return new SummaryView(
        site.id(), site.name(), Json.word(site.role()), site.version(), site.changed().toString());
  }

  private void create(Context context) {
    JsonNode body = Json.body(context);
    String description =
        Json.optionalText(body, "example")
            .map(SiteApi::example)
            .orElseGet(() -> Json.text(body, "description"));
    Described described = desk.groves().described(description);
    String name = Json.optionalText(body, "name").orElse(described.grove().site().name());
    SiteState state = desk.store().sites().create(name, description, Caller.from(context).author());
    desk.groves().plan(description);
    Desk.remember(context, Role.OWNER);
    context.status(201);
    Json.send(context, desk.view(context, state));
  }

  private static String example(String name) {
    if (!name.equals("demo")) {
      throw ApiException.field("example", "There is one example, called demo.");
    }
    try (InputStream in =
        SiteApi.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void delete(Context context) {
    desk.store().sites().delete(context.pathParam("id"));
    context.status(204);
  }

  private void restore(Context context) {
    desk.store().sites().restore(context.pathParam("id"));
    Json.send(context, desk.view(context, desk.site(context)));
  }

  private void description(Context context) {
    SiteState state = desk.site(context);
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("version", state.version());
    answer.put("text", state.description());
    answer.put("data", DescriptionData.of(state.description()));
    Json.send(context, answer);
  }

  private void edit(Context context) {
    JsonNode body = Json.body(context);
    long onVersion = Json.whole(body, "onVersion");
    List<Operation> operations = OperationJson.read(body);
    String id = context.pathParam("id");
    SiteState before = desk.site(context);
    Optional<String> clientId = Json.optionalText(body, "clientId");
    if (before.version() != onVersion) {
      answer(context, savedBefore(before, onVersion, clientId, context));
      return;
    }
    String text = desk.groves().editor().apply(before.description(), operations);
    Described described = desk.groves().described(text);
    String label = Json.optionalText(body, "label").filter(l -> !l.isBlank()).orElse("Changed");
    NewEdit edit =
        new NewEdit(
            clientId,
            label.length() > LONGEST_LABEL ? label.substring(0, LONGEST_LABEL) : label,
            Json.text(body.path("operations")),
            described.grove().site().name(),
            text);
    answer(context, desk.store().sites().edit(id, onVersion, edit, Caller.from(context).author()));
  }

  /**
   * The state if an edit on an older version is in already, by its client id.
   *
   * @throws VersionConflictException if it is not
   */
  private SiteState savedBefore(
      SiteState newest, long onVersion, Optional<String> clientId, Context context) {
    if (clientId.isEmpty() || onVersion > newest.version()) {
      throw new VersionConflictException(newest);
    }
    // Versions only grow, so the store can only find the edit or refuse it.
    NewEdit again = new NewEdit(clientId, "", "", newest.name(), newest.description());
    return desk.store().sites().edit(newest.id(), onVersion, again, Caller.from(context).author());
  }

  private void step(Context context, boolean undo) {
    long onVersion = Json.whole(Json.body(context), "onVersion");
    String id = context.pathParam("id");
    var author = Caller.from(context).author();
    answer(
        context,
        undo
            ? desk.store().sites().undo(id, onVersion, author)
            : desk.store().sites().redo(id, onVersion, author));
  }

  private void answer(Context context, SiteState state) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("state", desk.view(context, state));
    answer.put("scene", scene(context, state, SHORT_WAIT_MS));
    Json.send(context, answer);
  }

  private void log(Context context) {
    Json.send(
        context,
        desk.store().sites().log(context.pathParam("id"), LOG_LINES).stream()
            .map(
                line -> {
                  Map<String, Object> view = new LinkedHashMap<>();
                  view.put("version", line.version());
                  view.put("kind", line.kind());
                  view.put("label", line.label());
                  view.put("author", line.author());
                  view.put("made", line.made().toString());
                  return view;
                })
            .toList());
  }

  private void scene(Context context) {
    boolean wait = "true".equals(context.queryParam("wait"));
    Json.send(context, scene(context, desk.site(context), wait ? LONG_WAIT_MS : SHORT_WAIT_MS));
  }

  private Scene scene(Context context, SiteState state, long waitMs) {
    Described described = desk.groves().described(state.description());
    Optional<Plan> plan = desk.groves().planWithin(state.description(), waitMs);
    return new SceneMaker(
            described, desk.groves().catalogue(), plan, desk.voice(context, described.grove()))
        .make(state.version());
  }
}
