package org.grovewright.ground;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Crown;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/** Works out the hole of each plant that is still to be planted. */
final class Holes {
  private static final String FRUSTUM = "pi h / 12 (D^2 + D d + d^2)";
  private static final String GEOMETRY = "frustum of a cone";

  private final Catalogue catalogue;
  private final Chosen chosen;
  private final Drainage drainage;
  private final double soilDepthM;
  private final FigureBook book;
  private final List<Finding> findings;

  Holes(
      Catalogue catalogue,
      Chosen chosen,
      Drainage drainage,
      double soilDepthM,
      FigureBook book,
      List<Finding> findings) {
    this.catalogue = catalogue;
    this.chosen = chosen;
    this.drainage = drainage;
    this.soilDepthM = soilDepthM;
    this.book = book;
    this.findings = findings;
  }

  PlantGround of(Crown crown) {
    String plant = crown.planting().id();
    String id = "ground.plant." + FigureBook.slug(plant) + ".";
    Frustum ball = ball(crown);
    Figure ballVolume = ballFigures(id, crown, ball);

    Constant depthOfRaise = catalogue.constant("ground.raise-share");
    double raise = drainage.wantsMounds() ? depthOfRaise.value() * ball.heightM() : 0;
    double depth = ball.heightM() - raise;
    if (depth > soilDepthM) {
      depth = soilDepthM;
      raise = ball.heightM() - depth;
      findings.add(tooShallow(plant, ball.heightM(), raise));
    }
    Input ratio =
        crown.isMain()
            ? chosen.holeWidthRatio()
            : catalogue.constant("ground.hole-width-ratio-companion").as("w");
    Constant narrowing = catalogue.constant("ground.hole-bottom-ratio");
    double top = ratio.value() * ball.topM();
    Frustum hole = new Frustum(top, Math.max(ball.topM(), narrowing.value() * top), depth);
    Figure holeVolume = holeFigures(id, ball, hole, raise, ratio, narrowing);

    double moundVolume = 0;
    if (raise > 0) {
      Constant run = catalogue.constant("ground.mound-run");
      Frustum mound = new Frustum(top, top + 2 * run.value() * raise, raise);
      moundVolume = mound.volumeM3();
      book.enter(
          id + "mound-volume",
          "Volume of the mound with the part of the ball in it",
          moundVolume,
          Kind.BULK_VOLUME,
          Working.of(
              FRUSTUM + " with d = D + 2 m h",
              GEOMETRY,
              new Input("D", top, Kind.LENGTH, id + "hole-width"),
              new Input("h", raise, Kind.LENGTH, id + "raise"),
              run.as("m")));
    }
    return backfill(plant, id, ball, ballVolume, hole, holeVolume, raise, moundVolume);
  }

  private Frustum ball(Crown crown) {
    double container = crown.planting().containerM3();
    if (container > 0) {
      return Frustum.of(
          container,
          catalogue.constant("ground.ball-height-ratio").value(),
          catalogue.constant("ground.ball-taper").value());
    }
    Constant width = catalogue.constant("ground.bare-root-width");
    Constant depth = catalogue.constant("ground.bare-root-depth");
    findings.add(
        Finding.of(
            "ground.bare-root-assumed",
            Severity.NOTE,
            crown.planting().id(),
            "No container is given for "
                + crown.planting().id()
                + ", so it is taken as bare-rooted with roots {0} wide and {1} deep. Spread the"
                + " roots over a cone of soil in the hole and never let them dry.",
            new Quantity(width.value(), Kind.LENGTH),
            new Quantity(depth.value(), Kind.LENGTH)));
    return new Frustum(width.value(), width.value(), depth.value());
  }

  /** Enters the ball's size and mass; the volume that the ball takes up in the hole is returned. */
  private Figure ballFigures(String id, Crown crown, Frustum ball) {
    double container = crown.planting().containerM3();
    Constant ratio = catalogue.constant("ground.ball-height-ratio");
    Constant taper = catalogue.constant("ground.ball-taper");
    Constant density = catalogue.constant("ground.ball-density");
    Figure volume =
        book.enter(
            id + "ball-volume",
            "Volume of the root ball",
            container,
            Kind.BULK_VOLUME,
            Working.given("volume of the container; roots without one take up no room"));
    Working width =
        container > 0
            ? Working.of(
                "D = cube root of 12 V / (pi a (1 + k + k^2))",
                GEOMETRY,
                Input.from("V", volume),
                ratio.as("a (height over width)"),
                taper.as("k (bottom over top)"))
            : Working.of(
                "usual width of bare roots",
                Working.COMMON_PRACTICE,
                catalogue.constant("ground.bare-root-width").as("D"));
    Figure top =
        book.enter(id + "ball-width", "Width of the root ball", ball.topM(), Kind.LENGTH, width);
    book.enter(
        id + "ball-height",
        "Height of the root ball",
        ball.heightM(),
        Kind.LENGTH,
        container > 0
            ? Working.of("a D", GEOMETRY, ratio.as("a"), Input.from("D", top))
            : Working.of(
                "usual depth of bare roots",
                Working.COMMON_PRACTICE,
                catalogue.constant("ground.bare-root-depth").as("h")));
    book.enter(
        id + "ball-mass",
        "Mass of the root ball when moist",
        container * density.value(),
        Kind.MASS,
        Working.of("V rho", density.source(), Input.from("V", volume), density.as("rho")));
    return volume;
  }

