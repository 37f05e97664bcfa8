package org.grovewright.ground;

import java.util.Optional;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Soil;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/** What the drainage hole says. */
public enum Drainage {
  /** No hole was dug. */
  UNKNOWN,
  /** Water stands in the hole for a day: roots drown. */
  POOR,
  /** Slower than most fruit trees like: plant high. */
  SLOW,
  /** As it should be. */
  GOOD,
  /** So fast that the soil holds little water. */
  FAST;

  /** Whether plants are set on mounds. */
  public boolean wantsMounds() {
    return this == POOR || this == SLOW;
  }

  /** Reads the test and enters its rate as {@code ground.drainage-rate}. */
  static Drainage of(Soil soil, Catalogue catalogue, FigureBook book) {
    if (soil.drainageTest().isEmpty()) {
      return UNKNOWN;
    }
    Soil.DrainageTest test = soil.drainageTest().get();
    Figure rate =
        book.enter(
            "ground.drainage-rate",
            "Fall of the water in the drainage hole",
            test.dropM() / test.seconds(),
            Kind.INFILTRATION,
            Working.of(
                "drop / time",
                "arithmetic",
                new Input("drop", test.dropM(), Kind.WATER_DEPTH, "description"),
                new Input("time", test.seconds(), Kind.WORK_TIME, "description")));
    if (rate.value() < catalogue.constant("ground.drainage-poor").value()) {
      return POOR;
    }
    if (rate.value() < catalogue.constant("ground.drainage-slow").value()) {
      return SLOW;
    }
    return rate.value() > catalogue.constant("ground.drainage-fast").value() ? FAST : GOOD;
  }

  /** The advice that goes with the class; none where drainage is good. */
  Optional<Finding> advice(Catalogue catalogue, FigureBook book) {
    if (this == GOOD) {
      return Optional.empty();
    }
    if (this == UNKNOWN) {
      return Optional.of(
          Finding.of(
              "ground.no-drainage-test",
              Severity.NOTE,
              "",
              "No drainage test is given. Before planting dig a hole as deep as the planting holes,"
                  + " fill it twice and time how fast the second filling falls; the plan takes"
                  + " drainage as good until then."));
    }
    Quantity rate = new Quantity(book.get("ground.drainage-rate").value(), Kind.INFILTRATION);
    return Optional.of(
        switch (this) {
          case POOR ->
              Finding.of(
                  "ground.drainage-poor",
                  Severity.SHORTFALL,
                  "",
                  "Water in the drainage hole falls by only {0}, slower than {1}: it stands for a"
                      + " day and roots drown. The plan sets plants on mounds, which may not be"
                      + " enough: drain the site, build raised beds, or plant elsewhere.",
                  rate,
                  limit(catalogue, "ground.drainage-poor"));
          case SLOW ->
              Finding.of(
                  "ground.drainage-slow",
                  Severity.NOTE,
                  "",
                  "Water in the drainage hole falls by {0}, slower than the {1} fruit trees want."
                      + " The plan sets plants high, on mounds.",
                  rate,
                  limit(catalogue, "ground.drainage-slow"));
          default ->
              Finding.of(
                  "ground.drainage-fast",
                  Severity.NOTE,
                  "",
                  "Water in the drainage hole falls by {0}, faster than {1}: the soil holds little"
                      + " water and feed washes out. Water little and often, feed in small doses"
                      + " and keep the ground mulched.",
                  rate,
                  limit(catalogue, "ground.drainage-fast"));
        });
  }

  private static Quantity limit(Catalogue catalogue, String key) {
    Constant constant = catalogue.constant(key);
    return new Quantity(constant.value(), constant.kind());
  }
}
