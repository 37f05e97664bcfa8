package org.grovewright.formats.description;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Predicate;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.NotAQuantityException;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Point;
import org.grovewright.texts.Sentence;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A value of the description with its place. Each method reads it as something; where it is not
 * that, the method notes a problem and returns nothing, so that reading goes on to the next.
 */
final class Value {
  private static final Range COORDINATE = new Range(-5000, 5000);
  private static final int LONGEST_TEXT = 200;
  private static final String PLAIN_NUMBER = "[+-]?(\\d{1,12}\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?";

  private final Node node;
  private final String path;
  private final Reading reading;

  Value(Node node, String path, Reading reading) {
    this.node = node;
    this.path = path;
    this.reading = reading;
  }

  String path() {
    return path;
  }

  Reading reading() {
    return reading;
  }

  /** Notes that something is wrong with this value. */
  void problem(String shape, Object... arguments) {
    problem(Sentence.of(shape, arguments));
  }

  /** Notes that something is wrong with this value. */
  void problem(Sentence sentence) {
    reading.problem(node, path, sentence);
  }

  /** Notes a problem some characters behind the start of this value. */
  void problem(int offset, Sentence sentence) {
    boolean oneLine =
        node.getStartMark().map(m -> m.getLine()).equals(node.getEndMark().map(m -> m.getLine()));
    boolean plain =
        node instanceof ScalarNode scalar && scalar.getScalarStyle() == ScalarStyle.PLAIN;
    reading.problem(node, oneLine && plain ? offset : 0, path, sentence);
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  /** The mapping's fields, which must be those of the section. */
  Optional<Fields> fields(Section section) {
    return mapping(Sentence.asIs(String.join(", ", section.keys())))
        .map(mapping -> Fields.of(mapping, path, reading, section));
  }

  /** The mapping's fields, whatever their keys. */
  Optional<Fields> anyFields(Sentence whatKeys) {
    return mapping(whatKeys).map(mapping -> Fields.of(mapping, path, reading, null));
  }

  private Optional<MappingNode> mapping(Sentence keys) {
    if (node instanceof MappingNode mapping) {
      return Optional.of(mapping);
    }
    problem(
        isEmpty()
            ? "is empty; give its keys on the lines below, indented: {0}"
            : "must be a group of keys with values: {0}",
        keys);
    return Optional.empty();
  }

  /** The items of a list. */
  List<Value> items() {
    if (!(node instanceof SequenceNode sequence)) {
      problem(
          isEmpty()
              ? "is empty; give its items on the lines below, each after '- '"
              : "must be a list: one item a line after '- ', or [a, b]");
      return List.of();
    }
    List<Value> items = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      items.add(new Value(item, path + "[" + items.size() + "]", reading));
    }
    return items;
  }

  private boolean isEmpty() {
    return node instanceof ScalarNode scalar
        && scalar.isPlain()
        && List.of("", "~", "null").contains(scalar.getValue());
  }

  private Optional<String> scalar(Sentence wanted) {
    if (node instanceof ScalarNode scalar) {
      if (!isEmpty() && !scalar.getValue().isBlank()) {
        return Optional.of(scalar.getValue().strip());
      }
      problem("is empty; give {0}", wanted);
      return Optional.empty();
    }
    problem("must be a single value: {0}", wanted);
    return Optional.empty();
  }

  /** Whether this is a single value with such a text. */
  boolean scalarIs(Predicate<String> test) {
    return node instanceof ScalarNode scalar && test.test(scalar.getValue());
  }

  /** A text of one line. */
  Optional<String> text(String shape) {
    return text(Sentence.of(shape));
  }

  /** A text of one line. */
  Optional<String> text(Sentence wanted) {
    Optional<String> text = scalar(wanted);
    if (text.isPresent() && (text.get().length() > LONGEST_TEXT || text.get().contains("\n"))) {
      problem("is too long; at most {0} characters on one line", LONGEST_TEXT);
      return Optional.empty();
    }
    return text;
  }

  /** A name that other parts of the description and the plan refer to. */
  Optional<String> id() {
    Optional<String> id = text("a short name such as A or north-fence");
    if (id.isPresent() && !id.get().matches("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,39}")) {
      problem(
          "'{0}' cannot be a name; use up to 40 letters, digits, spaces, hyphens and dots",
          Nearest.shorten(id.get()));
      return Optional.empty();
    }
    return id;
  }

  /** A number with its unit, in the unit of the measure. */
  OptionalDouble quantity(Measure measure, Range range) {
    return scalar(measure.wanted())
        .map(text -> quantity(text, 0, measure, range))
        .orElse(OptionalDouble.empty());
  }

  private OptionalDouble quantity(String text, int offset, Measure measure, Range range) {
    return valueOf(written(text, offset, measure, range));
  }

