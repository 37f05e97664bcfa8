package org.grovewright.formats.description;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.units.QuantityText;
import org.grovewright.texts.Sentence;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;
import tech.units.indriya.unit.Units;

/**
 * The state of one reading: the problems found so far, the unit of coordinates that carry none, and
 * the unit in which places were written last.
 */
final class Reading {
  private final List<Problem> problems = new ArrayList<>();
  private Optional<String> coordinateUnit = Optional.empty();
  private QuantityText place = new QuantityText(1, Units.METRE, "m");

  /** Notes a problem at a node. */
  void problem(Node node, String path, Sentence sentence) {
    problem(node, 0, path, sentence);
  }

  /** Notes a problem some columns behind the start of a node. */
  void problem(Node node, int offset, String path, Sentence sentence) {
    Optional<Mark> mark = node.getStartMark();
    problems.add(
        new Problem(
            mark.map(m -> m.getLine() + 1).orElse(0),
            mark.map(m -> m.getColumn() + 1 + offset).orElse(0),
            path,
            sentence));
  }

  /** The problems in the order of the text. */
  List<Problem> problems() {
    List<Problem> sorted = new ArrayList<>(problems);
    sorted.sort(Comparator.comparingInt(Problem::line).thenComparingInt(Problem::column));
    return sorted;
  }

  /** The word for the unit of coordinates written without one, if the description names it. */
  Optional<String> coordinateUnit() {
    return coordinateUnit;
  }

  /** Takes note of the unit in which a place is written. */
  void placeWritten(QuantityText coordinate) {
    place = coordinate;
  }

  /** A length for a message, in the unit in which places are written. */
  String length(double metres) {
    return place.hundredthsInSameUnit(metres, Measure.LENGTH);
  }

  /** Sets the unit of coordinates written without one. */
  void coordinateUnit(String word) {
    coordinateUnit = Optional.of(word);
  }
}
