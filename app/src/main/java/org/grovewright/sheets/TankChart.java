package org.grovewright.sheets;

import java.time.LocalDate;
import java.util.List;
import org.grovewright.storage.TankYears;

/** Draws the level of a tank through the year: its mean, and the band down to one year in ten. */
final class TankChart {
  private static final double WIDTH = 640;
  private static final double HEIGHT = 300;
  private static final double LEFT = 72;
  private static final double RIGHT = 16;
  private static final double TOP = 24;
  private static final double BOTTOM = 40;
  private static final int DAYS = 365;
  private static final int TICKS = 4;

  private TankChart() {}

  /**
   * The drawing.
   *
   * @param levels level by day of the year
   * @param axis what the axis up says
   * @param perM3 units of that axis in a cubic metre
   * @param volumeM3 volume of the tank, m3
   */
  static String draw(List<TankYears.Level> levels, String axis, double perM3, double volumeM3) {
    Svg svg = new Svg();
    svg.drawing(WIDTH, HEIGHT, "chart", "tank-chart-title");
    svg.text("title", "Water in the tank through the year", "id", "tank-chart-title");
    for (int tick = 0; tick <= TICKS; tick++) {
      double volume = volumeM3 * tick / TICKS;
      double y = y(volume, volumeM3);
      svg.leaf("line", "class", "grid", "x1", LEFT, "y1", y, "x2", WIDTH - RIGHT, "y2", y);
      svg.text(
          "text",
          Decimals.fixed(volume * perM3, 0),
          "class",
          "tick end",
          "x",
          LEFT - 8,
          "y",
          y + 4);
    }
    for (int month = 1; month <= 12; month++) {
      double from = x(LocalDate.of(2001, month, 1).getDayOfYear());
      svg.leaf("line", "class", "grid", "x1", from, "y1", TOP, "x2", from, "y2", HEIGHT - BOTTOM);
      svg.text(
          "text",
          Words.month(month).substring(0, 3),
          "class",
          "tick mid",
          "x",
          x(LocalDate.of(2001, month, 15).getDayOfYear()),
          "y",
          HEIGHT - BOTTOM + 18);
    }
    StringBuilder mean = new StringBuilder();
    StringBuilder band = new StringBuilder();
    for (TankYears.Level level : levels) {
      Svg.lead(mean, x(level.dayOfYear()), y(level.mean(), volumeM3));
    }
    band.append(mean);
    for (int i = levels.size() - 1; i >= 0; i--) {
      TankYears.Level level = levels.get(i);
      // Where years are few or skewed, the mean may lie below the level of one year in ten.
      Svg.lead(band, x(level.dayOfYear()), y(Math.min(level.low(), level.mean()), volumeM3));
    }
    svg.leaf("path", "class", "range", "d", band + " Z");
    svg.leaf("path", "class", "curve", "d", mean);
    svg.text("text", axis, "class", "axis", "x", 8, "y", 15);
    svg.close();
    return svg.toString();
  }

  private static double x(int day) {
    return LEFT + (day - 1.0) / (DAYS - 1) * (WIDTH - LEFT - RIGHT);
  }

  private static double y(double volume, double volumeM3) {
    return HEIGHT - BOTTOM - volume / volumeM3 * (HEIGHT - TOP - BOTTOM);
  }
}
