package org.grovewright.formats.description;

import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.words.Nearest;
import org.grovewright.texts.Sentence;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** The fields of one mapping of the description. */
final class Fields {
  private final MappingNode node;
  private final String path;
  private final Reading reading;
  private final Section section;
  private final Map<String, Value> values = new LinkedHashMap<>();
  private final Map<String, ScalarNode> keys = new LinkedHashMap<>();
  private final Set<String> mistyped = new HashSet<>();

  private Fields(MappingNode node, String path, Reading reading, Section section) {
    this.node = node;
    this.path = path;
    this.reading = reading;
    this.section = section;
  }

  /** Takes the fields of a mapping apart; {@code section} null allows any key. */
  static Fields of(MappingNode node, String path, Reading reading, Section section) {
    Fields fields = new Fields(node, path, reading, section);
    for (NodeTuple tuple : node.getValue()) {
      fields.take(tuple);
    }
    return fields;
  }

  private void take(NodeTuple tuple) {
    if (!(tuple.getKeyNode() instanceof ScalarNode keyNode)) {
      reading.problem(
          tuple.getKeyNode(), path, Sentence.of("a key must be a word, not a list or group"));
      return;
    }
    String key = keyNode.getValue().strip();
    if (section != null && !section.keys().contains(key)) {
      Nearest.of(key, section.keys()).ifPresent(mistyped::add);
      reading.problem(
          keyNode,
          under(Nearest.shorten(key)),
          Sentence.of(
              "is no key here{0}; allowed: {1}",
              Nearest.hint(key, section.keys()), String.join(", ", section.keys())));
      return;
    }
    if (values.containsKey(key)) {
      int line = keys.get(key).getStartMark().map(m -> m.getLine() + 1).orElse(0);
      reading.problem(
          keyNode,
          under(Nearest.shorten(key)),
          Sentence.of("is given twice; first on line {0}", line));
      return;
    }
    keys.put(key, keyNode);
    values.put(key, new Value(tuple.getValueNode(), under(Nearest.shorten(key)), reading));
  }

  private String under(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** All fields in the order of the text. */
  Map<String, Value> all() {
    return Collections.unmodifiableMap(values);
  }

  boolean has(String key) {
    return get(key).isPresent();
  }

  /** A field that may be absent. */
  Optional<Value> get(String key) {
    if (section != null && !section.keys().contains(key)) {
      throw new IllegalArgumentException(section + " has no key " + key);
    }
    return Optional.ofNullable(values.get(key));
  }

  /** A field that must be there; its absence is noted with what to give. */
  Optional<Value> need(String key, String shape, Object... arguments) {
    return need(key, Sentence.of(shape, arguments));
  }

  /**
   * A field that must be there; its absence is noted with what to give, unless a mistyped key was
   * probably meant for it, which is noted already.
   */
  Optional<Value> need(String key, Sentence wanted) {
    Optional<Value> value = get(key);
    if (value.isEmpty() && !mistyped.contains(key)) {
      reading.problem(node, under(key), Sentence.of("is missing; give {0}", wanted));
    }
    return value;
  }

  /** A key of a table of the catalogue that may be absent. */
  Optional<String> key(String key, Map<String, ?> table, String nounShape) {
    return get(key).flatMap(value -> value.key(table, nounShape));
  }

  /** A quantity that may be absent. */
  OptionalDouble quantity(String key, Measure measure, double min, double max) {
    Optional<Value> value = get(key);
    return value.isPresent()
        ? value.get().quantity(measure, new Range(min, max))
        : OptionalDouble.empty();
  }

  /** A quantity that must be there; not a number where it is not, which is noted. */
  double needQuantity(String key, Measure measure, double min, double max) {
    need(key, measure.wanted());
    return quantity(key, measure, min, max).orElse(Double.NaN);
  }

  /** Notes a problem with the field, or with the whole mapping where the field is absent. */
  void problem(String key, String shape, Object... arguments) {
    problem(key, Sentence.of(shape, arguments));
  }

  /** Notes a problem with the field, or with the whole mapping where the field is absent. */
  void problem(String key, Sentence sentence) {
    get(key)
        .ifPresentOrElse(
            value -> value.problem(sentence), () -> reading.problem(node, under(key), sentence));
  }

  /** Whether nothing wrong was found so far in the whole description. */
  boolean noProblemsYet() {
    return reading.problems().isEmpty();
  }

  /** A length for a message, in the unit in which places are written. */
  String length(double metres) {
    return reading.length(metres);
  }

  /** Notes a problem with the whole mapping. */
  void problemOfAll(String shape) {
    reading.problem(node, path, Sentence.of(shape));
  }

  /** Notes all fields but the first that are there although only one of them may be. */
  void onlyOneOf(List<String> alternatives, String shape) {
    List<String> there = alternatives.stream().filter(this::has).toList();
    for (int i = 1; i < there.size(); i++) {
      problem(there.get(i), "contradicts {0}: {1}", there.get(0), Sentence.of(shape));
    }
  }
}
