package org.grovewright.buying;

import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.EmitterType;
import org.grovewright.catalogue.Filter;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.Part;
import org.grovewright.catalogue.Pipe;
import org.grovewright.catalogue.Regulator;
import org.grovewright.catalogue.SoilMix;
import org.grovewright.catalogue.Species;
import org.grovewright.quantity.Kind;

/** What buying reads of the catalogue about an item, whatever table it is in. */
final class Goods {
  private final Catalogue catalogue;

  Goods(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /** The item's name in plain words; its key if the catalogue does not name it. */
  String name(String key) {
    return Optional.<String>empty()
        .or(() -> Optional.ofNullable(catalogue.pipes().get(key)).map(Pipe::name))
        .or(() -> Optional.ofNullable(catalogue.emitters().get(key)).map(EmitterType::name))
        .or(() -> Optional.ofNullable(catalogue.parts().get(key)).map(Part::name))
        .or(() -> Optional.ofNullable(catalogue.filters().get(key)).map(Filter::name))
        .or(() -> Optional.ofNullable(catalogue.regulators().get(key)).map(Regulator::name))
        .or(() -> Optional.ofNullable(catalogue.mixes().get(key)).map(SoilMix::name))
        .or(() -> Optional.ofNullable(catalogue.amendments().get(key)).map(Amendment::name))
        .or(() -> Optional.ofNullable(catalogue.mulches().get(key)).map(Mulch::name))
        .or(() -> Optional.ofNullable(catalogue.species().get(key)).map(Species::name))
        .orElse(key);
  }

  /** Bulk density of soil, amendments and mulch, kg/m3. */
  private OptionalDouble density(String key) {
    if (catalogue.mixes().containsKey(key)) {
      return OptionalDouble.of(catalogue.mixes().get(key).looseDensityKgPerM3());
    }
    if (catalogue.amendments().containsKey(key)) {
      return OptionalDouble.of(catalogue.amendments().get(key).densityKgPerM3());
    }
    if (catalogue.mulches().containsKey(key)) {
      return OptionalDouble.of(catalogue.mulches().get(key).densityKgPerM3());
    }
    return OptionalDouble.empty();
  }

  /** An amount in another measure; empty where there is no way from one to the other. */
  OptionalDouble convert(String key, double amount, Kind from, Kind to) {
    if (from == to) {
      return OptionalDouble.of(amount);
    }
    OptionalDouble density = density(key);
    if (density.isPresent() && from == Kind.MASS && to == Kind.BULK_VOLUME) {
      return OptionalDouble.of(amount / density.getAsDouble());
    }
    if (density.isPresent() && from == Kind.BULK_VOLUME && to == Kind.MASS) {
      return OptionalDouble.of(amount * density.getAsDouble());
    }
    return OptionalDouble.empty();
  }

  /** The fitting that joins two ends of a pipe. */
  Optional<Part> coupling(String pipeKey) {
    return catalogue.parts().values().stream()
        .filter(p -> p.role().equals("coupling") && p.fits().equals(pipeKey))
        .findFirst();
  }
}
