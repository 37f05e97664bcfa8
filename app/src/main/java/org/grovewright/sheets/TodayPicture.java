package org.grovewright.sheets;

import java.util.List;
import org.grovewright.advice.TodayAdvice;
import org.grovewright.advice.ZoneAdvice;
import org.grovewright.advice.ZoneAdvice.TraceDay;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.model.Grove;
import org.grovewright.quantity.Kind;

/**
 * Draws the soil water of each zone's driest plant over the past weeks, with a mark at today and
 * the days ahead broken off.
 */
public final class TodayPicture {
  private static final double WIDTH = 760;
  private static final double PANEL = 276;
  private static final double LEFT = 60;
  private static final double RIGHT = 24;
  private static final double TOP = 56;
  private static final double BARS = 34;
  private static final double BOTTOM = 32;
  private static final double HEAD = 34;
  private static final double FOOT = 56;

  private static final String STYLE =
      """
      <style>
      text { font: 13px system-ui, sans-serif; fill: #1c2a22; }
      .head { font-size: 17px; font-weight: 600; }
      .title { font-weight: 600; }
      .small { font-size: 12px; fill: #44524a; }
      .end { text-anchor: end; }
      .mid { text-anchor: middle; }
      .grid { stroke: #d5dbd6; stroke-width: 1; }
      .full { stroke: #3b6d8f; stroke-width: 1.5; }
      .stress { stroke: #a8480b; stroke-width: 1.5; stroke-dasharray: 7 4; fill: none; }
      .left { stroke: #1c2a22; stroke-width: 2.2; fill: none; stroke-linejoin: round; }
      .ahead { stroke: #1c2a22; stroke-width: 2.2; fill: none; stroke-dasharray: 2 4; }
      .today { stroke: #1c2a22; stroke-width: 1; }
      .rain { fill: #3b6d8f; }
      .watered { fill: #79b4a9; stroke: #1c2a22; stroke-width: 0.6; }
      .assumed { fill: none; stroke: #1c2a22; stroke-width: 1; stroke-dasharray: 2 2; }
      .paper { fill: #fdfdfa; }
      </style>
      """;

  private final TodayAdvice advice;
  private final TodayWords words;
  private final ReaderUnits units;
  private final Svg svg = new Svg();

  private TodayPicture(TodayAdvice advice, Grove grove, Catalogue catalogue) {
    this.advice = advice;
    this.words = new TodayWords(advice, grove, catalogue);
    this.units = new ReaderUnits(grove.preferences().units(), grove.stock().currency());
  }

  /** The drawing as a document of its own. */
  public static String svg(TodayAdvice advice, Grove grove, Catalogue catalogue) {
    return new TodayPicture(advice, grove, catalogue).drawn();
  }

  private String drawn() {
    List<ZoneAdvice> zones = advice.zones().stream().filter(z -> !z.trace().isEmpty()).toList();
    double height = HEAD + zones.size() * PANEL + FOOT;
    svg.drawing(WIDTH, height, "", "today-title today-words");
    svg.text("title", "Soil water on " + Words.date(advice.date()), "id", "today-title");
    svg.text("desc", words.line(), "id", "today-words");
    svg.raw(STYLE);
    svg.leaf("rect", "class", "paper", "x", 0, "y", 0, "width", WIDTH, "height", height);
    svg.text("text", Words.date(advice.date()), "class", "head", "x", LEFT, "y", 24);
    double y = HEAD;
    for (ZoneAdvice zone : zones) {
      panel(zone, y);
      y += PANEL;
    }
    legend(y + 8);
    svg.close();
    return svg.toString();
  }

