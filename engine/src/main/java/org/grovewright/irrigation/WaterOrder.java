package org.grovewright.irrigation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.finding.Finding.Severity;
import org.grovewright.irrigation.Programme.PlantSupply;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Quantity;

/** In which order to give water where it does not reach for all. */
final class WaterOrder {
  private static final int NAMED = 8;

  private WaterOrder() {}

  /**
   * A remark with the order, if a plant falls short: main plants before companions and ground
   * cover, and of them the youngest first, whose roots reach least. Common practice, no source.
   *
   * @param enough share of the need below which a plant falls short
   */
  static Optional<Finding> of(
      Grove grove, Catalogue catalogue, List<PlantSupply> supplies, double enough) {
    Optional<PlantSupply> worst =
        supplies.stream()
            .filter(s -> s.needsM3PerS() > 0 && s.share() < enough)
            .min(Comparator.comparingDouble(PlantSupply::share));
    if (worst.isEmpty()) {
      return Optional.empty();
    }
    int year = worst.get().year();
    int month = worst.get().month();
    List<PlantSupply> then =
        supplies.stream().filter(s -> s.year() == year && s.month() == month).toList();
    double needs = then.stream().mapToDouble(PlantSupply::needsM3PerS).sum();
    double missing =
        then.stream().mapToDouble(s -> Math.max(0, s.needsM3PerS() - s.getsM3PerS())).sum();
    List<String> order = order(grove, catalogue, then);
    String more =
        order.size() > NAMED ? ", then the other " + (order.size() - NAMED) + " plants" : "";
    return Optional.of(
        Finding.of(
            "timer.water-order",
            Severity.NOTE,
            "",
            "Water is shortest in month {0} of year {1}: the plants need {2} and {3} of it is"
                + " missing. When you have some to bring by hand, bring it in this order, youngest"
                + " main plants first: "
                + order.stream().limit(NAMED).collect(Collectors.joining(", "))
                + more
                + ".",
            new Quantity(month, Kind.COUNT),
            new Quantity(year, Kind.COUNT),
            new Quantity(needs, Kind.DAILY_WATER),
            new Quantity(missing, Kind.DAILY_WATER)));
  }

  private static List<String> order(Grove grove, Catalogue catalogue, List<PlantSupply> supplies) {
    List<Integer> plants = new ArrayList<>();
    for (PlantSupply supply : supplies) {
      if (supply.needsM3PerS() > 0 && !plants.contains(supply.plant())) {
        plants.add(supply.plant());
      }
    }
    plants.sort(
        Comparator.comparing((Integer plant) -> role(grove, catalogue, plant))
            .thenComparing(plant -> planted(grove, plant), Comparator.reverseOrder())
            .thenComparing(Comparator.naturalOrder()));
    return plants.stream().map(plant -> named(grove, catalogue, plant)).toList();
  }

  private static Species.Role role(Grove grove, Catalogue catalogue, int plant) {
    return catalogue.species().get(grove.plantings().get(plant).speciesKey()).role();
  }

  private static LocalDate planted(Grove grove, int plant) {
    return grove.plantings().get(plant).plantedOn();
  }

  private static String named(Grove grove, Catalogue catalogue, int plant) {
    Planting planting = grove.plantings().get(plant);
    String species = catalogue.species().get(planting.speciesKey()).name();
    return planting.id() + " (" + species.toLowerCase(Locale.ROOT) + ")";
  }
}
