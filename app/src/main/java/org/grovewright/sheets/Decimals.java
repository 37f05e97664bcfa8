package org.grovewright.sheets;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as text, the same in every locale: a full stop for the decimals, a plain minus. */
final class Decimals {
  private static final char NARROW_NO_BREAK_SPACE = '\u202f';

  private Decimals() {}

  /** A value with a fixed number of decimals, thousands parted by narrow spaces from 10 000 on. */
  static String fixed(double value, int decimals) {
    return grouped(plain(value, decimals));
  }

  /** A value with a fixed number of decimals and no grouping, for machines. */
  static String plain(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
  }

  /** A value with so many significant digits and without trailing zeros. */
  static String significant(double value, int digits) {
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded =
        BigDecimal.valueOf(value)
            .round(new MathContext(digits, RoundingMode.HALF_UP))
            .stripTrailingZeros();
    int exponent = rounded.precision() - rounded.scale() - 1;
    if (exponent < -4 || exponent > 9) {
      String mantissa = rounded.scaleByPowerOfTen(-exponent).stripTrailingZeros().toPlainString();
      return mantissa + "e" + exponent;
    }
    return rounded.toPlainString();
  }

  /** A coordinate of a drawing: at most two decimals, no trailing zeros. */
  static String coordinate(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  private static String grouped(String plain) {
    int point = plain.indexOf('.');
    int end = point < 0 ? plain.length() : point;
    int start = plain.startsWith("-") ? 1 : 0;
    if (end - start < 5) {
      return plain;
    }
    StringBuilder text = new StringBuilder(plain);
    for (int i = end - 3; i > start; i -= 3) {
      text.insert(i, NARROW_NO_BREAK_SPACE);
    }
    return text.toString();
  }
}
