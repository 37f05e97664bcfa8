package org.grovewright.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.grovewright.store.Ticks;

/** What of the shopping list is bought already, shared by all devices of a site. */
final class TickApi {
  private static final int MOST_CHANGES = 1000;
  private static final Pattern ITEM = Pattern.compile("[\\p{L}\\p{N}._:/-]{1,120}");

  private final Desk desk;

  TickApi(Desk desk) {
    this.desk = desk;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/api/sites/{id}/ticks", this::list, Access.VIEWER);
    routes.put("/api/sites/{id}/ticks", this::merge, Access.HELPER);
  }

  private record TickView(String item, boolean ticked, String at, String author) {
    static TickView of(Ticks.Tick tick) {
      return new TickView(tick.item(), tick.ticked(), tick.at().toString(), tick.author());
    }

    static List<TickView> of(List<Ticks.Tick> ticks) {
      return ticks.stream().map(TickView::of).toList();
    }
  }

  private record ConflictView(String item, boolean kept, TickView other) {}

  private void list(Context context) {
    Json.send(
        context, Map.of("ticks", TickView.of(desk.store().ticks().list(context.pathParam("id")))));
  }

  private void merge(Context context) {
    JsonNode list = Json.body(context).path("ticks");
    if (!list.isArray()) {
      throw ApiException.field("ticks", "'ticks' must be a list.");
    }
    if (list.size() > MOST_CHANGES) {
      throw ApiException.field("ticks", "Send at most {0} ticks at a time.", MOST_CHANGES);
    }
    List<Ticks.Change> changes = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      changes.add(change(list.get(i), "ticks[" + i + "]."));
    }
    Ticks.Merged merged =
        desk.store().ticks().merge(context.pathParam("id"), changes, Caller.from(context).author());
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("ticks", TickView.of(merged.ticks()));
    answer.put(
        "conflicts",
        merged.conflicts().stream()
            .map(one -> new ConflictView(one.item(), one.kept(), TickView.of(one.other())))
            .toList());
    Json.send(context, answer);
  }

  private static Ticks.Change change(JsonNode one, String at) {
    String item = Json.text(one, "item");
    if (!ITEM.matcher(item).matches()) {
      throw ApiException.field(
          at + "item", "An item's key has 1 to 120 letters, digits and the signs . _ : / -.");
    }
    if (!one.path("ticked").isBoolean()) {
      throw ApiException.field(at + "ticked", "'ticked' must be true or false.");
    }
    return new Ticks.Change(
        item,
        one.path("ticked").booleanValue(),
        moment(Json.text(one, "at"), at + "at"),
        Optional.ofNullable(one.path("seen").textValue()).map(text -> moment(text, at + "seen")));
  }

  private static Instant moment(String text, String field) {
    try {
      Instant moment = Instant.parse(text);
      if (moment.isAfter(Instant.EPOCH)) {
        return moment;
      }
    } catch (DateTimeParseException e) {
      throw notAMoment(field);
    }
    throw notAMoment(field);
  }

  private static ApiException notAMoment(String field) {
    return ApiException.field(field, "A moment must be written as 2027-03-01T08:30:00Z.");
  }
}
