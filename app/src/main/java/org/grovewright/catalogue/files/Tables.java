package org.grovewright.catalogue.files;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All tables of the catalogue. */
public final class Tables {
  private static final Map<String, Table<?>> ALL = new LinkedHashMap<>();

  static {
    List.<Table<?>>of(
            PlantTables.SPECIES,
            SoilTables.TEXTURES,
            WateringTables.PIPES,
            WateringTables.EMITTERS,
            WateringTables.FILTERS,
            WateringTables.REGULATORS,
            SoilTables.MIXES,
            SoilTables.AMENDMENTS,
            SoilTables.MULCHES,
            WateringTables.PARTS,
            WorkTables.TASKS,
            WorkTables.CAUTIONS,
            WorkTables.CLEARANCES,
            WorkTables.GROUNDS,
            NumberTables.CONSTANTS,
            NumberTables.PRICES)
        .forEach(table -> ALL.put(table.name(), table));
  }

  private Tables() {}

  /** All tables by name, in the order in which they are listed. */
  public static Map<String, Table<?>> all() {
    return Collections.unmodifiableMap(ALL);
  }
}
