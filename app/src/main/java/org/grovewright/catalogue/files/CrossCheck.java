package org.grovewright.catalogue.files;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.grovewright.quantity.Kind;

/** Checks that the tables fit together. */
final class CrossCheck {
  /** Tables whose rows can be bought, and so share one set of keys. */
  static final List<String> ITEMS =
      List.of(
          "species",
          "pipes",
          "emitters",
          "filters",
          "regulators",
          "mixes",
          "amendments",
          "mulches",
          "parts");

  private final Map<String, Map<String, Row>> tables;
  private final Collection<Problem> problems;

  CrossCheck(Map<String, Map<String, Row>> tables, Collection<Problem> problems) {
    this.tables = tables;
    this.problems = problems;
  }

  void run() {
    references("species", "caution", rows("cautions").keySet(), "cautions");
    references("amendments", "caution", rows("cautions").keySet(), "cautions");
    references("tasks", "cautions", rows("cautions").keySet(), "cautions");
    references("tasks", "after", rows("tasks").keySet(), "tasks");
    for (String column : List.of("dig_task", "lift_task", "mend_task")) {
      references("grounds", column, rows("tasks").keySet(), "tasks");
    }
    references("parts", "fits", rows("pipes").keySet(), "pipes");
    references("prices", "key", itemKeys(), "items that can be bought");
    taskOrder();
    units();
  }

  private Map<String, Row> rows(String table) {
    return tables.getOrDefault(table, Map.of());
  }

  /** Keys of all items; two items of different tables must not share one. */
  private Set<String> itemKeys() {
    Map<String, String> tableOf = new HashMap<>();
    Set<String> keys = new LinkedHashSet<>();
    for (String table : ITEMS) {
      for (Map.Entry<String, Row> entry : rows(table).entrySet()) {
        String other = tableOf.putIfAbsent(entry.getKey(), table);
        if (other != null) {
          problems.add(
              entry
                  .getValue()
                  .problem("key", quoted(entry.getKey()) + " is already a key of " + other + "."));
        }
        keys.add(entry.getKey());
      }
    }
    return keys;
  }

  private void references(String table, String column, Set<String> known, String where) {
    for (Row row : rows(table).values()) {
      for (String word : row.words(column)) {
        if (!known.contains(word)) {
          problems.add(
              row.problem(
                  column,
                  quoted(word) + " is not among the " + where + "." + Hint.of(word, known)));
        }
      }
    }
  }

  /** Reports each task that comes, directly or by others, before itself. */
  private void taskOrder() {
    Map<String, Row> tasks = rows("tasks");
    for (Map.Entry<String, Row> entry : tasks.entrySet()) {
      Set<String> before = new HashSet<>();
      List<String> open = new ArrayList<>(entry.getValue().words("after"));
      while (!open.isEmpty()) {
        String task = open.remove(open.size() - 1);
        if (before.add(task) && tasks.containsKey(task)) {
          open.addAll(tasks.get(task).words("after"));
        }
      }
      if (before.contains(entry.getKey())) {
        problems.add(
            entry
                .getValue()
                .problem(
                    "after",
                    quoted(entry.getKey())
                        + " would have to come before itself; break the circle."));
      }
    }
  }

  private void units() {
    for (Row row : rows("constants").values()) {
      Kind kind = new Values(Map.of(), row).choice("kind", Kind.class);
      if (UnitSymbol.of(row.text("unit"), kind).isEmpty()) {
        problems.add(
            row.problem(
                "unit",
                quoted(row.text("unit"))
                    + " is not a unit of the kind "
                    + row.text("kind")
                    + "; allowed is "
                    + String.join(", ", UnitSymbol.allowed(kind))
                    + "."));
      }
    }
  }

  private static String quoted(String word) {
    return "\"" + word + "\"";
  }
}
