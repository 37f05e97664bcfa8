package org.grovewright.sheets;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.grovewright.advice.LookAt;
import org.grovewright.advice.TodayAdvice;
import org.grovewright.advice.ZoneAdvice;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Species;
import org.grovewright.model.Grove;
import org.grovewright.model.Planting;

/** The advice of a day in one sentence or two. */
public final class TodayWords {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
  private static final int NAMED_PLANTS = 4;

  private final TodayAdvice advice;
  private final ReaderUnits units;
  private final Map<String, String> kinds = new LinkedHashMap<>();

  /**
   * Words for an advice.
   *
   * @param advice the advice
   * @param grove its grove
   * @param catalogue the tables that name its species
   */
  public TodayWords(TodayAdvice advice, Grove grove, Catalogue catalogue) {
    this.advice = advice;
    this.units = new ReaderUnits(grove.preferences().units(), grove.stock().currency());
    for (Planting planting : grove.plantings()) {
      Species species = catalogue.species().get(planting.speciesKey());
      kinds.put(planting.id(), species.name());
    }
  }

  /** Everything in one line of text. */
  public String line() {
    List<String> clauses = new ArrayList<>();
    advice
        .zones()
        .forEach(zone -> clauses.add(clauses.isEmpty() ? zone(zone) : Words.capital(zone(zone))));
    String line = Words.date(advice.date()) + ": " + String.join(". ", clauses) + ".";
    return ReaderUnits.plainSpaces(
        advice.lookAt().isEmpty() ? line : line + " Look at " + looks() + ".");
  }

  /** What to do with one zone, without a stop at the end. */
  String zone(ZoneAdvice zone) {
    String name = Words.zone(zone.zone());
    return switch (zone.action()) {
      case WATER ->
          "water "
              + name
              + " for "
              + zone.minutes()
              + " min"
              + (zone.runs() > 1
                  ? " in " + zone.runs() + " runs of " + zone.minutesPerRun() + " min"
                  : "")
              + " ("
              + units.text(zone.volume())
              + ")";
      case SKIP -> "leave " + name + " off" + next(zone);
      case WAIT -> name + " wants water, but " + waits(zone);
      case NOTHING_PLANTED -> "nothing is planted yet in " + name;
    };
  }

  private static String next(ZoneAdvice zone) {
    return zone.next()
        .wants()
        .map(day -> "; without rain it wants water on " + day(day))
        .orElse("; even without rain it wants none for two weeks");
  }

  private static String waits(ZoneAdvice zone) {
    String why =
        switch (zone.held()) {
          case NOT_ALLOWED -> "today is not an allowed day";
          case HOURS -> "the allowed hours of today are used up";
          case DAY_LIMIT -> "the limit of a day is used up";
          case WEEK_LIMIT -> "the limit of a week is used up";
          case CARD, FREE -> "today has no room for it";
        };
    return zone.next().askAgain().map(day -> why + ": ask again on " + day(day)).orElse(why);
  }

  /** A day of this year. */
  static String day(LocalDate date) {
    return DAY.format(date);
  }

  /** A plant by its id and kind. */
  String plant(String id) {
    return id + " (" + kinds.get(id) + ")";
  }

  private String looks() {
    List<String> named = new ArrayList<>();
    List<LookAt> looks = advice.lookAt();
    int shown = looks.size() <= NAMED_PLANTS ? looks.size() : NAMED_PLANTS - 1;
    for (LookAt look : looks.subList(0, shown)) {
      named.add(look.plantId() + " (" + kinds.get(look.plantId()) + ", " + reason(look) + ")");
    }
    if (shown < looks.size()) {
      named.add(looks.size() - shown + " more");
    }
    return Words.and(named);
  }

  private String reason(LookAt look) {
    String days = Words.count(Math.round(look.amount().value() / 86_400), "day", "days");
    return switch (look.reason()) {
      case THIRSTY -> "too dry for " + days;
      case BY_HAND -> "dry and on no valve: bring it " + units.text(look.amount());
      case NEWLY_SET -> "newly set, " + days + " without water: feel its root ball";
    };
  }
}
