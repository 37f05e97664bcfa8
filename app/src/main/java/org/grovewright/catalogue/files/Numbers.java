package org.grovewright.catalogue.files;

import java.math.BigDecimal;

/** Numbers as they are written in the files. */
final class Numbers {
  private Numbers() {}

  /** The shortest plain form of a number, without exponent or idle zeros. */
  static String plain(double number) {
    BigDecimal decimal = BigDecimal.valueOf(number).stripTrailingZeros();
    return decimal.signum() == 0 ? "0" : decimal.toPlainString();
  }
}
