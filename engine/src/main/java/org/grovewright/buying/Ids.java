package org.grovewright.buying;

import org.grovewright.quantity.FigureBook;

/** Names of the figures of buying. */
final class Ids {
  private Ids() {}

  /** {@code buy.<item-key>}. */
  static String of(String itemKey) {
    StringBuilder id = new StringBuilder("buy");
    for (String part : itemKey.split("\\.")) {
      id.append('.').append(FigureBook.slug(part));
    }
    return id.toString();
  }
}
