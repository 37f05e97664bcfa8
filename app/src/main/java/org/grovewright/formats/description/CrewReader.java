package org.grovewright.formats.description;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.grovewright.formats.words.Nearest;
import org.grovewright.model.Crew;
import org.grovewright.model.Supply;
import org.grovewright.texts.Sentence;

/** Reads who works and when. */
final class CrewReader {
  static final List<String> DAYS =
      Stream.of(DayOfWeek.values()).map(CrewReader::shortName).toList();

  private CrewReader() {}

  /** The day as the language writes it: Mon, Tue and so on. */
  static String shortName(DayOfWeek day) {
    return day.name().charAt(0) + day.name().substring(1, 3).toLowerCase(Locale.ROOT);
  }

  static Crew read(Value value) {
    Optional<Fields> found = value.fields(Section.CREW);
    if (found.isEmpty()) {
      return null;
    }
    Fields fields = found.get();
    int people =
        fields
            .need("people", "how many work at a time, such as 2")
            .map(v -> v.whole(1, 50).orElse(1))
            .orElse(1);
    Map<DayOfWeek, Supply.Hours> hours =
        fields
            .need("hours", "the working times by day of the week: {Sat: 09:00-17:00}")
            .map(CrewReader::hours)
            .orElse(Map.of());
    Set<LocalDate> daysOff = new HashSet<>();
    for (Value item : fields.get("days_off").map(Value::items).orElse(List.of())) {
      Optional<LocalDate> date = item.date();
      if (date.isPresent() && !daysOff.add(date.get())) {
        item.problem("is given twice");
      }
    }
    return new Crew(people, hours, daysOff);
  }

  private static Map<DayOfWeek, Supply.Hours> hours(Value value) {
    Map<DayOfWeek, Supply.Hours> hours = new EnumMap<>(DayOfWeek.class);
    String allowed = String.join(", ", DAYS);
    Optional<Fields> fields = value.anyFields(Sentence.asIs(allowed));
    if (fields.isEmpty()) {
      return hours;
    }
    if (fields.get().all().isEmpty()) {
      value.problem("has no day; somebody must work on one day of the week at least");
    }
    fields.get().all().forEach((key, item) -> putHours(hours, key, item, allowed));
    return hours;
  }

  private static void putHours(
      Map<DayOfWeek, Supply.Hours> hours, String key, Value item, String allowed) {
    Optional<DayOfWeek> day = day(key);
    if (day.isEmpty()) {
      item.problem(
          "'{0}' is no day of the week{1}; allowed: {2}",
          Nearest.shorten(key), Nearest.hint(key, DAYS), allowed);
      return;
    }
    Optional<Supply.Hours> span = SupplyReader.hours(item);
    if (span.isEmpty()) {
      return;
    }
    if (span.get().until().isBefore(span.get().from())
        && !span.get().until().equals(java.time.LocalTime.MIDNIGHT)) {
      item.problem("ends before it begins; work cannot run over midnight");
    }
    if (hours.putIfAbsent(day.get(), span.get()) != null) {
      item.problem("is given twice");
    }
  }

  /** The day of the week of a name or of its first three letters. */
  static Optional<DayOfWeek> day(String key) {
    String name = key.toUpperCase(Locale.ROOT);
    return Stream.of(DayOfWeek.values())
        .filter(day -> day.name().equals(name) || day.name().substring(0, 3).equals(name))
        .findFirst();
  }
}