  private void panel(ZoneAdvice zone, double top) {
    List<TraceDay> days = zone.trace();
    double step = (WIDTH - LEFT - RIGHT) / days.size();
    double floor = top + PANEL - BOTTOM - BARS;
    double ceiling = top + TOP;
    svg.text(
        "text",
        ReaderUnits.plainSpaces(Words.capital(words.zone(zone))),
        "class",
        "title",
        "x",
        LEFT,
        "y",
        top + 18);
    svg.text(
        "text",
        "Water left in the root zone of " + words.plant(zone.driestPlantId()) + ", the driest",
        "class",
        "small",
        "x",
        LEFT,
        "y",
        top + 36);
    for (int percent = 0; percent <= 100; percent += 25) {
      double y = floor - (floor - ceiling) * percent / 100;
      svg.leaf(
          "line",
          "class",
          percent == 100 ? "full" : "grid",
          "x1",
          LEFT,
          "y1",
          y,
          "x2",
          WIDTH - RIGHT,
          "y2",
          y);
      svg.text("text", percent + " %", "class", "small end", "x", LEFT - 8, "y", y + 4);
    }
    int today = 0;
    StringBuilder past = new StringBuilder();
    StringBuilder ahead = new StringBuilder();
    StringBuilder stress = new StringBuilder();
    double most = days.stream().mapToDouble(d -> d.rainM() + d.irrigationM()).max().orElse(0);
    for (int i = 0; i < days.size(); i++) {
      TraceDay day = days.get(i);
      double x = LEFT + (i + 0.5) * step;
      double y = floor - (floor - ceiling) * Math.max(0, day.leftM() / day.fullM());
      double suffers = floor - (floor - ceiling) * Math.max(0, day.stressM() / day.fullM());
      boolean isPast = day.date().isBefore(advice.date());
      today += isPast ? 1 : 0;
      if (isPast) {
        Svg.lead(past, x, y);
      }
      if (i + 1 >= days.size() || !days.get(i + 1).date().isBefore(advice.date())) {
        Svg.lead(ahead, x, y);
      }
      Svg.lead(stress, x, suffers);
      bars(day, x, step * 0.6, top + PANEL - BOTTOM, most);
      label(day, i, x, top);
    }
    svg.leaf("path", "class", "stress", "d", stress);
    if (past.length() > 0) {
      svg.leaf("path", "class", "left", "d", past);
    }
    svg.leaf("path", "class", "ahead", "d", ahead);
    double x = LEFT + today * step;
    svg.leaf("line", "class", "today", "x1", x, "y1", ceiling - 14, "x2", x, "y2", floor + BARS);
    svg.text("text", "today", "class", "small end", "x", x - 4, "y", ceiling - 5);
  }

  private void bars(TraceDay day, double x, double width, double floor, double most) {
    double y = floor;
    for (boolean rain : new boolean[] {true, false}) {
      double depth = rain ? day.rainM() : day.irrigationM();
      double height = most > 0 ? (BARS - 4) * depth / most : 0;
      if (height > 0.3) {
        y -= height;
        svg.open(
            "rect",
            "class",
            rain ? "rain" : day.assumed() ? "assumed" : "watered",
            "x",
            x - width / 2,
            "y",
            y,
            "width",
            width,
            "height",
            height);
        svg.text(
            "title",
            TodayWords.day(day.date())
                + ": "
                + (rain ? "rain " : day.assumed() ? "watering, not noted, " : "watering ")
                + ReaderUnits.plainSpaces(units.text(depth, Kind.WATER_DEPTH)));
        svg.close();
      }
    }
  }

  private void label(TraceDay day, int index, double x, double top) {
    boolean monday = day.date().getDayOfWeek() == java.time.DayOfWeek.MONDAY;
    if (monday && index > 0) {
      svg.text(
          "text",
          day.date().getDayOfMonth()
              + " "
              + Words.month(day.date().getMonthValue()).substring(0, 3),
          "class",
          "small mid",
          "x",
          x,
          "y",
          top + PANEL - BOTTOM + 16);
    }
  }

  private void legend(double y) {
    double x = LEFT;
    svg.leaf("line", "class", "full", "x1", x, "y1", y, "x2", x + 24, "y2", y);
    svg.text("text", "full", "class", "small", "x", x + 30, "y", y + 4);
    svg.leaf("line", "class", "stress", "x1", x + 76, "y1", y, "x2", x + 104, "y2", y);
    svg.text("text", "begins to suffer", "class", "small", "x", x + 110, "y", y + 4);
    svg.leaf("line", "class", "ahead", "x1", x + 222, "y1", y, "x2", x + 250, "y2", y);
    svg.text("text", "ahead", "class", "small", "x", x + 256, "y", y + 4);
    svg.leaf("rect", "class", "rain", "x", x + 316, "y", y - 6, "width", 12, "height", 12);
    svg.text("text", "rain", "class", "small", "x", x + 334, "y", y + 4);
    svg.leaf("rect", "class", "watered", "x", x + 380, "y", y - 6, "width", 12, "height", 12);
    svg.text("text", "watering", "class", "small", "x", x + 398, "y", y + 4);
    svg.leaf("rect", "class", "assumed", "x", x + 468, "y", y - 6, "width", 12, "height", 12);
    svg.text("text", "not noted, as on the card", "class", "small", "x", x + 486, "y", y + 4);
    svg.text(
        "text",
        "Ahead: the advice followed, forecast or usual temperatures, no rain unless forecast.",
        "class",
        "small",
        "x",
        x,
        "y",
        y + 26);
  }
}
