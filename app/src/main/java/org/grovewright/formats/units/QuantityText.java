package org.grovewright.formats.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import org.grovewright.formats.words.Nearest;

/**
 * A number with its unit as a person writes it: {@code 18 m}, {@code 3/4 in}, {@code 6 ft 3 in},
 * {@code -2.5 °C}.
 *
 * @param value the number in the unit of the measure
 * @param unit the unit written last
 * @param word the word for it, as written
 */
public record QuantityText(double value, Unit<?> unit, String word) {
  private static final String NUMBER =
      "[+-]?(?:\\d+\\s+\\d+/\\d+|\\d+/\\d+|(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)";
  private static final Pattern TERM =
      Pattern.compile("\\s*(" + NUMBER + ")\\s*([^\\d\\s+-].*?)\\s*");
  // A second term starts at a number that follows a space: "6 ft 3 in" but not "m2" or "kg/m3".
  private static final Pattern TERM_GAP = Pattern.compile("(?<=[^\\d\\s/.])\\s+(?=[+-]?[\\d.])");
  private static final Pattern BARE = Pattern.compile("\\s*" + NUMBER + "\\s*");
  private static final Pattern NOT_FINITE =
      Pattern.compile("\\s*[+-]?\\.?(nan|inf|infinity)\\b.*", Pattern.CASE_INSENSITIVE);
  private static final Pattern THOUSANDS = Pattern.compile("[+-]?\\d{1,3}(,\\d{3})+(?!\\d).*");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d+,\\d+.*");
  private static final Pattern TON = Pattern.compile("tons?", Pattern.CASE_INSENSITIVE);
  private static final int LONGEST = 60;
  private static final double GREATEST = 1e12;
  private static final Map<Conversion, UnitConverter> TO_MEASURE = new ConcurrentHashMap<>();

  /**
   * Reads a quantity.
   *
   * @param text number and unit; a bare 0 needs none, unless it is a temperature
   * @param measure what is wanted
   * @throws NotAQuantityException if the text is no such quantity, with a sentence that says why
   */
  public static QuantityText read(String text, Measure measure) throws NotAQuantityException {
    String trimmed = text.strip();
    String shown = Nearest.shorten(trimmed);
    if (trimmed.length() > LONGEST) {
      throw new NotAQuantityException("{0} is too long for {1}", shown, measure.wanted());
    }
    if (NOT_FINITE.matcher(trimmed).matches()) {
      throw new NotAQuantityException(
          "'{0}' is not a number to plan with; give {1}", shown, measure.wanted());
    }
    if (BARE.matcher(trimmed).matches()) {
      double bare = finite(decimal(trimmed, shown), shown);
      if (bare == 0 && measure != Measure.TEMPERATURE) {
        return zero(measure);
      }
      throw new NotAQuantityException("'{0}' has no unit; give {1}", shown, measure.wanted());
    }
    double sum = 0;
    Unit<?> last = null;
    String word = "";
    String[] terms = TERM_GAP.split(trimmed, -1);
    for (int i = 0; i < terms.length; i++) {
      Matcher term = TERM.matcher(terms[i]);
      if (!term.matches()) {
        throw notRead(shown, measure);
      }
      Unit<?> unit = unit(term.group(2), shown, measure);
      double value = convert(decimal(term.group(1), shown), unit, measure, shown);
      if (i > 0 && (term.group(1).startsWith("-") || measure == Measure.TEMPERATURE)) {
        throw notRead(shown, measure);
      }
      sum += i > 0 && trimmed.startsWith("-") ? -value : value;
      last = unit;
      word = term.group(2).strip();
    }
    return new QuantityText(sum, last, word);
  }

  /** Nothing is nothing in any unit; it takes that of the measure's first example. */
  private static QuantityText zero(Measure measure) {
    String word = measure.firstUnit();
    return new QuantityText(0, UnitWords.find(word).orElseThrow(), word);
  }

  private static NotAQuantityException notRead(String shown, Measure measure) {
    if (THOUSANDS.matcher(shown).matches()) {
      return new NotAQuantityException(
          "'{0}' has commas in the number; leave them out: {1}", shown, measure.examples());
    }
    if (DECIMAL_COMMA.matcher(shown).matches()) {
      return new NotAQuantityException(
          "'{0}' has a comma in the number; write a decimal point: 1.5, not 1,5", shown);
    }
    return new NotAQuantityException("'{0}' is not understood; give {1}", shown, measure.wanted());
  }

