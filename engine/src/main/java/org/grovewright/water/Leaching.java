package org.grovewright.water;

import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/**
 * The share of a plant's water that must run through below its roots, so that the salt which the
 * water brings does not gather there.
 *
 * @param share the share that is planned for, 0 where the water is not salty
 * @param wanted the share that would keep the plant from suffering, at least {@code share}
 * @param inputs what it was found from
 */
public record Leaching(double share, double wanted, List<Input> inputs) {
  /** Nothing to wash out. */
  public static final Leaching NONE = new Leaching(0, 0, List.of());

  /** Where the formulas come from. */
  public static final String SOURCE =
      "leaching: Ayers and Westcot, FAO 29 (1985), and for frequent watering by emitters Keller and"
          + " Bliesner (1990)";

  /** Copies the inputs. */
  public Leaching {
    inputs = List.copyOf(inputs);
  }

  /**
   * The leaching of a species under a water.
   *
   * @param salinitySPerM electrical conductivity of the water, S/m
   */
  public static Leaching of(Species species, double salinitySPerM, Catalogue catalogue) {
    if (!(salinitySPerM > 0)) {
      return NONE;
    }
    String origin = "catalogue: species, " + species.key();
    double wanted;
    Input limit;
    if (species.salinityLimitSPerM().isPresent()) {
      double noGrowth = species.salinityLimitSPerM().getAsDouble();
      wanted = frequent(salinitySPerM, noGrowth);
      limit = new Input("EC_max, L = EC_w / (2 EC_max)", noGrowth, Kind.SALINITY, origin);
    } else {
      boolean known = species.salinityThresholdSPerM().isPresent();
      double threshold =
          known
              ? species.salinityThresholdSPerM().getAsDouble()
              : catalogue.constant("water.salinity-threshold-assumed").value();
      wanted = conventional(salinitySPerM, threshold);
      limit =
          new Input(
              "EC_e, L = EC_w / (5 EC_e - EC_w)",
              threshold,
              Kind.SALINITY,
              known ? origin : "assumed: salinity that many fruit trees bear");
    }
    double most = catalogue.constant("water.most-leaching").value();
    double share = Math.min(most, wanted);
    return new Leaching(
        share,
        wanted,
        List.of(
            new Input("L, leaching share", share, Kind.SHARE, "salinity of water and species"),
            new Input("EC_w", salinitySPerM, Kind.SALINITY, "description"),
            limit));
  }

  /**
   * Leaching requirement under frequent watering by emitters, {@code L = EC_w / (2 EC_max)}; Keller
   * and Bliesner (1990).
   *
   * @param waterSPerM conductivity of the water
   * @param noGrowthSPerM conductivity of the soil's saturation extract at which nothing grows
   */
  public static double frequent(double waterSPerM, double noGrowthSPerM) {
    return Math.min(1, waterSPerM / (2 * noGrowthSPerM));
  }

  /**
   * Leaching requirement after Rhoades, {@code L = EC_w / (5 EC_e - EC_w)}; Ayers and Westcot, FAO
   * 29 (1985) equation 9. The whole water where no leaching would do.
   *
   * @param waterSPerM conductivity of the water
   * @param soilSPerM conductivity of the soil's saturation extract that the plant bears
   */
  public static double conventional(double waterSPerM, double soilSPerM) {
    double below = 5 * soilSPerM - waterSPerM;
    return below > 0 ? Math.min(1, waterSPerM / below) : 1;
  }

  /** Remarks on the saltiness of a grove's water; none where it is not known or fresh. */
  static List<Finding> findings(Grove grove, Catalogue catalogue) {
    double water = grove.supply().salinitySPerM().orElse(0);
    if (!(water > 0)) {
      return List.of();
    }
    List<Finding> findings = new ArrayList<>();
    double least = 1;
    double most = 0;
    double soil = water * catalogue.constant("water.soil-over-water-salinity").value();
    for (String key :
        grove.plantings().stream().map(Planting::speciesKey).distinct().sorted().toList()) {
      Species species = catalogue.species().get(key);
      Leaching leaching = of(species, water, catalogue);
      least = Math.min(least, leaching.share());
      most = Math.max(most, leaching.share());
      double threshold = species.salinityThresholdSPerM().orElse(Double.POSITIVE_INFINITY);
      if (leaching.wanted() > leaching.share()) {
        findings.add(
            Finding.of(
                "water.too-salty",
                Severity.SHORTFALL,
                "",
                "Water with a salinity of {0} is too salty for "
                    + species.name()
                    + ": {1} of it would have to run through below the roots, more than the {2} that"
                    + " are planned at most. Mix it with fresher water or plant something else.",
                new Quantity(water, Kind.SALINITY),
                new Quantity(leaching.wanted(), Kind.SHARE),
                new Quantity(leaching.share(), Kind.SHARE)));
      } else if (soil > threshold) {
        findings.add(
            Finding.of(
                "water.salt-slows-growth",
                Severity.NOTE,
                "",
                "Under this water the soil comes to about {0}, above the {1} from which "
                    + species.name()
                    + " grows less.",
                new Quantity(soil, Kind.SALINITY),
                new Quantity(threshold, Kind.SALINITY)));
      }
    }
    if (most > 0) {
      findings.add(
          0,
          Finding.of(
              "water.leaching",
              Severity.NOTE,
              "",
              "The water's salinity of {0} asks for some water that runs through below the roots and"
                  + " takes the salt along: {1} to {2} of what each plant is given, which the needs"
                  + " have in them. Winter rain may do part of it.",
              new Quantity(water, Kind.SALINITY),
              new Quantity(least, Kind.SHARE),
              new Quantity(most, Kind.SHARE)));
    }
    return findings;
  }
}
