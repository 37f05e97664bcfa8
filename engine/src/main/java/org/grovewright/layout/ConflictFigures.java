package org.grovewright.layout;

import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Enters the three numbers of a conflict: distance, need and year. */
final class ConflictFigures {
  private final FigureBook book;

  ConflictFigures(FigureBook book) {
    this.book = book;
  }

  /** Stable id of the pair: {@code layout.conflict.<plant>.<what>[.<other>]}. */
  static String id(String plantId, String what, String otherId) {
    String start = "layout.conflict." + FigureBook.slug(plantId) + "." + what;
    return otherId.isEmpty() ? start : start + "." + FigureBook.slug(otherId);
  }

  void enter(String id, double distanceM, String distanceFormula, double neededM, Working need) {
    book.enter(
        id + ".distance",
        "Distance there is",
        distanceM,
        Kind.LENGTH,
        Working.of(distanceFormula, "plane geometry"));
    book.enter(id + ".needed", "Distance needed", neededM, Kind.LENGTH, need);
  }

  void enterYear(String id, double years, String formula, Input... inputs) {
    book.enter(
        id + ".year",
        "Year of growth in which it begins, 0 being the planting year",
        Math.floor(years),
        Kind.YEAR,
        Working.of(formula, "bisection on the growth curves", inputs));
  }
}
