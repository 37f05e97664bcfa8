package org.grovewright.layout;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.model.Planting;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/**
 * The crown of each plant at the moments an owner plans by: when it comes into the ground, three
 * years into the plan and full-grown.
 */
public final class CrownSizes {
  private static final double LATER_YEARS = 3;
  private static final String CURVE =
      "S = M exp(ln(S0 / M) exp(-k t)), at most the spread kept by pruning; S0 = a V^(1/3), at most"
          + " 0.855 M; k so that S = 0.95 M at t = Y";
  private static final String SOURCE =
      "Gompertz (1825) for the curve; that trees keep to it is " + Working.COMMON_PRACTICE;

  private final Catalogue catalogue;
  private final FigureBook book;

  private CrownSizes(Catalogue catalogue, FigureBook book) {
    this.catalogue = catalogue;
    this.book = book;
  }

  /** Enters the figures of all crowns. */
  static void enter(List<Crown> crowns, Catalogue catalogue, FigureBook book) {
    CrownSizes sizes = new CrownSizes(catalogue, book);
    crowns.forEach(sizes::enter);
  }

  /** Id of the figure of a plant's first crown. */
  public static String firstId(String plantId) {
    return id(plantId, "first");
  }

  /** Id of the figure of a plant's crown three years into the plan. */
  public static String laterId(String plantId) {
    return id(plantId, "year-3");
  }

  /** Id of the figure of a plant's full-grown crown. */
  public static String fullId(String plantId) {
    return id(plantId, "full");
  }

  private static String id(String plantId, String when) {
    return "layout.plant." + FigureBook.slug(plantId) + ".spread-" + when;
  }

  private void enter(Crown crown) {
    String plant = crown.planting().id();
    double first = Math.max(0, crown.ageAt(0));
    book.enter(
        firstId(plant),
        "Crown of "
            + plant
            + (crown.standing() ? " at the start" : " when it comes into the ground"),
        2 * crown.firstRadiusM(),
        Kind.LENGTH,
        grown(crown, first));
    book.enter(
        laterId(plant),
        "Crown of " + plant + " three years into the plan",
        crown.spreadM(LATER_YEARS),
        Kind.LENGTH,
        grown(crown, crown.ageAt(LATER_YEARS)));
    book.enter(
        fullId(plant),
        "Crown of " + plant + " full-grown",
        2 * crown.fullRadiusM(),
        Kind.LENGTH,
        grown(crown, crown.ageAt(crown.horizonYears())));
  }

  private Working grown(Crown crown, double age) {
    Planting planting = crown.planting();
    String origin = "catalogue: species, " + crown.species().key();
    Constant perContainer = catalogue.constant("growth.crown-per-container");
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        new Input("M (mature spread)", crown.species().matureSpreadM(), Kind.LENGTH, origin));
    inputs.add(
        new Input("Y (years to mature)", crown.species().yearsToMature(), Kind.NUMBER, origin));
    inputs.add(
        planting.containerM3() > 0
            ? new Input("V (container)", planting.containerM3(), Kind.BULK_VOLUME, "description")
            : catalogue.constant("growth.bare-root-as-container").as("V (bare roots, as if)"));
    inputs.add(perContainer.as("a"));
    inputs.add(new Input("t (years since planting)", age, Kind.NUMBER, "dates of the description"));
    Planting.Measured measured = planting.measured();
    String when = measured.on().map(day -> "measured on " + day).orElse("measured at the start");
    if (measured.spreadM().isPresent()) {
      inputs.add(
          new Input(
              when + "; moves t so that S fits",
              measured.spreadM().getAsDouble(),
              Kind.LENGTH,
              "description"));
    } else if (measured.heightM().isPresent()) {
      inputs.add(
          new Input(
              when + "; moves t so that the height fits",
              measured.heightM().getAsDouble(),
              Kind.LENGTH,
              "description"));
    }
    planting
        .keptSpreadM()
        .ifPresent(
            spread -> inputs.add(new Input("kept by pruning", spread, Kind.LENGTH, "description")));
    return new Working(CURVE, inputs, SOURCE);
  }
}
