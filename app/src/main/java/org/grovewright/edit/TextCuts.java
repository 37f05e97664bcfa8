package org.grovewright.edit;

import com.fasterxml.jackson.core.JsonPointer;
import java.util.List;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Cuts changes into a YAML text at the marks of its nodes. */
final class TextCuts {
  private final String text;
  private final Node root;

  TextCuts(String text, Node root) {
    this.text = text;
    this.root = root;
  }

  /** The text with a value, written on one line, at a place. */
  String set(JsonPointer place, String flow, boolean there) {
    Node holder = node(place.head());
    JsonPointer last = place.last();
    if (holder instanceof MappingNode mapping) {
      int index = indexOf(mapping, last.getMatchingProperty());
      return index >= 0
          ? setValue(mapping.getValue().get(index), flow)
          : addEntry(mapping, YamlDocument.flow(last.getMatchingProperty()) + ": " + flow);
    }
    SequenceNode sequence = (SequenceNode) holder;
    if (there) {
      Node item = sequence.getValue().get(last.getMatchingIndex());
      return cut(start(item), end(item), flow);
    }
    return addItem(sequence, flow);
  }

  private String setValue(NodeTuple tuple, String flow) {
    int colon = text.indexOf(':', end(tuple.getKeyNode())) + 1;
    Node value = tuple.getValueNode();
    int end = end(value);
    // A block of lines below its key, or nothing: the new value goes behind the colon.
    if (isBlock(value) || end <= start(value)) {
      return cut(colon, Math.max(colon, end), " " + flow);
    }
    return cut(start(value), end, flow);
  }

  private String addEntry(MappingNode mapping, String entry) {
    List<NodeTuple> tuples = mapping.getValue();
    if (tuples.isEmpty()) {
      return cut(start(mapping), end(mapping), "{" + entry + "}");
    }
    int last = Math.max(end(tuples.get(tuples.size() - 1)), start(mapping));
    return isBlock(mapping)
        ? insert(lineEnd(last), "\n" + indent(mapping) + entry)
        : insert(last, ", " + entry);
  }

  private String addItem(SequenceNode sequence, String item) {
    List<Node> items = sequence.getValue();
    if (items.isEmpty()) {
      return cut(start(sequence), end(sequence), "[" + item + "]");
    }
    int last = end(items.get(items.size() - 1));
    return isBlock(sequence)
        ? insert(lineEnd(last), "\n" + indent(sequence) + "- " + item)
        : insert(last, ", " + item);
  }

  /** The text without what is at a place. */
  String remove(JsonPointer place) {
    Node holder = node(place.head());
    if (holder instanceof MappingNode mapping) {
      List<NodeTuple> tuples = mapping.getValue();
      int index = indexOf(mapping, place.last().getMatchingProperty());
      if (tuples.size() == 1) {
        return emptied(place.head(), mapping, "{}");
      }
      if (index == 0) {
        return cut(start(tuples.get(0).getKeyNode()), start(tuples.get(1).getKeyNode()), "");
      }
      return removeLater(mapping, end(tuples.get(index - 1)), end(tuples.get(index)));
    }
    SequenceNode sequence = (SequenceNode) holder;
    List<Node> items = sequence.getValue();
    int index = place.last().getMatchingIndex();
    if (items.size() == 1) {
      return emptied(place.head(), sequence, "[]");
    }
    if (index == 0) {
      return isBlock(sequence)
          ? cut(dash(items.get(0)), dash(items.get(1)), "")
          : cut(start(items.get(0)), start(items.get(1)), "");
    }
    return removeLater(sequence, end(items.get(index - 1)), end(items.get(index)));
  }

  private String removeLater(Node holder, int endBefore, int end) {
    return isBlock(holder) ? cut(lineEnd(endBefore), lineEnd(end), "") : cut(endBefore, end, "");
  }

  private String emptied(JsonPointer place, Node node, String empty) {
    return place.matches() ? cut(start(node), end(node), empty) : set(place, empty, true);
  }

  private Node node(JsonPointer place) {
    Node node = root;
    for (JsonPointer rest = place; !rest.matches(); rest = rest.tail()) {
      if (node instanceof MappingNode mapping) {
        node = mapping.getValue().get(indexOf(mapping, rest.getMatchingProperty())).getValueNode();
      } else {
        node = ((SequenceNode) node).getValue().get(rest.getMatchingIndex());
      }
    }
    return node;
  }

  private static int indexOf(MappingNode mapping, String key) {
    List<NodeTuple> tuples = mapping.getValue();
    for (int i = 0; i < tuples.size(); i++) {
      if (tuples.get(i).getKeyNode() instanceof ScalarNode scalar
          && scalar.getValue().equals(key)) {
        return i;
      }
    }
    return -1;
  }

  private static boolean isBlock(Node node) {
    return node instanceof MappingNode mapping && mapping.getFlowStyle() == FlowStyle.BLOCK
        || node instanceof SequenceNode sequence && sequence.getFlowStyle() == FlowStyle.BLOCK;
  }

  private int start(Node node) {
    return offset(node.getStartMark().orElseThrow());
  }

  /** Where the node's own letters end; the parser counts the space up to the next node to it. */
  private int end(Node node) {
    int end;
    if (isBlock(node) && node instanceof MappingNode mapping) {
      end = end(mapping.getValue().get(mapping.getValue().size() - 1));
    } else if (isBlock(node) && node instanceof SequenceNode sequence) {
      end = end(sequence.getValue().get(sequence.getValue().size() - 1));
    } else {
      end = offset(node.getEndMark().orElseThrow());
      boolean lines =
          node instanceof ScalarNode scalar
              && (scalar.getScalarStyle() == ScalarStyle.LITERAL
                  || scalar.getScalarStyle() == ScalarStyle.FOLDED);
      if (!lines) {
        return end;
      }
    }
    while (end > 0 && Character.isWhitespace(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }

  private int end(NodeTuple tuple) {
    int colon = text.indexOf(':', end(tuple.getKeyNode())) + 1;
    return Math.max(colon, end(tuple.getValueNode()));
  }

  /** The dash before an item. */
  private int dash(Node item) {
    int at = start(item) - 1;
    while (at > 0 && text.charAt(at) != '-') {
      at--;
    }
    return at;
  }

  private int lineEnd(int from) {
    int end = text.indexOf('\n', from);
    return end < 0 ? text.length() : end;
  }

  private String indent(Node node) {
    return " ".repeat(node.getStartMark().orElseThrow().getColumn());
  }

  /** Marks count code points, Java counts UTF-16 units. */
  private int offset(Mark mark) {
    return text.offsetByCodePoints(0, mark.getIndex());
  }

  private String insert(int at, String inserted) {
    return cut(at, at, inserted);
  }

  private String cut(int from, int until, String inserted) {
    return text.substring(0, from) + inserted + text.substring(until);
  }
}
