package org.grovewright.texts;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Translations of whole English phrases.
 *
 * <p>A phrase may have gaps. {@code <plant>} takes any words as they are (an owner's name); {@code
 * <size:n>} takes a number, {@code <size:q>} the place of a quantity such as {@code {0}}; {@code
 * <item:term>} takes a phrase that is translated in turn and {@code <species:lower>} one without
 * its capital; {@code <items:terms>} takes several, parted by commas or semicolons; {@code
 * <plants:named>} takes kinds with the names of single plants; {@code <day:date>} takes a date or
 * month of ISO 8601 or as the sheets write it. A text that is no phrase as a whole is taken apart
 * into its sentences. Places of quantities such as {@code {0}} stay as they are.
 */
public final class Phrases {
  private static final Pattern GAP = Pattern.compile("<([a-z]+)(?::([a-z]+))?>");
  private static final Pattern SENTENCES = Pattern.compile("(?<=[.!?])\\s+(?=[\\p{Lu}{0-9])");
  private static final Pattern WORD = Pattern.compile("\\p{L}{3,}");

  /** Words of formulas that are the same in every language. */
  private static final Set<String> SYMBOLS =
      Set.of(
          "sum", "exp", "max", "min", "ceil", "sqrt", "rho", "kPa", "Tmax", "Tmin", "pmin", "Cmin");

  private static final Pattern ENGLISH_DATE =
      Pattern.compile("(\\p{L}+ )?([0-9]{1,2} )?\\p{Lu}\\p{Ll}{2,8}( [0-9]{4})?");
  private static final DateTimeFormatter ENGLISH_DATES =
      DateTimeFormatter.ofPattern(
          "[EEEE d MMMM uuuu][d MMMM uuuu][MMMM uuuu][MMMM]", Locale.ENGLISH);

  /** Where one part of a list ends and the next begins with a quantity. */
  private static final Pattern QUANTITIES = Pattern.compile(", (?=\\{[0-9])");

  private static final String AND = " and ";

  private static final int REMEMBERED = 20_000;

  private final Map<String, String> plain;
  private final List<Template> templates;
  private final Language language;
  private final Map<String, Optional<String>> known = new ConcurrentHashMap<>();

  private Phrases(Map<String, String> entries, Language language) {
    this.language = language;
    this.plain = new HashMap<>();
    this.templates = new ArrayList<>();
    entries.forEach(
        (english, other) -> {
          if (GAP.matcher(english).find()) {
            templates.add(Template.of(english, other));
          } else {
            plain.put(english, other);
          }
        });
    // What begins with its own words is surer than what begins with any; then what says most in its
    // own words, and what takes the fewest words as they are.
    templates.sort(
        Comparator.comparing((Template t) -> t.start.isEmpty())
            .thenComparing(t -> -t.ownWords)
            .thenComparing(t -> t.sorts.stream().filter(String::isEmpty).count()));
  }