  private Figure holeFigures(
      String id, Frustum ball, Frustum hole, double raise, Input ratio, Constant narrowing) {
    Figure width =
        book.enter(
            id + "hole-width",
            "Width of the hole at the top",
            hole.topM(),
            Kind.LENGTH,
            Working.of(
                "w D",
                "two to three times the ball: university extension services",
                ratio,
                Input.from("D", book.get(id + "ball-width"))));
    if (raise > 0) {
      book.enter(
          id + "raise",
          "Height of the top of the ball above the ground",
          raise,
          Kind.LENGTH,
          Working.of(
              "share of the ball set high, or what does not fit into the soil over rock",
              Working.COMMON_PRACTICE,
              Input.from("h", book.get(id + "ball-height")),
              catalogue.constant("ground.raise-share").as("share"),
              new Input("soil depth", soilDepthM, Kind.LENGTH, "description")));
    }
    Figure depth =
        book.enter(
            id + "hole-depth",
            "Depth of the hole",
            hole.heightM(),
            Kind.LENGTH,
            Working.of(
                raise > 0 ? "h - raise" : "h, no deeper than the ball, so that it does not sink",
                "university extension services",
                Input.from("h", book.get(id + "ball-height")),
                new Input("raise", raise, Kind.LENGTH, "0 but on a mound")));
    return book.enter(
        id + "hole-volume",
        "Volume of the hole",
        hole.volumeM3(),
        Kind.BULK_VOLUME,
        Working.of(
            FRUSTUM + ", d = b D but not less than the ball",
            GEOMETRY,
            Input.from("D", width),
            Input.from("h", depth),
            narrowing.as("b"),
            new Input("ball", ball.topM(), Kind.LENGTH, id + "ball-width")));
  }

  private static Finding tooShallow(String plant, double ball, double raise) {
    return Finding.of(
        "ground.soil-shallow-for-ball",
        Severity.NOTE,
        plant,
        "The root ball of "
            + plant
            + " is {0} high and does not fit into the soil above rock, hardpan or water; the plan"
            + " sets it {1} above the ground in a mound.",
        new Quantity(ball, Kind.LENGTH),
        new Quantity(raise, Kind.LENGTH));
  }

  private PlantGround backfill(
      String plant,
      String id,
      Frustum ball,
      Figure ballVolume,
      Frustum hole,
      Figure holeVolume,
      double raise,
      double moundVolume) {
    Figure backfill =
        book.enter(
            id + "backfill",
            "Volume to fill about the ball",
            Math.max(0, holeVolume.value() + moundVolume - ballVolume.value()),
            Kind.BULK_VOLUME,
            Working.of(
                "hole + mound - ball",
                "arithmetic",
                Input.from("hole", holeVolume),
                new Input(
                    "mound",
                    moundVolume,
                    Kind.BULK_VOLUME,
                    moundVolume > 0 ? id + "mound-volume" : "no mound"),
                Input.from("ball", ballVolume)));
    // A high mound may ask for more native soil than its hole yields; mix makes up the rest, but
    // where no mix is wanted the soil has to come from elsewhere on the land.
    boolean mixed = chosen.mix().isPresent();
    double wanted = (1 - chosen.mixShare().value()) * backfill.value();
    double nativeSoil = mixed ? Math.min(wanted, holeVolume.value()) : backfill.value();
    double placed = backfill.value() - nativeSoil;
    Figure mixPlaced =
        book.enter(
            id + "mix-placed",
            "Bought mix in the backfill, settled",
            placed,
            Kind.BULK_VOLUME,
            Working.of(
                "s backfill, and more where a mound needs more soil than the hole yields",
                chosen.mixShare().origin(),
                mixed ? chosen.mixShare() : new Input("s", 0, Kind.SHARE, "no mix"),
                Input.from("backfill", backfill)));
    double settlement = chosen.mix().map(mix -> mix.settlement()).orElse(0.0);
    Figure bought =
        book.enter(
            id + "mix-bought",
            "Bought mix as delivered",
            placed / (1 - settlement),
            Kind.BULK_VOLUME,
            Working.of(
                "placed / (1 - c)",
                Working.COMMON_PRACTICE,
                Input.from("placed", mixPlaced),
                new Input("c", settlement, Kind.SHARE, "catalogue: mixes, settlement")));
    Figure dug =
        book.enter(
            id + "dug-loose",
            "Heap of soil dug from the hole",
            holeVolume.value() * (1 + chosen.swell().value()),
            Kind.BULK_VOLUME,
            Working.of(
                "hole (1 + e)",
                "swell of dug soil",
                Input.from("hole", holeVolume),
                chosen.swell()));
    double surplus = Math.max(0, holeVolume.value() - nativeSoil) * (1 + chosen.swell().value());
    book.enter(
        id + "surplus",
        "Dug soil left over, loose",
        surplus,
        Kind.BULK_VOLUME,
        Working.of(
            "(hole - native soil put back) (1 + e)",
            "native soil firmed back to the density it had, common practice, no source",
            Input.from("hole", holeVolume),
            new Input("native", nativeSoil, Kind.BULK_VOLUME, "backfill less mix placed"),
            chosen.swell()));
    return new PlantGround(
        plant,
        ball,
        book.get(id + "ball-mass").value(),
        hole,
        raise,
        moundVolume,
        backfill.value(),
        nativeSoil,
        placed,
        bought.value(),
        dug.value(),
        surplus,
        amendments(id, backfill));
  }

  private Map<String, Double> amendments(String id, Figure backfill) {
    Map<String, Double> masses = new LinkedHashMap<>();
    for (Amendment amendment : chosen.amendments()) {
      Figure mass =
          book.enter(
              id + "amendment." + FigureBook.slug(amendment.key()),
              amendment.name() + " in the backfill",
              amendment.ratePlantingKgPerM3() * backfill.value(),
              Kind.MASS,
              Dressing.working(amendment, backfill));
      masses.put(amendment.key(), mass.value());
    }
    return masses;
  }
}
