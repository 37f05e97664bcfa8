package org.grovewright.texts;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is to be said to somebody, with names, numbers and typed words apart from its own words, so
 * that each face can say it in the language of its reader.
 *
 * @param shape the words in English, in which {@code {0}}, {@code {1}} ... stand for the arguments;
 *     the translations are kept by it
 * @param arguments sentences, which are said in the reader's language in their turn, and texts,
 *     which stay as they are
 */
public record Sentence(String shape, List<Object> arguments) {
  /** Nothing, in the place of a part that may be left out. */
  public static final Sentence NOTHING = new Sentence("", List.of());

  private static final Pattern PLACE = Pattern.compile("\\{([0-9]{1,2})\\}");

  /** A part of a sentence as a sentence of its own. */
  private static final String WHOLE = "{0}.";

  /** Copies the arguments. */
  public Sentence {
    arguments = List.copyOf(arguments);
  }

  /**
   * A sentence or a part of one.
   *
   * @param shape the words in English, in which {@code {0}} ... stand for the arguments
   * @param arguments sentences, or whatever else, which is said as it writes itself
   */
  public static Sentence of(String shape, Object... arguments) {
    List<Object> kept = new ArrayList<>();
    for (Object argument : arguments) {
      kept.add(argument instanceof Sentence ? argument : String.valueOf(argument));
    }
    return new Sentence(shape, kept);
  }

  /** Words of the engine or the catalogue, which have lines of their own. */
  public static Sentence term(String english) {
    return new Sentence(english, List.of());
  }

  /** A text that is no words of ours and is said as it is. */
  public static Sentence asIs(String text) {
    return new Sentence("{0}", List.of(text));
  }

  /** This part of a sentence as a sentence of its own: with a capital letter and a full stop. */
  public Sentence whole() {
    return new Sentence(WHOLE, List.of(this));
  }

  /** The sentence in a language; words that it has no translation of stay English. */
  public String in(Language language) {
    return said(language::say);
  }

  /** The sentence in English. */
  public String english() {
    return said(words -> words);
  }

  private String said(UnaryOperator<String> translation) {
    Object[] values =
        arguments.stream()
            .map(one -> one instanceof Sentence part ? part.said(translation) : one)
            .toArray();
    String text = fill(shape.isEmpty() ? shape : translation.apply(shape), values);
    return shape.equals(WHOLE)
        ? text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1)
        : text;
  }

  /** A text with values in the places of {@code {0}}, {@code {1}} ...; others stay as they are. */
  static String fill(String text, Object... values) {
    Matcher place = PLACE.matcher(text);
    StringBuilder filled = new StringBuilder();
    while (place.find()) {
      int index = Integer.parseInt(place.group(1));
      String value = index < values.length ? String.valueOf(values[index]) : place.group();
      place.appendReplacement(filled, Matcher.quoteReplacement(value));
    }
    return place.appendTail(filled).toString();
  }

  @Override
  public String toString() {
    return english();
  }
}