  private static OptionalDouble valueOf(Optional<QuantityText> written) {
    return written.isPresent() ? OptionalDouble.of(written.get().value()) : OptionalDouble.empty();
  }

  private Optional<QuantityText> written(String text, int offset, Measure measure, Range range) {
    try {
      QuantityText quantity = QuantityText.read(text, measure);
      if (range.holds(quantity.value())) {
        return Optional.of(quantity);
      }
      Sentence outside =
          Sentence.of(
              "'{0}' is out of range; allowed is {1} to {2}",
              text,
              quantity.inSameUnit(range.min(), measure),
              quantity.inSameUnit(range.max(), measure));
      problem(
          offset,
          measure == Measure.TEMPERATURE && quantity.value() > range.max()
              ? Sentence.of("{0}; if degrees Fahrenheit are meant, write F", outside)
              : outside);
    } catch (NotAQuantityException e) {
      problem(offset, e.sentence());
    }
    return Optional.empty();
  }

  /** A length for a message, in the unit in which places are written. */
  String length(double metres) {
    return reading.length(metres);
  }

  /** Twelve numbers and one unit, or a list of twelve quantities; January first. */
  Optional<double[]> months(Measure measure, Range range) {
    double[] months = new double[12];
    boolean good = true;
    if (isList()) {
      List<Value> items = items();
      if (items.size() != 12) {
        problem("has {0} values; give twelve, January first", items.size());
        return Optional.empty();
      }
      for (int i = 0; i < 12; i++) {
        OptionalDouble value = items.get(i).quantity(measure, range);
        good &= value.isPresent();
        months[i] = value.orElse(Double.NaN);
      }
      return good ? Optional.of(months) : Optional.empty();
    }
    Sentence wanted =
        Sentence.of(
            "twelve numbers, January first, and their unit: 3 4 6 9 13 16 19 19 16 12 7 4 and a"
                + " unit as in {0}",
            measure.examples());
    Optional<String> text = scalar(wanted);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    String[] words = text.get().split("\\s+", -1);
    int numbers = 0;
    while (numbers < words.length && words[numbers].matches("[+-]?[\\d.].*")) {
      numbers++;
    }
    if (numbers != 12 || words.length == 12) {
      problem(
          numbers == 12
              ? Sentence.of("has no unit behind the twelve numbers; {0}", measure.examples())
              : Sentence.of("has {0} numbers; give {1}", numbers, wanted));
      return Optional.empty();
    }
    String unit = String.join(" ", Arrays.copyOfRange(words, 12, words.length));
    int offset = 0;
    for (int i = 0; i < 12; i++) {
      offset = text.get().indexOf(words[i], offset);
      OptionalDouble value = quantity(words[i] + " " + unit, offset, measure, range);
      if (value.isEmpty()) {
        good = false;
        break;
      }
      months[i] = value.getAsDouble();
      offset += words[i].length();
    }
    return good ? Optional.of(months) : Optional.empty();
  }

  /** A pure number. */
  OptionalDouble number(Range range, String shape) {
    return number(range, Sentence.of(shape));
  }

