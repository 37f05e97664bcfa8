package org.grovewright.trench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Point;
import org.grovewright.model.Shape;

/** Small pieces of land for the tests of ways. */
final class Grounds {
  static final Catalogue CATALOGUE = CatalogueFiles.load().catalogue();
  static final TrenchRules RULES = TrenchRules.of(CATALOGUE);
  static final Burial NO_FROST = new Burial(0, true, 0, 0.6);
  static final TrenchCosts COSTS =
      new TrenchCosts(CATALOGUE, RULES, NO_FROST, new TrenchCosts.Prices(2, 0.16, 5), 10.0 / 3600);

  private Grounds() {}

  static GroundMap map(List<Fixture> fixtures) {
    return new GroundMap(fixtures, List.of(), List.of(), List.of(), RULES);
  }

  static WayFinder finder(Fixture... fixtures) {
    return new WayFinder(map(List.of(fixtures)), COSTS);
  }

  static Fixture box(FixtureKind kind, double x0, double y0, double x1, double y1) {
    return new Fixture(
        kind + " " + x0 + " " + y0,
        kind,
        new Shape.Area(
            List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1))),
        2.5,
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static Fixture tree(double x, double y, double trunkRadiusM) {
    return new Fixture(
        "tree " + x,
        FixtureKind.EXISTING_TREE,
        new Shape.Round(new Point(x, y), trunkRadiusM),
        8,
        OptionalDouble.empty());
  }

  static Fixture cable(double depthM, Point... line) {
    return new Fixture(
        "cable",
        FixtureKind.BURIED_SERVICE,
        new Shape.Line(List.of(line)),
        0,
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.of(new Fixture.Service(Fixture.Carries.ELECTRIC, OptionalDouble.of(depthM))));
  }
}
