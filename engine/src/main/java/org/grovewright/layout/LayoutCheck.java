package org.grovewright.layout;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;
import org.locationtech.jts.geom.Geometry;

/**
 * Judges the distances of a grove by the size its plants will have.
 *
 * <p>Figures entered: {@code layout.area}, {@code layout.slope}, {@code layout.crown-area}, {@code
 * layout.crown-share}, {@code layout.area-per-main-plant}, {@code layout.plant.<id>.nearest} for
 * each main plant, {@code .spread-first}, {@code .spread-year-3} and {@code .spread-full} of every
 * plant, and for each conflict {@code layout.conflict.<plant>.plant.<other>}, {@code
 * .fixture.<thing>} or {@code .boundary} with {@code .distance}, {@code .needed} and {@code .year}.
 */
public final class LayoutCheck {
  private LayoutCheck() {}

  /**
   * Checks a grove and enters the figures.
   *
   * @throws IllegalArgumentException if a plant's species is not in the catalogue
   */
  public static LayoutReport of(Grove grove, Catalogue catalogue, FigureBook book) {
    List<Crown> crowns = new ArrayList<>();
    grove.plantings().forEach(plant -> crowns.add(Crown.of(plant, grove, catalogue)));
    Terrain terrain = Terrain.of(grove.site());

    figures(grove, crowns, terrain, book);
    CrownSizes.enter(crowns, catalogue, book);
    FixedThings things = new FixedThings(grove, catalogue, book);
    List<Conflict> conflicts = conflicts(crowns, things, catalogue, book);

    List<Finding> findings = new ArrayList<>();
    conflicts.forEach(conflict -> findings.add(conflict.finding()));
    findings.addAll(things.unknownClearances());
    if (!Shapes.isSimple(grove.site().boundary())) {
      findings.add(
          Finding.of(
              "layout.boundary-unclear",
              Severity.NOTE,
              "",
              "The corners of the land do not make one plain outline: there are fewer than three,"
                  + " or its sides cross. Give them in order round the land."));
    }
    findings.addAll(new SiteFit(grove, catalogue).check(crowns, terrain));
    return new LayoutReport(conflicts, findings);
  }

  /** The conflicts that {@link #of} finds, and nothing else; takes a small part of its time. */
  public static List<Conflict> conflicts(Grove grove, Catalogue catalogue) {
    List<Crown> crowns = new ArrayList<>();
    grove.plantings().forEach(plant -> crowns.add(Crown.of(plant, grove, catalogue)));
    FigureBook aside = new FigureBook();
    return conflicts(crowns, new FixedThings(grove, catalogue, aside), catalogue, aside);
  }

  private static List<Conflict> conflicts(
      List<Crown> crowns, FixedThings things, Catalogue catalogue, FigureBook book) {
    List<Conflict> conflicts = new ArrayList<>();
    conflicts.addAll(new PlantSpacing(catalogue, book).check(crowns));
    conflicts.addAll(things.check(crowns));
    conflicts.addAll(things.checkBoundary(crowns));
    return conflicts;
  }

  private static void figures(Grove grove, List<Crown> crowns, Terrain terrain, FigureBook book) {
    Geometry land = Shapes.outline(grove.site().boundary());
    Figure area =
        book.enter(
            "layout.area",
            "Area of the land",
            land.getArea(),
            Kind.AREA,
            Working.of("area within the corners of the boundary", "plane geometry"));
    book.enter(
        "layout.slope",
        "Fall of the land as a whole",
        terrain.slope().gradient(),
        Kind.SLOPE,
        Working.of(
            "steepest fall of the least-squares plane through the spot heights",
            "least squares",
            new Input("n", terrain.spotCount(), Kind.COUNT, "description")));
    Geometry cover =
        Shapes.union(
            crowns.stream()
                .map(crown -> Shapes.disc(crown.planting().at(), crown.fullRadiusM()))
                .toList());
    Geometry inside = Shapes.within(cover, land);
    Figure crownArea =
        book.enter(
            "layout.crown-area",
            "Ground under crowns when all are full-grown",
            inside.getArea(),
            Kind.AREA,
            Working.of(
                "area of the union of all full crowns within the boundary; overlap counts once",
                "plane geometry"));
    if (area.value() > 0) {
      book.enter(
          "layout.crown-share",
          "Share of the land under crowns when all are full-grown",
          crownArea.value() / area.value(),
          Kind.SHARE,
          Working.of("Ac / A", "arithmetic", Input.from("Ac", crownArea), Input.from("A", area)));
    }
    List<Crown> mains = crowns.stream().filter(Crown::isMain).toList();
    if (!mains.isEmpty() && area.value() > 0) {
      book.enter(
          "layout.area-per-main-plant",
          "Land for each main plant",
          area.value() / mains.size(),
          Kind.AREA,
          Working.of(
              "A / n",
              "arithmetic",
              Input.from("A", area),
              new Input("n", mains.size(), Kind.COUNT, "description")));
    }
    for (Crown crown : mains) {
      nearest(crown, mains, book);
    }
  }

  private static void nearest(Crown crown, List<Crown> mains, FigureBook book) {
    Crown nearest = null;
    double distance = Double.POSITIVE_INFINITY;
    for (Crown other : mains) {
      double between = crown.planting().at().distanceTo(other.planting().at());
      if (other != crown && between < distance) {
        distance = between;
        nearest = other;
      }
    }
    if (nearest != null) {
      book.enter(
          "layout.plant." + FigureBook.slug(crown.planting().id()) + ".nearest",
          "Distance from "
              + crown.planting().id()
              + " to the nearest main plant, "
              + nearest.planting().id(),
          distance,
          Kind.LENGTH,
          Working.of("least distance from stem to stem", "plane geometry"));
    }
  }
}