  /** The phrases of a language from its file. */
  static Phrases read(Language language) {
    String file = "phrases_" + language.tag() + ".po";
    try (InputStream in = Phrases.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("no file " + file);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return new Phrases(PhraseFile.read(text, file), language);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Phrases of a given file's entries. */
  static Phrases of(Map<String, String> entries, Language language) {
    return new Phrases(new LinkedHashMap<>(entries), language);
  }

  /** The translation of a text, if all of it has one. */
  Optional<String> translate(String english) {
    Optional<String> remembered = known.get(english);
    if (remembered != null) {
      return remembered;
    }
    Optional<String> found = find(english);
    if (known.size() < REMEMBERED) {
      known.put(english, found);
    }
    return found;
  }

  private Optional<String> find(String english) {
    String exact = plain.get(english);
    if (exact != null) {
      return Optional.of(exact);
    }
    if (WORD.matcher(english).results().allMatch(word -> SYMBOLS.contains(word.group()))) {
      return Optional.of(english);
    }
    Optional<String> whole = phrase(english).or(() -> englishDate(english));
    if (whole.isPresent()) {
      return whole;
    }
    String[] sentences = SENTENCES.split(english);
    return sentences.length > 1 ? all(List.of(sentences), " ") : Optional.empty();
  }

  private Optional<String> phrase(String english) {
    for (Template template : templates) {
      Optional<String> filled = template.fill(english, this);
      if (filled.isPresent()) {
        return filled;
      }
    }
    return Optional.empty();
  }

  private Optional<String> all(List<String> parts, String joint) {
    List<String> translated = new ArrayList<>();
    for (String part : parts) {
      Optional<String> one = translate(part);
      if (one.isEmpty()) {
        return Optional.empty();
      }
      translated.add(one.get());
    }
    return Optional.of(String.join(joint, translated));
  }

  private Optional<String> gap(String sort, String words) {
    // A gap holds no end of a sentence, or it would swallow those after it.
    if (SENTENCES.matcher(words).find()) {
      return Optional.empty();
    }
    return switch (sort) {
      case "term" -> WORD.matcher(words).find() ? translate(words) : Optional.empty();
      case "terms" -> terms(words);
      case "date" -> date(words);
      case "lower" -> lower(words);
      case "named" -> named(words);
      case "n" -> Optional.of(language.decimals(words));
      default -> Optional.of(words);
    };
  }

  /**
   * Things with names of their own after what they are: the longest known start is what they are.
   */
  private Optional<String> named(String words) {
    List<String> translated = new ArrayList<>();
    for (String part : words.split("; ")) {
      int end = part.lastIndexOf(' ');
      Optional<String> kind = Optional.empty();
      for (; end > 0 && kind.isEmpty(); end = part.lastIndexOf(' ', end - 1)) {
        kind = Optional.ofNullable(plain.get(part.substring(0, end)));
        if (kind.isPresent()) {
          break;
        }
      }
      if (kind.isEmpty()) {
        return Optional.empty();
      }
      String rest = part.substring(end);
      boolean each = rest.endsWith(" each");
      translated.add(
          kind.get() + (each ? rest.substring(0, rest.length() - 4) + plain.get("each") : rest));
    }
    return Optional.of(String.join("; ", translated));
  }

  /** A term that starts a line elsewhere, within a sentence. */
  private Optional<String> lower(String words) {
    return translate(words)
        .or(
            () ->
                translate(words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1))
                    .map(term -> term.toLowerCase(language.locale())));
  }

  /** A list; its parts may hold commas themselves, so that the longest known run counts. */
  private Optional<String> terms(String words) {
    List<String> quantities = List.of(QUANTITIES.split(words));
    if (quantities.size() > 1) {
      return all(quantities, ", ");
    }
    for (String joint : List.of("; ", ", ")) {
      List<String> parts = List.of(words.split(joint));
      if (parts.size() > 1) {
        Optional<String> list = runs(parts, joint);
        if (list.isPresent()) {
          return list;
        }
      }
    }
    Optional<String> whole = translate(words);
    int last = words.lastIndexOf(AND);
    if (whole.isPresent() || last < 0) {
      return whole;
    }
    Optional<String> first = terms(words.substring(0, last));
    Optional<String> end = translate(words.substring(last + AND.length()));
    return first.isPresent() && end.isPresent()
        ? Optional.of(language.text("list.and", first.get(), end.get()))
        : Optional.empty();
  }

  private Optional<String> runs(List<String> parts, String joint) {
    List<String> translated = new ArrayList<>();
    for (int from = 0; from < parts.size(); ) {
      Optional<String> found = Optional.empty();
      int until = Math.min(parts.size(), from + 4);
      for (; found.isEmpty() && until > from; until--) {
        found = translate(String.join(joint, parts.subList(from, until)));
      }
      if (found.isEmpty()) {
        return Optional.empty();
      }
      translated.add(found.get());
      from = until + 1;
    }
    return Optional.of(String.join(joint, translated));
  }

  private Optional<String> date(String words) {
    try {
      return Optional.of(
          words.length() == 7
              ? language.month(YearMonth.parse(words))
              : language.shortDate(LocalDate.parse(words)));
    } catch (DateTimeException e) {
      return englishDate(words);
    }
  }

  /** A date, month of a year or month as the sheets write them in English. */
  private Optional<String> englishDate(String words) {
    if (!ENGLISH_DATE.matcher(words).matches()) {
      return Optional.empty();
    }
    try {
      Object date =
          ENGLISH_DATES.parseBest(words, LocalDate::from, YearMonth::from, java.time.Month::from);
      return Optional.of(
          date instanceof LocalDate day
              ? Character.isDigit(words.charAt(0)) ? language.shortDate(day) : language.date(day)
              : date instanceof YearMonth month
                  ? language.month(month)
                  : language.month(((java.time.Month) date).getValue()));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** A phrase with gaps. */
  private record Template(
      Pattern english,
      List<String> names,
      List<String> sorts,
      String other,
      String start,
      int ownWords) {
    static Template of(String english, String other) {
      StringBuilder pattern = new StringBuilder();
      List<String> names = new ArrayList<>();
      List<String> sorts = new ArrayList<>();
      Matcher gap = GAP.matcher(english);
      int at = 0;
      int own = 0;
      String start = null;
      while (gap.find()) {
        String words = english.substring(at, gap.start());
        start = start == null ? words : start;
        own += words.length();
        pattern.append(Pattern.quote(words)).append(pattern(gap.group(2)));
        names.add(gap.group(1));
        sorts.add(gap.group(2) == null ? "" : gap.group(2));
        at = gap.end();
      }
      pattern.append(Pattern.quote(english.substring(at)));
      own += english.length() - at;
      return new Template(
          Pattern.compile(pattern.toString(), Pattern.DOTALL), names, sorts, other, start, own);
    }

    private static String pattern(String sort) {
      return "n".equals(sort)
          ? "([0-9][0-9./-]*)"
          : "q".equals(sort) ? "(\\{[0-9]{1,2}\\})" : "(.+?)";
    }

    Optional<String> fill(String text, Phrases phrases) {
      if (!text.startsWith(start)) {
        return Optional.empty();
      }
      Matcher match = english.matcher(text);
      if (!match.matches()) {
        return Optional.empty();
      }
      String filled = other;
      for (int i = 0; i < names.size(); i++) {
        Optional<String> words = phrases.gap(sorts.get(i), match.group(i + 1));
        if (words.isEmpty()) {
          return Optional.empty();
        }
        filled = filled.replace("<" + names.get(i) + ">", words.get());
      }
      return Optional.of(filled);
    }
  }
}
