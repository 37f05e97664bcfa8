package org.grovewright.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Climate;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** Whether the species suit the cold, the soil and the slope of the site. */
final class SiteFit {
  private final Grove grove;
  private final Catalogue catalogue;

  SiteFit(Grove grove, Catalogue catalogue) {
    this.grove = grove;
    this.catalogue = catalogue;
  }

  List<Finding> check(List<Crown> crowns, Terrain terrain) {
    List<Finding> findings = new ArrayList<>();
    Map<String, Species> kinds = new LinkedHashMap<>();
    crowns.forEach(crown -> kinds.putIfAbsent(crown.species().key(), crown.species()));
    for (Species species : kinds.values()) {
      cold(species, findings);
      reaction(species, findings);
      salt(species, findings);
    }
    slope(crowns, terrain, findings);
    heights(crowns, terrain, findings);
    return findings;
  }

  private void cold(Species species, List<Finding> findings) {
    Climate climate = grove.climate();
    double normal =
        climate.normals().stream().mapToDouble(Climate.MonthNormal::tminC).min().orElseThrow();
    Climate.DayWeather coldest =
        climate.daily().stream()
            .min(Comparator.comparingDouble(Climate.DayWeather::tminC))
            .orElse(null);
    Quantity limit = new Quantity(species.coldLimitC(), Kind.TEMPERATURE);
    if (coldest != null && coldest.tminC() < species.coldLimitC()) {
      findings.add(
          Finding.of(
              "layout.cold",
              Severity.SHORTFALL,
              species.key(),
              species.name()
                  + " survives down to {0} when mature, but "
                  + coldest.date()
                  + " of the weather given went down to {1}. Choose a hardier kind, or the warmest"
                  + " place and protection on cold nights; young plants bear less than old ones.",
              limit,
              new Quantity(coldest.tminC(), Kind.TEMPERATURE)));
      return;
    }
    if (normal < species.coldLimitC()) {
      findings.add(
          Finding.of(
              "layout.cold",
              Severity.SHORTFALL,
              species.key(),
              species.name()
                  + " survives down to {0} when mature, but the usual night of the coldest month"
                  + " goes down to {1}. Choose a hardier kind.",
              limit,
              new Quantity(normal, Kind.TEMPERATURE)));
      return;
    }
    Constant margin = catalogue.constant("layout.cold-margin");
    if (coldest == null && normal - margin.value() < species.coldLimitC()) {
      findings.add(
          Finding.of(
              "layout.cold",
              Severity.NOTE,
              species.key(),
              species.name()
                  + " survives down to {0} when mature and the usual night of the coldest month is"
                  + " at {1}; the coldest night of a year may go down to {2}. Be ready to protect it,"
                  + " above all while it is young.",
              limit,
              new Quantity(normal, Kind.TEMPERATURE),
              new Quantity(normal - margin.value(), Kind.TEMPERATURE)));
    }
  }

  private void reaction(Species species, List<Finding> findings) {
    if (grove.soil().ph().isEmpty()) {
      return;
    }
    double ph = grove.soil().ph().getAsDouble();
    if (ph >= species.phMin() && ph <= species.phMax()) {
      return;
    }
    findings.add(
        Finding.of(
            "layout.soil-reaction",
            Severity.NOTE,
            species.key(),
            "The soil's pH of {0} is "
                + (ph < species.phMin() ? "below" : "above")
                + " the range of {1} to {2} that suits "
                + species.name()
                + ".",
            new Quantity(ph, Kind.PH),
            new Quantity(species.phMin(), Kind.PH),
            new Quantity(species.phMax(), Kind.PH)));
  }

  private void salt(Species species, List<Finding> findings) {
    if (grove.soil().test().salinitySPerM().isEmpty()
        || species.salinityThresholdSPerM().isEmpty()) {
      return;
    }
    double soil = grove.soil().test().salinitySPerM().getAsDouble();
    double threshold = species.salinityThresholdSPerM().getAsDouble();
    if (soil > threshold) {
      findings.add(
          Finding.of(
              "layout.soil-salinity",
              Severity.SHORTFALL,
              species.key(),
              "The soil's salinity of {0} is above the {1} from which growth of "
                  + species.name()
                  + " falls off. Leach the soil before planting, or choose a tougher kind.",
              new Quantity(soil, Kind.SALINITY),
              new Quantity(threshold, Kind.SALINITY)));
    }
  }

  private void slope(List<Crown> crowns, Terrain terrain, List<Finding> findings) {
    Constant steep = catalogue.constant("layout.steep-slope");
    double steepest = terrain.slope().gradient();
    String place = "";
    for (Crown crown : crowns) {
      double gradient = terrain.slopeAt(crown.planting().at()).gradient();
      if (gradient > steepest) {
        steepest = gradient;
        place = crown.planting().id();
      }
    }
    if (steepest > steep.value()) {
      findings.add(
          Finding.of(
              "layout.steep",
              Severity.NOTE,
              place,
              "The ground falls by {0}"
                  + (place.isEmpty() ? "" : " at " + place)
                  + ". Above {1} bare soil washes away and loaded barrows run: run rows along the"
                  + " contour, keep the ground covered, and have terraces or walls designed by"
                  + " someone who knows them.",
              new Quantity(steepest, Kind.SLOPE),
              new Quantity(steep.value(), steep.kind())));
    }
  }

  private void heights(List<Crown> crowns, Terrain terrain, List<Finding> findings) {
    if (terrain.spotCount() < 2) {
      String basis = terrain.spotCount() == 0 ? "No spot heights are" : "Only one spot height is";
      findings.add(
          Finding.of(
              "layout.level-assumed",
              Severity.NOTE,
              "",
              basis + " given, so the ground is taken as level."));
      return;
    }
    double beyond = 0;
    for (Crown crown : crowns) {
      beyond = Math.max(beyond, terrain.beyondM(crown.planting().at()));
    }
    if (beyond > terrain.extentM() / 10) {
      findings.add(
          Finding.of(
              "layout.heights-carried-on",
              Severity.NOTE,
              "",
              "Some plants stand up to {0} outside the measured spot heights; the ground there is"
                  + " carried on from the slope between them.",
              new Quantity(beyond, Kind.LENGTH)));
    }
  }
}
