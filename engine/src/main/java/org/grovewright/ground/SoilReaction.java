package org.grovewright.ground;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.SoilTexture;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.layout.Crown;
import org.grovewright.model.Soil;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;
import org.grovewright.quantity.Working;

/**
 * Advice on lime or sulphur where the soil does not suit a species. Rates go by home garden tables
 * for the upper 15 cm; soils differ in how they hold out against a change, so the advice is a first
 * dressing and another test, and nothing is bought for it.
 */
final class SoilReaction {
  private final Soil soil;
  private final Catalogue catalogue;
  private final FigureBook book;

  SoilReaction(Soil soil, Catalogue catalogue, FigureBook book) {
    this.soil = soil;
    this.catalogue = catalogue;
    this.book = book;
  }

  void advise(List<Crown> crowns, List<Finding> findings) {
    if (soil.ph().isEmpty()) {
      findings.add(
          Finding.of(
              "ground.ph-unknown",
              Severity.NOTE,
              "",
              "The soil's pH is not given. Have it tested before buying lime, sulphur or plants"
                  + " that are particular about it."));
      return;
    }
    Map<String, Species> kinds = new LinkedHashMap<>();
    crowns.forEach(crown -> kinds.putIfAbsent(crown.species().key(), crown.species()));
    double ph = soil.ph().getAsDouble();
    for (Species species : kinds.values()) {
      if (ph < species.phMin()) {
        findings.add(advice(species, "lime", species.phMin() - ph));
      } else if (ph > species.phMax()) {
        findings.add(advice(species, "sulphur", ph - species.phMax()));
      }
    }
  }

  private Finding advice(Species species, String what, double units) {
    OptionalDouble held = fieldCapacity();
    if (held.isEmpty()) {
      return Finding.of(
          "ground." + what + "-advised",
          Severity.NOTE,
          species.key(),
          "The soil's pH is {0} units off the range of "
              + species.name()
              + ". How much "
              + what
              + " that takes depends on the soil: have a laboratory say.",
          new Quantity(units, Kind.PH));
    }
    Constant rate = catalogue.constant("ground." + what + "-" + weight(held.getAsDouble()));
    Constant once = catalogue.constant("ground." + what + "-once");
    Figure dressing =
        book.enter(
            "ground.species." + FigureBook.slug(species.key()) + "." + what,
            what.substring(0, 1).toUpperCase(Locale.ROOT)
                + what.substring(1)
                + " to bring the soil into the range of "
                + species.name(),
            units * rate.value(),
            Kind.MASS_PER_AREA,
            Working.of(
                "units of pH times rate",
                rate.source(),
                new Input("units", units, Kind.PH, "description and catalogue: species"),
                rate.as("rate")));
    String limits =
        dressing.value() > once.value()
            ? " Give no more than {1} at a time, some months apart."
            : "";
    String caveat =
        what.equals("lime")
            ? " Work it in before planting"
            : " A soil with free lime, that fizzes with vinegar, cannot be made acid: choose"
                + " another kind there. Work it in months before planting";
    return Finding.of(
        "ground." + what + "-advised",
        Severity.NOTE,
        species.key(),
        "To suit "
            + species.name()
            + " the upper soil would need about {0} of "
            + (what.equals("lime") ? "ground limestone" : "sulphur")
            + "."
            + limits
            + caveat
            + ", test again, and trust a laboratory over this rule. Wear a mask and eye protection"
            + " against the dust.",
        new Quantity(dressing.value(), Kind.MASS_PER_AREA),
        new Quantity(once.value(), Kind.MASS_PER_AREA));
  }

  private OptionalDouble fieldCapacity() {
    if (soil.fieldCapacity().isPresent()) {
      return soil.fieldCapacity();
    }
    SoilTexture texture = soil.textureKey().map(key -> catalogue.textures().get(key)).orElse(null);
    return texture == null ? OptionalDouble.empty() : OptionalDouble.of(texture.fieldCapacity());
  }

  private String weight(double fieldCapacity) {
    if (fieldCapacity < catalogue.constant("ground.light-soil").value()) {
      return "light";
    }
    return fieldCapacity < catalogue.constant("ground.heavy-soil").value() ? "medium" : "heavy";
  }
}
