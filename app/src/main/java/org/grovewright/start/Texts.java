package org.grovewright.start;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers and words as descriptions have them. */
final class Texts {
  private static final ObjectMapper JSON = new ObjectMapper();

  private Texts() {}

  /** A number without needless zeros. */
  static String number(double value) {
    BigDecimal number = BigDecimal.valueOf(value).setScale(6, RoundingMode.HALF_EVEN);
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  /** A length to the hundredth. */
  static String length(double value) {
    return number(BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN).doubleValue());
  }

  /** A text in quotes: every JSON text is a YAML text too. */
  static String quoted(String text) {
    try {
      return JSON.writeValueAsString(text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
