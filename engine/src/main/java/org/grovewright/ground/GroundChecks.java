package org.grovewright.ground;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Crown;
import org.grovewright.layout.Shapes;
import org.grovewright.model.Fixture;
import org.grovewright.model.FixtureKind;
import org.grovewright.model.Grove;
import org.grovewright.model.Point;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** What is to be said about digging, lifting and the depth of the soil. */
final class GroundChecks {
  private final Grove grove;
  private final Catalogue catalogue;
  private final List<Finding> findings;

  GroundChecks(Grove grove, Catalogue catalogue, List<Finding> findings) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.findings = findings;
  }

  /**
   * Checks the holes.
   *
   * @param crowns plants to be planted
   * @param holes their holes, in the same order
   */
  void holes(List<Crown> crowns, List<PlantGround> holes) {
    if (holes.isEmpty()) {
      return;
    }
    findings.add(
        Finding.of(
            "ground.locate-services",
            Severity.NOTE,
            "",
            "Before any digging have buried pipes and cables located and marked; in many countries"
                + " one call does it and the law asks for it. Services not on your sketch may be"
                + " there all the same."));
    for (int i = 0; i < holes.size(); i++) {
      services(crowns.get(i), holes.get(i));
    }
    overlaps(crowns, holes);
    lifting(holes);
    missingSoil(holes);
  }

  private void services(Crown crown, PlantGround hole) {
    double tolerance = catalogue.constant("ground.dig-tolerance").value();
    for (Fixture fixture : grove.site().fixtures()) {
      double gap = Shapes.distance(fixture.shape(), crown.planting().at()) - hole.hole().topM() / 2;
      String plant = crown.planting().id();
      if (fixture.kind() == FixtureKind.BURIED_SERVICE && gap < tolerance) {
        findings.add(
            Finding.of(
                "ground.hole-near-service",
                gap <= 0 ? Severity.SHORTFALL : Severity.NOTE,
                plant,
                gap <= 0
                    ? "The hole of "
                        + plant
                        + " lies over the buried service "
                        + fixture.id()
                        + ". Do not dig there: move the plant."
                    : "The hole of "
                        + plant
                        + " comes within {0} of the buried service "
                        + fixture.id()
                        + ". Within {1} of its mark dig by hand only and with care, no bars, picks"
                        + " or machines, and drive no stakes; better, move the plant.",
                new Quantity(Math.max(0, gap), Kind.LENGTH),
                new Quantity(tolerance, Kind.LENGTH)));
      }
      if (fixture.kind() == FixtureKind.SEPTIC_FIELD && gap <= 0) {
        findings.add(
            Finding.of(
                "ground.hole-in-septic-field",
                Severity.SHORTFALL,
                plant,
                "The hole of "
                    + plant
                    + " cuts into the septic field "
                    + fixture.id()
                    + ". Do not dig there: it breaks drain lines and the soil is foul. Move the"
                    + " plant."));
      }
    }
  }

  private void overlaps(List<Crown> crowns, List<PlantGround> holes) {
    Set<String> pairs = new LinkedHashSet<>();
    for (int i = 0; i < holes.size(); i++) {
      Point a = crowns.get(i).planting().at();
      for (int j = i + 1; j < holes.size(); j++) {
        double reach = (holes.get(i).hole().topM() + holes.get(j).hole().topM()) / 2;
        if (a.distanceTo(crowns.get(j).planting().at()) < reach) {
          pairs.add(holes.get(i).plantId() + " and " + holes.get(j).plantId());
        }
      }
    }
    if (!pairs.isEmpty()) {
      findings.add(
          Finding.of(
              "ground.holes-overlap",
              Severity.NOTE,
              "",
              "Holes run into each other: "
                  + String.join(", ", pairs)
                  + ". Dig and fill them together; the plan counts each in full, so a little soil"
                  + " and mix will be left."));
    }
  }

  private void lifting(List<PlantGround> holes) {
    double limit = catalogue.constant("ground.lift-limit").value();
    double heaviest = 0;
    int heavy = 0;
    for (PlantGround hole : holes) {
      heaviest = Math.max(heaviest, hole.ballMassKg());
      heavy += hole.ballMassKg() > limit ? 1 : 0;
    }
    if (heavy > 0) {
      findings.add(
          Finding.of(
              "ground.heavy-balls",
              Severity.NOTE,
              "",
              "{0} of the root balls weigh more than {1} when moist, the heaviest about {2}. Lift"
                  + " them with two or more people or roll them on a cart, and hold the container,"
                  + " not the trunk.",
              new Quantity(heavy, Kind.COUNT),
              new Quantity(limit, Kind.MASS),
              new Quantity(heaviest, Kind.MASS)));
    }
  }

  private void missingSoil(List<PlantGround> holes) {
    double dug = holes.stream().mapToDouble(hole -> hole.hole().volumeM3()).sum();
    double wanted = holes.stream().mapToDouble(PlantGround::nativeM3).sum();
    if (wanted > dug) {
      findings.add(
          Finding.of(
              "ground.soil-short",
              Severity.SHORTFALL,
              "",
              "The mounds need {0} more soil than the holes yield. Take it from paths or swales on"
                  + " your own land, or let the plan use bought mix.",
              new Quantity(wanted - dug, Kind.BULK_VOLUME)));
    }
  }

  /** Compares the depth of the soil with the roots of the kinds planted. */
  void soilDepth(List<Crown> crowns) {
    double soil = grove.soil().depthM();
    Set<String> seen = new LinkedHashSet<>();
    for (Crown crown : crowns) {
      if (crown.species().rootDepthM() > soil && seen.add(crown.species().key())) {
        findings.add(
            Finding.of(
                "ground.soil-shallow",
                Severity.NOTE,
                crown.species().key(),
                "Roots of "
                    + crown.species().name()
                    + " usually go {0} deep and the soil is {1} deep. Expect a smaller plant that"
                    + " dries out sooner and holds less firmly; break up a hardpan before planting.",
                new Quantity(crown.species().rootDepthM(), Kind.LENGTH),
                new Quantity(soil, Kind.LENGTH)));
      }
    }
  }
}