  private static Unit<?> unit(String word, String shown, Measure measure)
      throws NotAQuantityException {
    if (word.startsWith(",")) {
      throw notRead(shown, measure);
    }
    if (TON.matcher(word.strip()).matches()) {
      throw new NotAQuantityException(
          "'{0}': a ton is not the same weight everywhere; write kg, lb or t (1000 kg)", shown);
    }
    Optional<Unit<?>> unit = UnitWords.find(word);
    if (unit.isEmpty()) {
      throw new NotAQuantityException(
          "'{0}' has the unknown unit '{1}'{2}; give {3}",
          shown, word, Nearest.hint(word, UnitWords.all()), measure.wanted());
    }
    if (!measure.accepts(unit.get())) {
      throw new NotAQuantityException(
          "'{0}' is {1}; give {2}", shown, Measure.nounOf(unit.get()), measure.wanted());
    }
    return unit.get();
  }

  private static BigDecimal decimal(String number, String shown) throws NotAQuantityException {
    String tidy = number.strip();
    int slash = tidy.indexOf('/');
    if (slash < 0) {
      // Checked as a double first: an exponent of millions must never reach exact arithmetic.
      finite(Double.parseDouble(tidy), shown);
      BigDecimal value = new BigDecimal(tidy);
      return value.signum() == 0 ? BigDecimal.ZERO : value;
    }
    String[] whole = tidy.substring(0, slash).split("\\s+", -1);
    double below = Double.parseDouble(tidy.substring(slash + 1));
    if (below == 0) {
      throw new NotAQuantityException("'{0}' divides by zero", shown);
    }
    double above = Double.parseDouble(whole[whole.length - 1]) / below;
    double front = whole.length > 1 ? Double.parseDouble(whole[0]) : 0;
    double sum = tidy.startsWith("-") && whole.length > 1 ? front - above : front + above;
    return BigDecimal.valueOf(finite(sum, shown));
  }

  private static double finite(BigDecimal value, String shown) throws NotAQuantityException {
    return finite(value.doubleValue(), shown);
  }

  private static double finite(double value, String shown) throws NotAQuantityException {
    if (!(Math.abs(value) <= GREATEST)) {
      throw new NotAQuantityException("'{0}' is too large to be meant", shown);
    }
    return value;
  }

  private static double convert(BigDecimal number, Unit<?> from, Measure measure, String shown)
      throws NotAQuantityException {
    // Far below anything meant, exact fractions of it would have thousands of digits.
    if (number.signum() != 0 && Math.abs(number.doubleValue()) < 1e-300) {
      throw new NotAQuantityException("'{0}' is too small to be meant", shown);
    }
    return TO_MEASURE
        .computeIfAbsent(new Conversion(from, measure), Conversion::converter)
        .convert(number)
        .doubleValue();
  }

  /** Finding a converter takes far longer than converting, so the few that there are are kept. */
  private record Conversion(Unit<?> from, Measure measure) {
    UnitConverter converter() {
      try {
        return from.getConverterToAny(measure.unit());
      } catch (IncommensurableException e) {
        throw new IllegalStateException("units were checked before: " + from + measure, e);
      }
    }
  }

  /** A value of the measure written in the unit of this text, with three digits that matter. */
  public String inSameUnit(double valueOfMeasure, Measure measure) {
    return written(converted(valueOfMeasure, measure).round(new MathContext(3)));
  }

  /**
   * Another value in the unit this one was written in, to the hundredth of it.
   *
   * @param valueOfMeasure in the unit of the measure
   */
  public String hundredthsInSameUnit(double valueOfMeasure, Measure measure) {
    return written(converted(valueOfMeasure, measure).setScale(2, RoundingMode.HALF_UP));
  }

  private BigDecimal converted(double valueOfMeasure, Measure measure) {
    return BigDecimal.valueOf(
        new Conversion(unit, measure).converter().inverse().convert(valueOfMeasure));
  }

  private String written(BigDecimal value) {
    return value.stripTrailingZeros().toPlainString() + " " + word;
  }
}
