package org.grovewright.ground;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.grovewright.catalogue.Amendment;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.Constant;
import org.grovewright.catalogue.Species;
import org.grovewright.layout.Crown;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Figure;
import org.grovewright.quantity.FigureBook;
import org.grovewright.quantity.Input;
import org.grovewright.quantity.Kind;
import org.grovewright.quantity.Working;

/** Works out what each plant is fed. */
final class FeedingPlan {
  private static final int DAY_OF_MONTH = 15;

  private final Grove grove;
  private final Catalogue catalogue;
  private final Amendment fertiliser;
  private final FigureBook book;

  FeedingPlan(Grove grove, Catalogue catalogue, Amendment fertiliser, FigureBook book) {
    this.grove = grove;
    this.catalogue = catalogue;
    this.fertiliser = fertiliser;
    this.book = book;
  }

  List<Feeding> of(Crown crown) {
    List<Feeding> feedings = new ArrayList<>();
    Species.Feeding rule = crown.species().feeding();
    if (rule.monthsNorth().isEmpty() || rule.nitrogenMatureKg() <= 0) {
      return feedings;
    }
    String plant = crown.planting().id();
    int years = (int) catalogue.constant("ground.feed-years").value();
    for (int year = 1; year <= years; year++) {
      String id = "ground.plant." + FigureBook.slug(plant) + ".";
      Figure nitrogen = nitrogen(id + "nitrogen.year-" + year, crown, year);
      double one = nitrogen.value() / rule.monthsNorth().size();
      Figure dose =
          book.enter(
              id + "feeding.year-" + year,
              fertiliser.name() + " for each feeding of " + plant + " in year " + year,
              one / fertiliser.nitrogen(),
              Kind.MASS,
              Working.of(
                  "N / k / n",
                  "arithmetic",
                  Input.from("N", nitrogen),
                  new Input(
                      "k",
                      rule.monthsNorth().size(),
                      Kind.COUNT,
                      "catalogue: species, feeding months"),
                  new Input(
                      "n",
                      fertiliser.nitrogen(),
                      Kind.SHARE,
                      "catalogue: amendments, " + fertiliser.key())));
      for (YearMonth when : months(crown, year)) {
        feedings.add(
            new Feeding(plant, year, when, one, fertiliser.key(), dose.value(), dose.id()));
      }
    }
    return feedings;
  }

  /**
   * Nitrogen of one year: from the year-one rate to the mature rate in step with the area of the
   * crown, which is what bears leaves and fruit. A crown kept small is fed as its size asks.
   */
  private Figure nitrogen(String id, Crown crown, int year) {
    Species species = crown.species();
    double planYears = crown.standing() ? year : year - crown.ageAt(0);
    double spread = crown.spreadM(planYears);
    double first = crown.spreadOfKindM(1);
    double full = species.matureSpreadM();
    double way = (spread * spread - first * first) / (full * full - first * first);
    double share = full > first ? Math.max(0, Math.min(1, way)) : 1;
    double low = species.feeding().nitrogenYearOneKg();
    double high = species.feeding().nitrogenMatureKg();
    String origin = "catalogue: species, " + species.key();
    return book.enter(
        id,
        "Nitrogen for " + crown.planting().id() + " in year " + year,
        low + share * (high - low),
        Kind.MASS,
        Working.of(
            "N1 + (Nm - N1) (S^2 - S1^2) / (Sm^2 - S1^2), the last within 0 and 1",
            "in step with the area of the crown, " + Working.COMMON_PRACTICE,
            new Input("N1", low, Kind.MASS, origin),
            new Input("Nm", high, Kind.MASS, origin),
            new Input("S (spread)", spread, Kind.LENGTH, "growth of " + crown.planting().id()),
            new Input("S1 (spread of the kind after a year)", first, Kind.LENGTH, "growth curve"),
            new Input("Sm (mature spread)", full, Kind.LENGTH, origin)));
  }

  /**
   * Months of a year in which the plant is fed. The year runs from planting, or from the start of
   * the plan for a plant that stands already; a month counts by its middle. In the first year after
   * planting the waiting time comes first; a feeding lost to it is not made up for, so no dose is
   * ever larger than the rate.
   */
  private List<YearMonth> months(Crown crown, int year) {
    LocalDate base = crown.standing() ? grove.start() : crown.planting().plantedOn();
    LocalDate from = base.plusYears(year - 1);
    if (year == 1 && !crown.standing()) {
      Constant wait = catalogue.constant("ground.feed-wait");
      from = from.plusDays(Math.round(wait.value() / 86_400));
    }
    LocalDate until = base.plusYears(year);
    List<YearMonth> found = new ArrayList<>();
    YearMonth last = YearMonth.from(until);
    for (YearMonth month = YearMonth.from(from);
        !month.isAfter(last);
        month = month.plusMonths(1)) {
      LocalDate middle = month.atDay(DAY_OF_MONTH);
      if (!middle.isBefore(from) && middle.isBefore(until) && isFeedingMonth(crown, month)) {
        found.add(month);
      }
    }
    return found;
  }

  private boolean isFeedingMonth(Crown crown, YearMonth month) {
    int north = month.getMonthValue();
    if (grove.site().southern()) {
      north = (north + 5) % 12 + 1;
    }
    return crown.species().feeding().monthsNorth().contains(north);
  }
}
