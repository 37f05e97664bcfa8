package org.grovewright.start;

import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Writes the wish for a watering system, the money and who works when. */
final class WorkLines {
  static final List<String> WEEK = List.of("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");

  private final Answers answers;
  private final Sheet sheet;

  WorkLines(Sheet sheet) {
    this.sheet = sheet;
    this.answers = sheet.answers();
  }

  void write() {
    sheet.add("watering:");
    sheet.add("  propose: true");
    Optional<String> currency = answers.text("currency");
    if (currency.isPresent()) {
      if (Currency.getAvailableCurrencies().stream()
          .noneMatch(c -> c.getCurrencyCode().equals(currency.get()))) {
        answers.problem("currency", "choose");
      }
      sheet.add("prices:");
      sheet.add("  currency: " + Texts.quoted(currency.get()));
      if (!currency.get().equals("USD")) {
        Optional<String> times = answers.number("times", 0.0001, 1e6);
        sheet.add("  typical_times: " + times.orElseGet(() -> sheet.assume("times", "times", "1")));
      }
    }
    Optional<String> people = answers.number("people", 1, 50);
    people
        .filter(number -> !number.matches("\\d+"))
        .ifPresent(number -> answers.problem("people", "wholeNumber"));
    List<String> days = answers.words("days", WEEK);
    String hours = time("from", "09:00") + "-" + time("until", "13:00");
    sheet.add("crew:");
    sheet.add("  people: " + people.orElseGet(() -> sheet.assume("people", "people", "1")));
    if (days.isEmpty()) {
      sheet.note(new Remark("days", "days", List.of(hours)));
      days = List.of("Sat");
    }
    List<String> worked = days;
    sheet.add(
        "  hours: {"
            + WEEK.stream()
                .filter(worked::contains)
                .map(day -> day + ": " + hours)
                .collect(Collectors.joining(", "))
            + "}");
  }

  private String time(String field, String usual) {
    Optional<String> text = answers.text(field);
    if (text.isPresent() && !text.get().matches("\\d{1,2}:\\d\\d")) {
      answers.problem(field, "time");
      return usual;
    }
    return text.orElse(usual);
  }
}
