package org.grovewright.formats.description;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.formats.units.Measure;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Planting;
import org.grovewright.model.Point;

/** Reads what is said of a plant besides its name and place. */
final class PlantReader {
  private static final String BARE_ROOT = "bare root";
  private static final Range CONTAINER = new Range(0, 2);

  private final Catalogue catalogue;

  PlantReader(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /**
   * What plants of one entry have in common.
   *
   * @param speciesKey catalogue key
   * @param cultivar cultivar, if said
   * @param plantedOn day of planting
   * @param containerM3 volume of the container, 0 for bare root
   * @param measured what was measured of it
   * @param keptSpreadM spread it is pruned to, metres
   * @param keptHeightM height it is pruned to, metres
   */
  record Kind(
      String speciesKey,
      Optional<String> cultivar,
      LocalDate plantedOn,
      double containerM3,
      Planting.Measured measured,
      OptionalDouble keptSpreadM,
      OptionalDouble keptHeightM) {
    Planting at(String id, Point place, Optional<String> rowId) {
      return new Planting(
          id,
          speciesKey,
          cultivar,
          place,
          rowId,
          plantedOn,
          containerM3,
          measured,
          keptSpreadM,
          keptHeightM);
    }
  }

  /** Reads an entry; what the row says of all its plants holds where the entry is silent. */
  Kind kind(Fields fields, Optional<LocalDate> rowPlanted, OptionalDouble rowContainer) {
    Optional<String> species =
        fields
            .need("species", "the catalogue's key of the plant, such as apple")
            .flatMap(v -> v.key(catalogue.species(), "plant"));
    Optional<LocalDate> planted = fields.get("planted").flatMap(Value::date);
    if (rowPlanted.isEmpty() && !fields.has("planted")) {
      fields.need("planted", "the day it was or will be planted, such as 2026-03-14");
    }
    OptionalDouble container =
        fields.get("container").map(PlantReader::container).orElse(OptionalDouble.empty());
    if (rowContainer.isEmpty() && !fields.has("container")) {
      fields.need("container", "the volume of its pot, such as 20 L or 5 gal, or bare root");
    }
    Planting.Measured measured =
        new Planting.Measured(
            fields.quantity("measured_spread", Measure.LENGTH, 0.02, 40),
            fields.quantity("measured_height", Measure.LENGTH, 0.02, 60),
            fields.get("measured_on").flatMap(Value::date));
    LocalDate set = planted.or(() -> rowPlanted).orElse(LocalDate.EPOCH);
    if (measured.on().filter(set::isAfter).isPresent()) {
      fields.problem(
          "measured_on",
          "{0} is before the plant is set on {1}; give a day on which it stood here, or put planted"
              + " right",
          measured.on().get(),
          set);
    }
    return new Kind(
        species.orElse(""),
        fields.get("cultivar").flatMap(v -> v.text("the name of the cultivar")),
        set,
        container.orElse(rowContainer.orElse(Double.NaN)),
        measured,
        fields.quantity("kept_spread", Measure.LENGTH, 0.1, 40),
        fields.quantity("kept_height", Measure.LENGTH, 0.1, 60));
  }

  /** The volume of a pot, 0 for a plant that comes without one. */
  static OptionalDouble container(Value value) {
    boolean bareRoot = value.scalarIs(text -> Nearest.plain(text).equals(BARE_ROOT));
    return bareRoot ? OptionalDouble.of(0) : value.quantity(Measure.VOLUME, CONTAINER);
  }
}
