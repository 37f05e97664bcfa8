package org.grovewright.sheets;

import java.util.List;
import java.util.Locale;
import org.grovewright.irrigation.Rhythm;

/** Draws the minutes of one zone round the year, January at the top and onwards with the clock. */
final class YearRing {
  private static final double CENTRE = 210;
  private static final double INNER = 58;
  private static final double OUTER = 140;
  private static final double LABEL = 176;
  private static final double GAP_RAD = Math.toRadians(1.5);

  private YearRing() {}

  /**
   * One month.
   *
   * @param month 1 to 12
   * @param minutes minutes on a watering day; 0 where the zone is off
   * @param rhythm its days
   */
  record Month(int month, int minutes, Rhythm rhythm) {
    double minutesPerDay() {
      return rhythm.off() ? 0 : minutes / rhythm.meanGap(month);
    }
  }

  /**
   * The drawing, for a page whose style sheet holds that of the seasons.
   *
   * @param zone name of the zone, for the middle of the ring
   * @param id part of the ids in the drawing, unique in the page
   * @param months the twelve months, January first
   */
  static String draw(String zone, String id, List<Month> months) {
    double most = months.stream().mapToDouble(Month::minutesPerDay).max().orElse(0);
    Svg svg = new Svg();
    svg.drawing(420, 420, "season ring", id + "-title");
    svg.text("title", title(zone, months), "id", id + "-title");
    for (Month month : months) {
      double middle = Math.toRadians(30 * (month.month() - 0.5));
      double half = Math.toRadians(15) - GAP_RAD;
      svg.leaf("path", "class", "bed", "d", sector(middle - half, middle + half, OUTER));
      if (month.minutes() > 0) {
        double reach = INNER + (OUTER - INNER) * month.minutesPerDay() / most;
        svg.leaf("path", "class", "water", "d", sector(middle - half, middle + half, reach));
      }
      double x = CENTRE + LABEL * Math.sin(middle);
      double y = CENTRE - LABEL * Math.cos(middle);
      boolean on = month.minutes() > 0;
      svg.text(
          "text", Words.month(month.month()).substring(0, 3), "class", "month", "x", x, "y", y - 9);
      svg.text("text", on ? month.minutes() + " min" : "off", "class", "value", "x", x, "y", y + 7);
      if (on) {
        svg.text("text", often(month.rhythm()), "class", "small", "x", x, "y", y + 21);
      }
    }
    svg.text("text", Words.capital(zone), "class", "middle", "x", CENTRE, "y", CENTRE + 6);
    svg.close();
    return svg.toString();
  }

  private static String often(Rhythm rhythm) {
    if (!rhythm.byCalendar()) {
      return rhythm.everyDays() == 1 ? "daily" : "every " + rhythm.everyDays() + " d";
    }
    return Words.shortDays(rhythm.days());
  }

  private static String title(String zone, List<Month> months) {
    StringBuilder text = new StringBuilder("Minutes of " + zone + " round the year:");
    for (Month month : months) {
      text.append(' ').append(Words.month(month.month())).append(' ');
      text.append(
          month.minutes() == 0
              ? "off"
              : month.minutes() + " minutes " + Words.every(month.rhythm()));
      text.append(month.month() == 12 ? '.' : ';');
    }
    return text.toString();
  }

  /** A piece of the ring between two angles from the top, from the inner circle to a radius. */
  private static String sector(double from, double to, double radius) {
    return String.format(
        Locale.ROOT,
        "M%s A%s %s 0 0 1 %s L%s A%s %s 0 0 0 %s Z",
        at(from, radius),
        Decimals.coordinate(radius),
        Decimals.coordinate(radius),
        at(to, radius),
        at(to, INNER),
        Decimals.coordinate(INNER),
        Decimals.coordinate(INNER),
        at(from, INNER));
  }

  private static String at(double angle, double radius) {
    return Decimals.coordinate(CENTRE + radius * Math.sin(angle))
        + " "
        + Decimals.coordinate(CENTRE - radius * Math.cos(angle));
  }
}
