package org.grovewright.sheets;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.grovewright.quantity.Kind;
import org.grovewright.season.SoilTrace;
import org.grovewright.season.SoilTrace.Day;

/**
 * Draws the water in the soil of one plant day by day between field capacity and the stress line,
 * with the rain and irrigation that went into it below.
 */
final class SoilTraceChart {
  private static final double WIDTH = 960;
  private static final double LEFT = 58;
  private static final double RIGHT = 150;
  private static final double TOP = 14;
  private static final double SOIL_BOTTOM = 236;
  private static final double BARS_TOP = 262;
  private static final double BARS_BOTTOM = 350;
  private static final double HEIGHT = 384;
  private static final double TEXT = 14;

  private final SoilTrace trace;
  private final ReaderUnits.Unit depth;
  private final double mostHeld;
  private final double mostIn;
  private final Svg svg = new Svg();

  private SoilTraceChart(SoilTrace trace, ReaderUnits units) {
    this.trace = trace;
    depth = units.chartUnit(Kind.WATER_DEPTH);
    mostHeld = trace.days().stream().mapToDouble(Day::totalMm).max().orElse(1) * 1.05;
    mostIn =
        trace.days().stream()
            .mapToDouble(d -> Math.max(d.rainMm(), d.irrigationMm()))
            .max()
            .orElse(1);
  }

  /**
   * The drawing, for a page whose style sheet holds that of the seasons.
   *
   * @param id part of the ids in the drawing, unique in the page
   */
  static String draw(SoilTrace trace, String id, ReaderUnits units) {
    return new SoilTraceChart(trace, units).drawn(id);
  }

  private String drawn(String id) {
    svg.drawing(WIDTH, HEIGHT, "season trace", id + "-title");
    long stressed = trace.days().stream().filter(Day::stressed).count();
    svg.text(
        "title",
        "Water in the soil of "
            + trace.plantId()
            + " through the year; it falls below the stress line on "
            + Words.count(stressed, "day", "days")
            + ".",
        "id",
        id + "-title");
    grid();
    months();
    bars();
    line("capacity", Day::totalMm);
    line("stress", d -> d.totalMm() - d.readilyMm());
    line("held", d -> d.totalMm() - d.missingMm());
    List<Day> days = trace.days();
    for (int i = 0; i < days.size(); i++) {
      if (days.get(i).stressed()) {
        svg.leaf(
            "circle",
            "class",
            "dry",
            "cx",
            x(i),
            "cy",
            held(days.get(i).totalMm() - days.get(i).missingMm()),
            "r",
            3.2);
      }
    }
    names();
    svg.close();
    return svg.toString();
  }

  private void grid() {
    for (double tick : ticks(mostHeld)) {
      gridLine(held(tick), tick);
    }
    for (double tick : ticks(mostIn)) {
      gridLine(into(tick), tick);
    }
    turned("In the soil, " + depth.symbol(), (TOP + SOIL_BOTTOM) / 2);
    turned("In, " + depth.symbol(), (BARS_TOP + BARS_BOTTOM) / 2);
  }

  private void gridLine(double y, double mm) {
    svg.leaf("line", "class", "grid", "x1", LEFT, "y1", y, "x2", WIDTH - RIGHT, "y2", y);
    svg.text(
        "text",
        Decimals.significant(depth.of(mm / 1000), 4),
        "class",
        "end",
        "x",
        LEFT - 6,
        "y",
        y + 4);
  }

  private void turned(String text, double y) {
    svg.text(
        "text",
        text,
        "class",
        "mid strong",
        "transform",
        "translate(14 " + Decimals.coordinate(y) + ") rotate(-90)");
  }

  /** Round values from zero up to about three in the reader's unit, mm. */
  private double[] ticks(double mostMm) {
    double most = depth.of(mostMm / 1000);
    double rough = most / 3;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double lead = rough / power;
    double step = power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10);
    int count = (int) (most / step + 1e-9);
    double[] ticks = new double[count + 1];
    for (int i = 0; i <= count; i++) {
      ticks[i] = i * step * mostMm / most;
    }
    return ticks;
  }

  private void months() {
    List<Day> days = trace.days();
    for (int i = 0; i < days.size(); i++) {
      if (days.get(i).date().getDayOfMonth() == 1) {
        svg.leaf("line", "class", "grid", "x1", x(i), "y1", TOP, "x2", x(i), "y2", BARS_BOTTOM);
        svg.text(
            "text",
            Words.month(days.get(i).date().getMonthValue()).substring(0, 3),
            "class",
            "mid",
            "x",
            x(i) + (WIDTH - LEFT - RIGHT) / 24,
            "y",
            HEIGHT - 12);
      }
    }
  }

  private void bars() {
    double width = (WIDTH - LEFT - RIGHT) / trace.days().size();
    List<Day> days = trace.days();
    for (int i = 0; i < days.size(); i++) {
      // Irrigation comes first so that the often smaller rain of the same day stays in sight.
      bar("irrigation", i, days.get(i).irrigationMm(), width);
      bar("rain", i, days.get(i).rainMm(), width);
    }
  }

  private void bar(String name, int day, double mm, double width) {
    if (mm > 0) {
      double y = into(mm);
      svg.leaf(
          "rect",
          "class",
          name,
          "x",
          x(day) - width / 2,
          "y",
          y,
          "width",
          width,
          "height",
          BARS_BOTTOM - y);
    }
  }

  private void line(String name, ToDoubleFunction<Day> mm) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < trace.days().size(); i++) {
      path.append(i == 0 ? "M" : " L")
          .append(Decimals.plain(x(i), 1))
          .append(' ')
          .append(Decimals.plain(held(mm.applyAsDouble(trace.days().get(i))), 1));
    }
    svg.leaf("path", "class", name, "d", path);
  }

  /** The names of the lines beside their ends, pushed apart where they would meet. */
  private void names() {
    Day last = trace.days().get(trace.days().size() - 1);
    double x = WIDTH - RIGHT + 8;
    double capacity = held(last.totalMm());
    double stress = held(last.totalMm() - last.readilyMm());
    double held =
        Math.min(
            stress - TEXT, Math.max(capacity + TEXT + 2, held(last.totalMm() - last.missingMm())));
    svg.text("text", "field capacity", "class", "capacity-name", "x", x, "y", capacity + 4);
    svg.text("text", "water in the soil", "class", "held-name", "x", x, "y", held + 4);
    svg.text("text", "stress line", "class", "stress-name", "x", x, "y", stress + 5);
    svg.leaf("rect", "class", "rain", "x", x, "y", BARS_TOP + 14, "width", 12, "height", 12);
    svg.text("text", "rain", "x", x + 18, "y", BARS_TOP + 25);
    svg.leaf("rect", "class", "irrigation", "x", x, "y", BARS_TOP + 38, "width", 12, "height", 12);
    svg.text("text", "irrigation", "x", x + 18, "y", BARS_TOP + 49);
  }

  private double x(int day) {
    return LEFT + (day + 0.5) / trace.days().size() * (WIDTH - LEFT - RIGHT);
  }

  private double held(double mm) {
    return SOIL_BOTTOM - mm / mostHeld * (SOIL_BOTTOM - TOP);
  }

  private double into(double mm) {
    return BARS_BOTTOM - mm / mostIn * (BARS_BOTTOM - BARS_TOP);
  }
}
