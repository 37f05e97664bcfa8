package org.grovewright.sheets;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;

/** Workings as plain text: a figure, what it was made of, and what that was made of in turn. */
public final class WorkingTree {
  private static final String INDENT = "    ";

  private final Map<String, Figure> byId = new LinkedHashMap<>();
  private final ReaderUnits units;

  /**
   * The figures of a plan and the units to write them in.
   *
   * @param figures all figures of the plan
   * @param units the reader's units
   */
  public WorkingTree(List<Figure> figures, ReaderUnits units) {
    figures.forEach(figure -> byId.put(figure.id(), figure));
    this.units = units;
  }

  /**
   * The working of a figure and, further in, those of all that it rests on, each written once.
   *
   * @throws IllegalArgumentException if there is no such figure
   */
  public String follow(String id) {
    if (!byId.containsKey(id)) {
      throw new IllegalArgumentException("no figure " + id);
    }
    StringBuilder text = new StringBuilder();
    write(byId.get(id), "", new HashSet<>(), text);
    return text.toString();
  }

  /** The working of one figure alone. */
  public String alone(Figure figure) {
    StringBuilder text = new StringBuilder();
    head(figure, "", text);
    for (Input input : figure.working().inputs()) {
      line(input, INDENT, text);
    }
    return text.toString();
  }

  private void write(Figure figure, String indent, Set<String> written, StringBuilder text) {
    written.add(figure.id());
    head(figure, indent, text);
    for (Input input : figure.working().inputs()) {
      line(input, indent + INDENT, text);
      Figure origin = byId.get(input.origin());
      if (origin == null) {
        continue;
      }
      if (written.contains(origin.id())) {
        text.append(indent).append(INDENT).append(INDENT).append("(its working stands above)\n");
      } else {
        write(origin, indent + INDENT + INDENT, written, text);
      }
    }
  }

  private void head(Figure figure, String indent, StringBuilder text) {
    text.append(indent).append(figure.id()).append('\n');
    text.append(indent).append("  ").append(figure.label()).append(": ");
    text.append(both(figure.value(), figure.kind())).append('\n');
    text.append(indent).append("  formula: ").append(figure.working().formula()).append('\n');
    text.append(indent).append("  source:  ").append(figure.working().source()).append('\n');
  }

  private void line(Input input, String indent, StringBuilder text) {
    text.append(indent)
        .append(input.symbol())
        .append(" = ")
        .append(both(input.value(), input.kind()))
        .append("   <- ")
        .append(input.origin())
        .append('\n');
  }

  /** The reader's unit first, then the SI value wherever it is written otherwise. */
  private String both(double value, Kind kind) {
    String read = ReaderUnits.plainSpaces(units.text(value, kind));
    String si = ReaderUnits.plainSpaces(units.si(value, kind));
    return read.equals(si) ? read : read + " (" + si + ")";
  }
}
