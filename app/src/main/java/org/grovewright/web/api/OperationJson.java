package org.grovewright.web.api;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.edit.Operation;
import org.grovewright.model.Point;

/** Reads the changes of a request. */
final class OperationJson {
  private static final int MOST = 500;

  private OperationJson() {}

  /** The changes under {@code operations}. */
  static List<Operation> read(JsonNode body) {
    JsonNode list = body.path("operations");
    if (!list.isArray() || list.isEmpty()) {
      throw ApiException.field("operations", "Give at least one change under 'operations'.");
    }
    if (list.size() > MOST) {
      throw ApiException.field("operations", "Make at most {0} changes at a time.", MOST);
    }
    List<Operation> operations = new ArrayList<>();
    list.forEach(one -> operations.add(operation(one)));
    return operations;
  }

  private static Operation operation(JsonNode one) {
    String type = Json.text(one, "type");
    return switch (type) {
      case "set" -> new Operation.SetField(place(one), value(one));
      case "remove" -> new Operation.RemoveField(place(one));
      case "movePlant" ->
          new Operation.MovePlant(
              Json.text(one, "plant"), point(one), one.path("offRow").asBoolean(false));
      case "addPlant" ->
          new Operation.AddPlant(
              Json.text(one, "species"),
              point(one),
              Json.optionalText(one, "row"),
              fields(one.path("fields")));
      case "removePlant" -> new Operation.RemovePlant(Json.text(one, "plant"));
      case "setPlant" -> setPlant(one);
      case "moveRow" -> new Operation.MoveRow(Json.text(one, "row"), line(one.path("line")));
      case "replace" -> new Operation.Replace(Json.text(one, "text"));
      default ->
          throw ApiException.field(
              "type",
              "There is no change called '{0}'; there are set, remove, movePlant, addPlant,"
                  + " removePlant, setPlant, moveRow and replace.",
              type);
    };
  }

  private static Operation setPlant(JsonNode one) {
    Map<String, Object> fields = fields(one.path("fields"));
    List<String> without =
        fields.entrySet().stream()
            .filter(field -> field.getValue() == null)
            .map(Map.Entry::getKey)
            .toList();
    fields.values().removeIf(java.util.Objects::isNull);
    return new Operation.SetPlant(Json.text(one, "plant"), fields, without);
  }

  private static List<Point> line(JsonNode points) {
    List<Point> line = new ArrayList<>();
    for (JsonNode point : points) {
      if (point.size() != 2 || !point.path(0).isNumber() || !point.path(1).isNumber()) {
        throw ApiException.field("line", "'line' must be a list of places [x, y] in metres.");
      }
      line.add(new Point(point.path(0).doubleValue(), point.path(1).doubleValue()));
    }
    if (line.size() < 2) {
      throw ApiException.field("line", "A row runs through two places at least.");
    }
    return line;
  }

  private static Point point(JsonNode one) {
    return new Point(Json.number(one, "x"), Json.number(one, "y"));
  }

  private static JsonPointer place(JsonNode one) {
    try {
      return JsonPointer.compile(Json.text(one, "path"));
    } catch (IllegalArgumentException e) {
      throw ApiException.field("path", "'path' must be a JSON Pointer such as /site/name.");
    }
  }

  private static Object value(JsonNode one) {
    JsonNode value = one.path("value");
    if (value.isMissingNode() || value.isNull()) {
      throw ApiException.field("value", "'value' is missing.");
    }
    return Json.plain(value);
  }

  private static Map<String, Object> fields(JsonNode node) {
    Map<String, Object> fields = new LinkedHashMap<>();
    node.fields()
        .forEachRemaining(entry -> fields.put(entry.getKey(), Json.plain(entry.getValue())));
    return fields;
  }
}
