package org.grovewright.sheets;

import java.util.Locale;
import org.grovewright.buying.ShoppingLine;
import org.grovewright.catalogue.Catalogue;

/** Where goods are bought: lines of the shopping list of one sort stand together. */
public enum Shelf {
  PLANTS("Plants"),
  GROUND("Soil, mulch and fertiliser"),
  PARTS("Pipe, parts and tools");

  private final String title;

  Shelf(String title) {
    this.title = title;
  }

  /** What it is called in English. */
  String title() {
    return title;
  }

  /** Stable name, lower case. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Where a line's item is bought. */
  public static Shelf of(ShoppingLine line, Catalogue catalogue) {
    String key = line.itemKey();
    if (catalogue.species().containsKey(key)) {
      return PLANTS;
    }
    return catalogue.mixes().containsKey(key)
            || catalogue.amendments().containsKey(key)
            || catalogue.mulches().containsKey(key)
        ? GROUND
        : PARTS;
  }
}
