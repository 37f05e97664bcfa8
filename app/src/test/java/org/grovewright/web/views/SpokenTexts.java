package org.grovewright.web.views;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Figure;

/** All that the pages let the engine and the catalogue say of a plan, in English. */
final class SpokenTexts {
  private SpokenTexts() {}

  static Set<String> of(Plan plan) {
    Set<String> said = new LinkedHashSet<>();
    plan.findings().forEach(f -> said.add(f.message()));
    plan.shopping()
        .lines()
        .forEach(
            line -> {
              said.add(line.name());
              line.uses().forEach(use -> said.add(use.purpose()));
              line.cutting()
                  .ifPresent(
                      c ->
                          c.lengths().forEach(l -> l.cuts().forEach(cut -> said.add(cut.label()))));
            });
    plan.care()
        .events()
        .forEach(
            event -> {
              said.add(event.title());
              said.add(event.message());
            });
    reachable(plan)
        .forEach(
            figure -> {
              said.add(figure.label());
              said.add(figure.working().formula());
              said.add(figure.working().source());
              figure
                  .working()
                  .inputs()
                  .forEach(
                      input -> {
                        said.add(input.symbol());
                        if (!plan.figures().containsKey(input.origin())) {
                          said.add(input.origin());
                        }
                      });
            });
    return said;
  }

  /** The figures whose working opens from some page, and all that these rest on. */
  private static Collection<Figure> reachable(Plan plan) {
    Map<String, Figure> reached = new LinkedHashMap<>();
    Deque<String> open = new ArrayDeque<>(Pages.figures(Pages.all(plan, "en")));
    while (!open.isEmpty()) {
      String id = open.pop();
      Figure figure = plan.figures().get(id);
      if (figure != null && reached.put(id, figure) == null) {
        figure.working().inputs().forEach(input -> open.push(input.origin()));
      }
    }
    return reached.values();
  }

  static Set<String> of(Catalogue catalogue) {
    Set<String> said = new LinkedHashSet<>();
    catalogue.species().values().forEach(row -> said.add(row.name()));
    catalogue.textures().values().forEach(row -> said.add(row.name()));
    catalogue.tasks().values().forEach(row -> said.add(row.name()));
    catalogue
        .cautions()
        .values()
        .forEach(
            row -> {
              said.add(row.title());
              said.add(row.text());
            });
    catalogue.amendments().values().forEach(row -> said.add(row.name()));
    catalogue.mixes().values().forEach(row -> said.add(row.name()));
    catalogue.mulches().values().forEach(row -> said.add(row.name()));
    catalogue.emitters().values().forEach(row -> said.add(row.name()));
    catalogue.pipes().values().forEach(row -> said.add(row.name()));
    catalogue.parts().values().forEach(row -> said.add(row.name()));
    catalogue.filters().values().forEach(row -> said.add(row.name()));
    catalogue.regulators().values().forEach(row -> said.add(row.name()));
    return said;
  }
}
