package org.grovewright.buying;

import org.grovewright.quantity.FigureBook;

/** Names of the figures of buying. */
final class Ids {
  private Ids() {}

  /** {@code buy.<item-key>}. */
  static String of(String itemKey) {
    return "buy." + FigureBook.slugOfKey(itemKey);
  }
}
