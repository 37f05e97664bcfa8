package org.grovewright.sheets;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Input;

/**
 * The workings behind the figures that a report shows: those figures and all that they rest on.
 * Cells are made through it, so that no shown figure can lack its working.
 */
final class Workings {
  private final List<Figure> all;
  private final Map<String, Figure> byId;
  private final ReaderUnits units;
  private final Set<String> shown = new LinkedHashSet<>();

  Workings(List<Figure> figures, ReaderUnits units) {
    this.all = List.copyOf(figures);
    this.byId = all.stream().collect(Collectors.toMap(Figure::id, Function.identity()));
    this.units = units;
  }

  /** Whether there is a figure with this id. */
  boolean has(String id) {
    return byId.containsKey(id);
  }

  /**
   * The cell that shows a figure.
   *
   * @param id the figure's id; where the plan has none such, the cell is a dash
   */
  Cell cell(String id) {
    Figure figure = byId.get(id);
    return figure == null ? Cell.NONE : cell(id, units.text(figure));
  }

  /** A cell with a text of its own that rests on a figure; plain text where there is none such. */
  Cell cell(String id, String text) {
    if (!byId.containsKey(id)) {
      return Cell.of(text);
    }
    shown.add(id);
    return new Cell(text, id);
  }

  /** The workings of all figures shown so far and of what they rest on, in the plan's order. */
  List<Entry> entries() {
    Set<String> needed = new LinkedHashSet<>();
    Deque<String> open = new ArrayDeque<>(shown);
    while (!open.isEmpty()) {
      String id = open.pop();
      if (needed.add(id)) {
        for (Input input : byId.get(id).working().inputs()) {
          if (byId.containsKey(input.origin())) {
            open.push(input.origin());
          }
        }
      }
    }
    List<Entry> entries = new ArrayList<>();
    for (Figure figure : all) {
      if (needed.contains(figure.id())) {
        entries.add(entry(figure));
      }
    }
    return entries;
  }

  private Entry entry(Figure figure) {
    List<Line> lines = new ArrayList<>();
    for (Input input : figure.working().inputs()) {
      Figure origin = byId.get(input.origin());
      lines.add(
          new Line(
              say(input.symbol()),
              units.text(input.value(), input.kind()),
              units.si(input.value(), input.kind()),
              say(origin == null ? input.origin() : origin.label()),
              origin == null ? "" : origin.id()));
    }
    return new Entry(
        figure.id(),
        say(figure.label()),
        units.text(figure),
        units.si(figure.value(), figure.kind()),
        say(figure.working().formula()),
        lines,
        say(figure.working().source()));
  }

  private String say(String english) {
    return units.language().say(english);
  }

  /**
   * One working.
   *
   * @param id id of the figure
   * @param label what it is
   * @param text its value in the reader's units
   * @param si its value in SI units, in which the formula holds
   * @param formula the formula
   * @param inputs what went in
   * @param source where the method comes from
   */
  public record Entry(
      String id,
      String label,
      String text,
      String si,
      String formula,
      List<Line> inputs,
      String source) {}

  /**
   * One input of a working.
   *
   * @param symbol its symbol in the formula
   * @param text its value in the reader's units
   * @param si its value in SI units
   * @param origin where it comes from, in words
   * @param originId id of the figure it comes from, or empty text
   */
  public record Line(String symbol, String text, String si, String origin, String originId) {}
}