  /** A pure number. */
  OptionalDouble number(Range range, Sentence wanted) {
    Optional<String> text = scalar(wanted);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (!text.get().matches(PLAIN_NUMBER) || text.get().length() > 40) {
      problem("'{0}' is not a plain number; give {1}", Nearest.shorten(text.get()), wanted);
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(text.get()) + 0.0;
    if (!range.holds(value)) {
      problem("'{0}' is out of range; give {1}", text.get(), wanted);
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(value);
  }

  /** An angle in degrees, with or without their sign. */
  OptionalDouble degrees(double limit, Sentence wanted) {
    Optional<String> text = scalar(wanted);
    return text.isPresent() && text.get().matches(PLAIN_NUMBER)
        ? number(new Range(-limit, limit), wanted)
        : text.map(t -> quantity(t, 0, Measure.ANGLE, new Range(-limit, limit)))
            .orElse(OptionalDouble.empty());
  }

  /** A whole number. */
  OptionalInt whole(int min, int max) {
    Sentence wanted = Sentence.of("a whole number from {0} to {1}", min, max);
    OptionalDouble number = number(new Range(min, max), wanted);
    if (number.isPresent() && number.getAsDouble() != Math.rint(number.getAsDouble())) {
      problem("must be {0}", wanted);
      return OptionalInt.empty();
    }
    return number.isPresent() ? OptionalInt.of((int) number.getAsDouble()) : OptionalInt.empty();
  }

  /** A day of the calendar. */
  Optional<LocalDate> date() {
    Sentence wanted = Sentence.of("a date as year-month-day, such as 2026-03-14");
    Optional<String> text = scalar(wanted);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      if (text.get().matches("(19|20|21)\\d\\d-\\d\\d-\\d\\d")) {
        return Optional.of(LocalDate.parse(text.get()));
      }
      problem("'{0}' is not understood; give {1}", Nearest.shorten(text.get()), wanted);
    } catch (DateTimeException e) {
      problem("there is no day '{0}' in the calendar; give {1}", text.get(), wanted);
    }
    return Optional.empty();
  }

  /** Yes or no. */
  Optional<Boolean> yesNo() {
    Optional<String> text = scalar(Sentence.of("true or false"));
    if (text.isEmpty()) {
      return Optional.empty();
    }
    return switch (text.get().toLowerCase(Locale.ROOT)) {
      case "true", "yes" -> Optional.of(true);
      case "false", "no" -> Optional.of(false);
      default -> {
        problem("'{0}' is neither true nor false", Nearest.shorten(text.get()));
        yield Optional.empty();
      }
    };
  }

  /** One of the words of a list, written with spaces, hyphens or underscores. */
  <E extends Enum<E>> Optional<E> choice(Class<E> type) {
    List<String> words = new ArrayList<>();
    for (E constant : type.getEnumConstants()) {
      words.add(word(constant));
    }
    Optional<String> text = scalar(Sentence.of("one of: {0}", String.join(", ", words)));
    if (text.isEmpty()) {
      return Optional.empty();
    }
    int index = words.indexOf(Nearest.plain(text.get()));
    if (index >= 0) {
      return Optional.of(type.getEnumConstants()[index]);
    }
    problem(
        "'{0}' is not known{1}; allowed: {2}",
        Nearest.shorten(text.get()), Nearest.hint(text.get(), words), String.join(", ", words));
    return Optional.empty();
  }

  /** The word of the language for a constant. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The key of a row of the catalogue; its prefix and the kind of hyphen may be left out. */
  Optional<String> key(Map<String, ?> table, String nounShape) {
    Sentence noun = Sentence.of(nounShape);
    Optional<String> text = scalar(Sentence.of("the catalogue's key of a {0}", noun));
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> key = findKey(text.get(), table);
    if (key.isEmpty()) {
      problem(
          "the catalogue has no {0} '{1}'{2}{3}",
          noun, Nearest.shorten(text.get()), Nearest.hint(text.get(), table.keySet()), some(table));
    }
    return key;
  }

  private static Optional<String> findKey(String text, Map<String, ?> table) {
    if (table.containsKey(text)) {
      return Optional.of(text);
    }
    String plain = Nearest.plain(text);
    return table.keySet().stream()
        .filter(
            key ->
                Nearest.plain(key).equals(plain)
                    || Nearest.plain(key.substring(key.indexOf('.') + 1)).equals(plain))
        .findFirst();
  }

  private static Sentence some(Map<String, ?> table) {
    int shown = 12;
    String keys = String.join(", ", table.keySet().stream().limit(shown).toList());
    return Sentence.of("; it has {0}", keys + (table.size() > shown ? ", ..." : ""));
  }

  /** A place: two lengths. */
  Optional<Point> point() {
    Sentence wanted = Sentence.of("a place as [right, up], such as [3 m, 4 m]");
    if (!isList()) {
      problem("must be {0}", wanted);
      return Optional.empty();
    }
    List<Value> items = items();
    if (items.size() != 2) {
      problem("must be two lengths with a comma between them: {0}", wanted);
      return Optional.empty();
    }
    OptionalDouble x = items.get(0).coordinate();
    OptionalDouble y = items.get(1).coordinate();
    return x.isPresent() && y.isPresent()
        ? Optional.of(new Point(x.getAsDouble(), y.getAsDouble()))
        : Optional.empty();
  }

  private OptionalDouble coordinate() {
    Optional<String> text = scalar(Sentence.of("a length such as 3 m"));
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    boolean bare = text.get().matches(PLAIN_NUMBER);
    String full =
        bare
            ? reading.coordinateUnit().map(u -> text.get() + " " + u).orElse(text.get())
            : text.get();
    Optional<QuantityText> written = written(full, 0, Measure.LENGTH, COORDINATE);
    // A bare 0 has no unit of its own.
    written.filter(q -> q.value() != 0).ifPresent(reading::placeWritten);
    return valueOf(written);
  }

  /** A list of places. */
  Optional<List<Point>> points(int atLeast) {
    List<Value> items = items();
    List<Point> points = new ArrayList<>();
    boolean good = isList();
    for (Value item : items) {
      Optional<Point> point = item.point();
      good &= point.isPresent();
      point.ifPresent(points::add);
    }
    if (good && points.size() < atLeast) {
      problem("has {0} places; give at least {1}", points.size(), atLeast);
      return Optional.empty();
    }
    return good ? Optional.of(List.copyOf(points)) : Optional.empty();
  }
}
