package org.grovewright.start;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The answers of a form as they were typed, with what is wrong with them. A number may have a comma
 * or a point before its decimals.
 */
final class Answers {
  private static final Pattern NUMBER = Pattern.compile("[-+]?(\\d{1,9}\\.?\\d{0,6}|\\.\\d{1,6})");
  private static final int LONGEST = 200;

  private final JsonNode root;
  private final List<Remark> problems = new ArrayList<>();

  Answers(JsonNode root) {
    this.root = root;
  }

  List<Remark> problems() {
    return problems;
  }

  void problem(String field, String code, String... values) {
    problems.add(new Remark(field, code, List.of(values)));
  }

  /** A field typed into, without space around; empty if it was left so. */
  Optional<String> text(String field) {
    return text(root.path(field), field);
  }

  private Optional<String> text(JsonNode node, String field) {
    if (!node.isTextual() && !node.isNumber()) {
      return Optional.empty();
    }
    String text = node.asText().strip();
    if (text.length() > LONGEST) {
      problem(field, "tooLong", Integer.toString(LONGEST));
      return Optional.empty();
    }
    return text.isEmpty() ? Optional.empty() : Optional.of(text);
  }

  /** One of some words; empty, with a problem if something else was sent. */
  Optional<String> choice(String field, java.util.Collection<String> allowed) {
    Optional<String> text = text(field);
    if (text.isPresent() && !allowed.contains(text.get())) {
      problem(field, "choose");
      return Optional.empty();
    }
    return text;
  }

  /**
   * A number as it is to be written, checked to lie within limits; empty if nothing was typed or it
   * was wrong.
   */
  Optional<String> number(String field, double min, double max) {
    return number(root.path(field), field, min, max);
  }

  /** A number that must be there. */
  Optional<String> needed(String field, double min, double max) {
    if (text(field).isEmpty()) {
      problem(field, "needed");
    }
    return number(field, min, max);
  }

  private Optional<String> number(JsonNode node, String field, double min, double max) {
    Optional<String> text = text(node, field).map(Answers::plain);
    if (text.isEmpty()) {
      return text;
    }
    if (!NUMBER.matcher(text.get()).matches()) {
      problem(field, "number");
      return Optional.empty();
    }
    double value = Double.parseDouble(text.get());
    if (value < min || value > max) {
      problem(field, "range", Texts.number(min), Texts.number(max));
      return Optional.empty();
    }
    return Optional.of(Texts.number(value));
  }

  private static String plain(String typed) {
    return typed.replace('\u2212', '-').replace(',', '.').replace(" ", "");
  }

  /** Twelve numbers; empty if all were left out or one is wrong or missing. */
  Optional<List<String>> months(String field, double min, double max) {
    List<String> values = new ArrayList<>();
    boolean any = false;
    for (int i = 0; i < 12; i++) {
      JsonNode node = root.path(field).path(i);
      any |= text(node, field).isPresent();
    }
    if (!any) {
      return Optional.empty();
    }
    for (int i = 0; i < 12; i++) {
      String name = field + "[" + i + "]";
      JsonNode node = root.path(field).path(i);
      if (text(node, name).isEmpty()) {
        problem(name, "needed");
      } else {
        number(node, name, min, max).ifPresent(values::add);
      }
    }
    return values.size() == 12 ? Optional.of(values) : Optional.empty();
  }

  /** A list of pairs of numbers, such as corners. */
  List<List<String>> pairs(String field, double min, double max) {
    List<List<String>> pairs = new ArrayList<>();
    for (int i = 0; i < root.path(field).size(); i++) {
      JsonNode pair = root.path(field).path(i);
      String name = field + "[" + i + "]";
      Optional<String> x = number(pair.path(0), name, min, max);
      Optional<String> y = number(pair.path(1), name, min, max);
      if (x.isPresent() && y.isPresent()) {
        pairs.add(List.of(x.get(), y.get()));
      } else if (problems.stream().noneMatch(problem -> problem.field().equals(name))) {
        problem(name, "needed");
      }
    }
    return pairs;
  }

  /** A day. */
  Optional<LocalDate> date(String field) {
    Optional<String> text = text(field);
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeParseException e) {
      problem(field, "date");
      return Optional.empty();
    }
  }

  /** Words of a list that are allowed. */
  List<String> words(String field, java.util.Collection<String> allowed) {
    List<String> words = new ArrayList<>();
    root.path(field)
        .forEach(
            node -> {
              if (allowed.contains(node.asText())) {
                words.add(node.asText());
              }
            });
    return words;
  }

  /**
   * What is to be planted.
   *
   * @param species catalogue key
   * @param count how many
   */
  record Wish(String species, int count) {}

  List<Wish> wishes(String field, java.util.Set<String> species, int most) {
    List<Wish> wishes = new ArrayList<>();
    for (int i = 0; i < root.path(field).size(); i++) {
      JsonNode entry = root.path(field).path(i);
      String name = field + "[" + i + "]";
      Optional<String> key = text(entry.path("species"), name + ".species");
      Optional<String> count = text(entry.path("count"), name + ".count");
      if (key.isEmpty() && count.isEmpty()) {
        continue;
      }
      if (key.isEmpty() || !species.contains(key.get())) {
        problem(name + ".species", "chooseSpecies");
      } else if (count.isEmpty() || !count.get().matches("\\d{1,4}")) {
        problem(name + ".count", "wholeNumber");
      } else {
        int number = Integer.parseInt(count.get());
        if (number < 1 || number > most) {
          problem(name + ".count", "range", "1", Integer.toString(most));
        } else {
          wishes.add(new Wish(key.get(), number));
        }
      }
    }
    return wishes;
  }
}
