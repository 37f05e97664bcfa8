package org.grovewright.catalogue.files;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * One column of a table.
 *
 * @param name name in the header of the file; it ends in the unit where there is one
 * @param type what its cells hold
 * @param meaning what it means, in plain words
 * @param required whether a cell must be filled
 * @param unit unit of a number as written in the file, or empty text
 * @param min least allowed number
 * @param max greatest allowed number
 * @param multiplier with {@code divisor}, turns the number of the file into SI: {@code number *
 *     multiplier / divisor}; two factors keep 13.6 mm exactly 0.0136 m
 * @param divisor see {@code multiplier}
 * @param choices allowed words of a choice, in the order in which they are listed
 */
public record Column(
    String name,
    Type type,
    String meaning,
    boolean required,
    String unit,
    double min,
    double max,
    double multiplier,
    double divisor,
    List<String> choices) {

  /** What the cells of a column hold. */
  public enum Type {
    /** A name in lower case letters, digits, hyphens and points. */
    KEY("a key of lower case letters, digits, hyphens and points"),
    /** Several keys parted by spaces. */
    KEYS("keys parted by spaces"),
    /** Free text. */
    TEXT("some text"),
    /** A number with a decimal point. */
    NUMBER("a number"),
    /** A number without a fraction. */
    WHOLE("a whole number"),
    /** Yes or no. */
    YES_NO("yes or no"),
    /** One of a few words. */
    CHOICE("one of"),
    /** Code of a currency. */
    CURRENCY("an ISO 4217 code of three capital letters"),
    /** Months 1 to 12 parted by spaces. */
    MONTHS("months 1 to 12 parted by spaces");

    private final String words;

    Type(String words) {
      this.words = words;
    }
  }

  /** Copies the choices. */
  public Column {
    choices = List.copyOf(choices);
  }

  static Column key(String meaning) {
    return plain("key", Type.KEY, meaning);
  }

  static Column reference(String name, String meaning) {
    return plain(name, Type.KEY, meaning);
  }

  static Column keys(String name, String meaning) {
    return plain(name, Type.KEYS, meaning).optional();
  }

  static Column text(String name, String meaning) {
    return plain(name, Type.TEXT, meaning);
  }

  static Column yesNo(String name, String meaning) {
    return plain(name, Type.YES_NO, meaning);
  }

  static Column months(String name, String meaning) {
    return plain(name, Type.MONTHS, meaning).optional();
  }

  static Column currency(String name, String meaning) {
    return plain(name, Type.CURRENCY, meaning);
  }

  static Column source() {
    return text("source", "where the values of the row come from");
  }

  static Column choice(String name, String meaning, List<String> choices) {
    return new Column(name, Type.CHOICE, meaning, true, "", 0, 0, 1, 1, choices);
  }

  static <E extends Enum<E>> Column choice(String name, String meaning, Class<E> words) {
    return choice(
        name, meaning, Arrays.stream(words.getEnumConstants()).map(Column::word).toList());
  }

  static Column number(String name, String unit, double min, double max, String meaning) {
    return new Column(name, Type.NUMBER, meaning, true, unit, min, max, 1, 1, List.of());
  }

  static Column whole(String name, String unit, int min, int max, String meaning) {
    return new Column(name, Type.WHOLE, meaning, true, unit, min, max, 1, 1, List.of());
  }

  private static Column plain(String name, Type type, String meaning) {
    return new Column(name, type, meaning, true, "", 0, 0, 1, 1, List.of());
  }

  /** The constant of an enumeration as a word of the files. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The same column, whose cells may be empty. */
  Column optional() {
    return new Column(name, type, meaning, false, unit, min, max, multiplier, divisor, choices);
  }

  /** The same column, whose numbers are multiplied to give SI. */
  Column times(double factor) {
    return new Column(name, type, meaning, required, unit, min, max, factor, 1, choices);
  }

  /** The same column, whose numbers are divided to give SI. */
  Column over(double factor) {
    return new Column(name, type, meaning, required, unit, min, max, 1, factor, choices);
  }

  /** Whether an owner's file must have it; an owner need not say where their values come from. */
  public boolean neededOfOwners() {
    return required && !name.equals("source");
  }

  /** What a cell may hold, in plain words. */
  public String allowed() {
    return switch (type) {
      case NUMBER, WHOLE ->
          type.words
              + " from "
              + Numbers.plain(min)
              + " to "
              + Numbers.plain(max)
              + (unit.isEmpty() ? "" : " " + unit);
      case CHOICE -> type.words + " " + String.join(", ", choices);
      default -> type.words;
    };
  }
}
