package org.grovewright.sheets;

import java.time.LocalDate;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.grovewright.catalogue.Species;
import org.grovewright.finding.Finding;
import org.grovewright.irrigation.Rhythm;
import org.grovewright.irrigation.TimerSetting;
import org.grovewright.irrigation.ZoneDesign;
import org.grovewright.model.WateringDays;
import org.grovewright.plan.Plan;
import org.grovewright.quantity.Quantity;
import org.grovewright.texts.Language;

/** Dates, messages and counts in plain English, whatever the locale. */
public final class Words {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT_DATE =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  private static final Pattern PLACE = Pattern.compile("\\{([0-9]{1,3})\\}");
  private static final Pattern ZONE = Pattern.compile("^[Zz]one[-_ ]?");

  private Words() {}

  /** A date with its day of the week. */
  static String date(LocalDate date) {
    return DATE.format(date);
  }

  /** A date. */
  static String shortDate(LocalDate date) {
    return SHORT_DATE.format(date);
  }

  /** The name of a month from 1 to 12. */
  public static String month(int month) {
    return Month.of(month).getDisplayName(TextStyle.FULL, Locale.ENGLISH);
  }

  /** A finding's message with its quantities in the reader's units. */
  public static String message(Finding finding, ReaderUnits units) {
    return message(finding.message(), finding.quantities(), units);
  }

  /**
   * A message in the reader's language in which {@code {0}}, {@code {1}} ... are replaced by
   * quantities in the reader's units; braces that stand for no quantity stay.
   */
  public static String message(String message, List<Quantity> quantities, ReaderUnits units) {
    Matcher place = PLACE.matcher(units.language().say(message));
    StringBuilder text = new StringBuilder();
    while (place.find()) {
      int index = Integer.parseInt(place.group(1));
      String value = index < quantities.size() ? units.text(quantities.get(index)) : place.group();
      place.appendReplacement(text, Matcher.quoteReplacement(value));
    }
    return place.appendTail(text).toString();
  }

  /** What a zone is called in a sentence: "zone A" for the ids A and zone-A alike. */
  public static String zone(String id) {
    return "zone " + ZoneDesign.called(id);
  }

  /** A text with a capital at its start. */
  public static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** How often a valve opens. */
  static String every(TimerSetting setting) {
    return every(setting.rhythm());
  }

  /** On which days a valve opens. */
  public static String every(Rhythm rhythm) {
    return rhythm.byCalendar() ? on(rhythm.days()) : every(rhythm.everyDays());
  }

  /** Days of the calendar. */
  public static String on(WateringDays days) {
    return switch (days.dates()) {
      case ODD -> "on odd dates";
      case EVEN -> "on even dates";
      case ALL ->
          days.any()
              ? "every day"
              : "on "
                  + and(
                      days.weekdays().stream()
                          .map(day -> day.getDisplayName(TextStyle.FULL, Locale.ENGLISH))
                          .toList());
    };
  }

  /** How often a valve opens that opens each so many days; 0 for never. */
  public static String every(int days) {
    return switch (days) {
      case 0 -> "off";
      case 1 -> "every day";
      case 2 -> "every other day";
      default -> "every " + days + " days";
    };
  }

  /** Days of the calendar in few letters, for a card. */
  static String shortDays(WateringDays days) {
    return days.byWeek()
        ? days.weekdays().stream()
            .map(day -> day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH))
            .collect(Collectors.joining(" "))
        : days.dates().name().toLowerCase(Locale.ROOT) + " dates";
  }

  /** A count with its noun. */
  public static String count(long count, String one, String many) {
    return count + " " + (count == 1 ? one : many);
  }

  /** Words joined as in an English sentence. */
  public static String and(List<String> words) {
    return and(words, Language.ENGLISH);
  }

  /** Words joined as in a sentence of a language. */
  public static String and(List<String> words, Language language) {
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : language.text("list.and", String.join(", ", words.subList(0, last)), words.get(last));
  }

  /**
   * What a remark or a job is about: species, goods and zones by name, other ids as they are.
   *
   * @param id the subject's id in the plan
   */
  public static String subject(Plan plan, String id, Language language) {
    Species species = plan.catalogue().species().get(id);
    if (species != null) {
      return language.say(species.name());
    }
    Matcher zone = ZONE.matcher(id);
    if (zone.find() && zone.end() < id.length()) {
      return language.text("zone", id.substring(zone.end()));
    }
    if (id.equals("supply")) {
      return language.text("subject.supply");
    }
    return plan.shopping().find(id).map(line -> language.say(line.name())).orElse(id);
  }
}
