package org.grovewright.formats.description;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Present;
import org.snakeyaml.engine.v2.api.lowlevel.Serialize;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;
import org.snakeyaml.engine.v2.resolver.CoreScalarResolver;

/** Puts groups, lists and values together into YAML text. */
final class YamlText {
  private static final int WIDTH = 110;
  private static final int MOST_DECIMALS = 15;

  private YamlText() {}

  /** A group of keys under construction; what is absent is left out. */
  static final class Group {
    private final List<NodeTuple> tuples = new ArrayList<>();
    private final FlowStyle style;

    private Group(FlowStyle style) {
      this.style = style;
    }

    /** A group with a key a line. */
    static Group lines() {
      return new Group(FlowStyle.BLOCK);
    }

    /** A group on one line. */
    static Group inline() {
      return new Group(FlowStyle.FLOW);
    }

    Group put(String key, Node node) {
      tuples.add(new NodeTuple(word(key), node));
      return this;
    }

    Group put(String key, Group group) {
      return put(key, group.node());
    }

    Group put(String key, String text) {
      return put(key, word(text));
    }

    Group put(String key, Optional<String> text) {
      text.ifPresent(value -> put(key, value));
      return this;
    }

    Group put(String key, OptionalDouble value, Unit unit) {
      return value.isPresent() ? put(key, value.getAsDouble(), unit) : this;
    }

    Group put(String key, double value, Unit unit) {
      return put(key, bare(quantity(value, unit)));
    }

    Group put(String key, int number) {
      return put(key, bare(String.valueOf(number)));
    }

    Group put(String key, boolean yes) {
      return put(key, bare(String.valueOf(yes)));
    }

    boolean isEmpty() {
      return tuples.isEmpty();
    }

    Node node() {
      return new MappingNode(Tag.MAP, tuples, style);
    }
  }

  /**
   * Units that lie a power of ten from the SI unit, so that a number stays the same to the last
   * digit when it is written and read.
   */
  enum Unit {
    METRE(" m", 0),
    MILLIMETRE(" mm", 3),
    LITRE(" L", 3),
    SQUARE_METRE(" m2", 0),
    CUBIC_METRE(" m3", 0),
    CUBIC_METRE_PER_DAY(" m3/day", 0),
    KILOGRAM(" kg", 0),
    PASCAL(" Pa", 0),
    SECOND(" s", 0),
    HOUR(" h", 0),
    CELSIUS(" \u00b0C", 0),
    METRE_PER_SECOND(" m/s", 0),
    WATT_PER_SQUARE_METRE(" W/m2", 0),
    DECISIEMENS_PER_METRE(" dS/m", 1),
    PERCENT(" %", 2),
    MG_PER_KG(" mg/kg", 0),
    DEGREE(" deg", 0),
    NONE("", 0);

    private final String symbol;
    private final int shift;

    Unit(String symbol, int shift) {
      this.symbol = symbol;
      this.shift = shift;
    }
  }

  /** A value in SI as a number and the unit. */
  static String quantity(double value, Unit unit) {
    return number(value, unit.shift) + unit.symbol;
  }

  /** Twelve values in SI as twelve numbers and the unit. */
  static String months(List<Double> values, Unit unit) {
    return String.join(" ", values.stream().map(v -> number(v, unit.shift)).toList()) + unit.symbol;
  }

  private static String number(double value, int shift) {
    BigDecimal decimal =
        new BigDecimal(Double.toString(value)).movePointRight(shift).stripTrailingZeros();
    return decimal.signum() == 0
        ? "0"
        : decimal.scale() > MOST_DECIMALS ? decimal.toString() : decimal.toPlainString();
  }

  /** A word or sentence, quoted if it would be taken for something else. */
  static Node word(String text) {
    return new ScalarNode(Tag.STR, text, ScalarStyle.PLAIN);
  }

  /** A number or yes or no, never quoted. */
  private static Node bare(String text) {
    return new ScalarNode(
        new CoreScalarResolver(false).resolve(text, true), text, ScalarStyle.PLAIN);
  }

  /** A list with an item a line. */
  static Node lines(List<Node> items) {
    return new SequenceNode(Tag.SEQ, items, FlowStyle.BLOCK);
  }

  /** A list on one line. */
  static Node inline(List<Node> items) {
    return new SequenceNode(Tag.SEQ, items, FlowStyle.FLOW);
  }

  /** The text of a group. */
  static String text(Group root) {
    DumpSettings settings =
        DumpSettings.builder()
            .setWidth(WIDTH)
            .setBestLineBreak("\n")
            .setIndicatorIndent(2)
            .setIndentWithIndicator(true)
            .setIndent(2)
            .build();
    return new Present(settings)
        .emitToString(new Serialize(settings).serializeOne(root.node()).iterator());
  }

  /** A group made of a map of texts. */
  static Group of(Map<String, String> texts) {
    Group group = Group.lines();
    texts.forEach((key, text) -> group.put(key, bare(text)));
    return group;
  }
}
