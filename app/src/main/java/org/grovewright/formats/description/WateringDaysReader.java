package org.grovewright.formats.description;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.WateringDays;
import org.grovewright.model.WateringDays.Dates;
import org.grovewright.texts.Sentence;

/** Reads on which days watering is allowed: days of the week, or odd or even dates. */
final class WateringDaysReader {
  private static final Sentence WANTED =
      Sentence.of(
          "the allowed days, such as [Tue, Sat], or odd, or even for the dates of the month");

  private WateringDaysReader() {}

  static WateringDays read(Value value) {
    if (value.isList()) {
      List<Value> items = value.items();
      if (items.isEmpty()) {
        value.problem("is empty; give {0}, or leave it out where any day is allowed", WANTED);
        return WateringDays.ANY;
      }
      Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
      for (Value item : items) {
        item.text(WANTED).ifPresent(text -> add(days, item, text));
      }
      return of(days);
    }
    Optional<String> text = value.text(WANTED);
    if (text.isEmpty()) {
      return WateringDays.ANY;
    }
    String plain = text.get().toLowerCase(Locale.ROOT).replaceFirst("\\s+(dates|days)$", "");
    for (Dates dates : List.of(Dates.ODD, Dates.EVEN)) {
      if (plain.equals(Value.word(dates))) {
        return WateringDays.on(dates);
      }
    }
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    for (String word : text.get().split("\\s*(,|\\band\\b|\\s)\\s*")) {
      if (!word.isEmpty()) {
        add(days, value, word);
      }
    }
    return of(days);
  }

  private static WateringDays of(Set<DayOfWeek> days) {
    return days.isEmpty() ? WateringDays.ANY : WateringDays.on(days);
  }

  private static void add(Set<DayOfWeek> days, Value at, String word) {
    Optional<DayOfWeek> day = CrewReader.day(word);
    if (day.isEmpty()) {
      List<String> known = new ArrayList<>(CrewReader.DAYS);
      known.addAll(List.of("odd", "even"));
      at.problem(
          "'{0}' is no day of the week{1}; give {2}",
          Nearest.shorten(word), Nearest.hint(word, known), WANTED);
    } else if (!days.add(day.get())) {
      at.problem("names {0} twice", CrewReader.shortName(day.get()));
    }
  }
}
