package org.grovewright.texts;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.TreeMap;

/** A language with all its texts, dates and decimal mark. */
public final class Language {
  /** The frame with the map and the first plan; the pages by question. */
  private static final List<String> BUNDLES = List.of("messages", "pages");

  private static final List<String> TAGS = List.of("en", "es");

  /** English, in which the engine speaks. */
  public static final Language ENGLISH = new Language("en");

  private static final List<Language> ALL = List.of(ENGLISH, new Language("es"));

  private final String tag;
  private final Locale locale;
  private final Map<String, String> texts;
  private final Optional<Phrases> phrases;
  private final DateTimeFormatter date;
  private final DateTimeFormatter shortDate;
  private final DateTimeFormatter dayOfYear;

  private Language(String tag) {
    this.tag = tag;
    this.locale = Locale.forLanguageTag(tag);
    this.texts = read(locale);
    this.phrases = tag.equals("en") ? Optional.empty() : Optional.of(Phrases.read(this));
    this.date = DateTimeFormatter.ofPattern(text("format.date"), locale);
    this.shortDate = DateTimeFormatter.ofPattern(text("format.short-date"), locale);
    this.dayOfYear = DateTimeFormatter.ofPattern(text("format.day-of-year"), locale);
  }

  private static Map<String, String> read(Locale locale) {
    Map<String, String> texts = new TreeMap<>();
    for (String name : BUNDLES) {
      ResourceBundle bundle =
          ResourceBundle.getBundle(
              "org.grovewright.texts." + name,
              locale,
              Language.class.getClassLoader(),
              ResourceBundle.Control.getNoFallbackControl(
                  ResourceBundle.Control.FORMAT_PROPERTIES));
      bundle.keySet().forEach(key -> texts.put(key, bundle.getString(key)));
    }
    return Collections.unmodifiableMap(texts);
  }

  /** Tags of the languages there are, English first. */
  public static List<String> tags() {
    return TAGS;
  }

  /** The language with a tag such as {@code es}; English where there is no such language. */
  public static Language of(String tag) {
    return ALL.stream().filter(l -> l.tag.equals(tag)).findFirst().orElse(ENGLISH);
  }

  /** Tag of the language as in BCP 47. */
  public String tag() {
    return tag;
  }

  /** The locale of its month and day names. */
  public Locale locale() {
    return locale;
  }

  /** All texts of the screens by key. */
  public Map<String, String> texts() {
    return texts;
  }

  /**
   * A text of the screens.
   *
   * @param key its key in the bundle
   * @param arguments what stands in for {@code {0}}, {@code {1}} ...
   * @throws IllegalArgumentException if there is no such key
   */
  public String text(String key, Object... arguments) {
    String text = texts.get(key);
    if (text == null) {
      throw new IllegalArgumentException("no text for " + key + " in " + tag);
    }
    return arguments.length == 0 ? text : Sentence.fill(text, arguments);
  }

  /**
   * A text that depends on a count: the key with {@code .one} or {@code .other}, the count being
   * {@code {0}}. English and Spanish both have these two forms.
   */
  public String count(String key, long count) {
    return text(key + (count == 1 ? ".one" : ".other"), count);
  }

  /**
   * What the engine or the catalogue says, in this language.
   *
   * @param english what it says
   * @return its translation, or the English where there is none
   */
  public String say(String english) {
    return phrases.flatMap(p -> p.translate(english)).orElse(english);
  }

  /** Whether this language has the words for what the engine or the catalogue says. */
  public boolean canSay(String english) {
    return phrases.isEmpty() || phrases.get().translate(english).isPresent();
  }

  /** A date with its day of the week. */
  public String date(LocalDate day) {
    return date.format(day);
  }

  /** A date. */
  public String shortDate(LocalDate day) {
    return shortDate.format(day);
  }

  /** A day of the week and of the month, where the year is plain. */
  public String dayOfYear(LocalDate day) {
    return dayOfYear.format(day);
  }

  /** A month of a year. */
  public String month(YearMonth month) {
    return text("format.month-of-year", month(month.getMonthValue()), month.getYear());
  }

  /** The name of a month from 1 to 12. */
  public String month(int month) {
    return Month.of(month).getDisplayName(TextStyle.FULL_STANDALONE, locale);
  }

  /** The name of a day of the week. */
  public String weekday(DayOfWeek day) {
    return day.getDisplayName(TextStyle.FULL_STANDALONE, locale);
  }

  /** A time of day. */
  public String time(LocalTime time) {
    return time.toString();
  }

  /** A number written with a full stop, with this language's decimal mark. */
  public String decimals(String number) {
    return tag.equals("en") ? number : number.replace(".", text("format.decimal-mark"));
  }
}
