package org.grovewright.edit;

import com.fasterxml.jackson.core.JsonPointer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * A YAML text whose values can be changed while the rest of it stays as it was written. Each change
 * gives a new document. Places are JSON Pointers (RFC 6901).
 */
public final class YamlDocument {
  private static final int LIMIT = 4 * 1024 * 1024;

  private final String text;
  private final Node root;
  private final Object data;

  private YamlDocument(String text, Node root, Object data) {
    this.text = text;
    this.root = root;
    this.data = data;
  }

  /**
   * Takes a text; line ends become those of Unix.
   *
   * @throws EditException if it is not YAML
   */
  public static YamlDocument parse(String text) {
    String plain = text.replace("\uFEFF", "").replace("\r\n", "\n").replace('\r', '\n');
    LoadSettings settings = settings();
    try {
      Node root =
          new Compose(settings)
              .composeString(plain)
              .orElseThrow(() -> new EditException("The description is empty."));
      return new YamlDocument(plain, root, new Load(settings).loadFromString(plain));
    } catch (YamlEngineException e) {
      throw new EditException(
          "The description is not well-formed YAML: {0}",
          String.valueOf(e.getMessage()).replaceAll("\\s+", " ").strip());
    }
  }

  private static LoadSettings settings() {
    return LoadSettings.builder()
        .setUseMarks(true)
        .setMaxAliasesForCollections(0)
        .setCodePointLimit(LIMIT)
        .build();
  }

  /** The text. */
  public String text() {
    return text;
  }

  /** The value at a place: map, list, text, number, truth value or null; empty if nothing is. */
  public Optional<Object> value(JsonPointer place) {
    Object value = data;
    for (JsonPointer rest = place; !rest.matches(); rest = rest.tail()) {
      value = child(value, rest);
      if (value == null) {
        return Optional.empty();
      }
    }
    return Optional.ofNullable(value);
  }

  private static Object child(Object value, JsonPointer step) {
    if (value instanceof Map<?, ?> map) {
      return map.get(step.getMatchingProperty());
    }
    if (value instanceof List<?> list) {
      int index = step.getMatchingIndex();
      return index >= 0 && index < list.size() ? list.get(index) : null;
    }
    return null;
  }

  /**
   * Sets the value at a place. The group that holds it must be there; a last step of {@code -} adds
   * to the end of a list. Missing groups on the way to a key are made.
   *
   * @param place where
   * @param value maps with text as keys, lists, texts, numbers, truth values
   * @throws EditException if the place does not fit the document
   */
  public YamlDocument set(JsonPointer place, Object value) {
    if (place.matches()) {
      throw new EditException("Name the field to change; the whole is replaced as a text.");
    }
    JsonPointer holder = place.head();
    if (!holder.matches() && value(holder).isEmpty()) {
      Object inner =
          place.last().getMatchingProperty().equals("-")
              ? List.of(value)
              : Map.of(place.last().getMatchingProperty(), value);
      return set(holder, inner);
    }
    Object wanted = DataTree.with(data, place, value);
    return checked(
        new TextCuts(text, root).set(place, flow(value), value(place).isPresent()), wanted);
  }

  /**
   * Removes a key or an item of a list.
   *
   * @throws EditException if there is nothing at the place
   */
  public YamlDocument remove(JsonPointer place) {
    if (place.matches() || !DataTree.has(data, place)) {
      throw new EditException("There is nothing at {0} to remove.", place);
    }
    return checked(new TextCuts(text, root).remove(place), DataTree.without(data, place));
  }

  /**
   * The document of a changed text. If the text was laid out in a way that the cut did not foresee,
   * the whole is written anew: remarks are lost then, but never a value.
   */
  private static YamlDocument checked(String changed, Object wanted) {
    DumpSettings lines =
        DumpSettings.builder().setDefaultFlowStyle(FlowStyle.BLOCK).setWidth(200).build();
    return matching(changed, wanted)
        .or(() -> matching(new Dump(lines).dumpToString(wanted), wanted))
        .orElseGet(() -> parse(flow(wanted)));
  }

  private static Optional<YamlDocument> matching(String text, Object wanted) {
    try {
      return Optional.of(parse(text)).filter(document -> Objects.equals(document.data, wanted));
    } catch (EditException e) {
      return Optional.empty();
    }
  }

  /** The value on one line, fit to stand within brackets. */
  static String flow(Object value) {
    DumpSettings settings =
        DumpSettings.builder()
            .setDefaultFlowStyle(FlowStyle.FLOW)
            .setWidth(Integer.MAX_VALUE)
            .setSplitLines(false)
            .build();
    List<Object> list = new ArrayList<>();
    list.add(value);
    String text = new Dump(settings).dumpToString(list).strip();
    return text.substring(1, text.length() - 1).strip();
  }

  /** A map of these keys and values in their order; keys without a value are left out. */
  public static Map<String, Object> map(Object... keysAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      if (keysAndValues[i + 1] != null) {
        map.put((String) keysAndValues[i], keysAndValues[i + 1]);
      }
    }
    return map;
  }
}
