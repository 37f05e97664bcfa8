package org.grovewright.formats.weather;

import java.util.List;
import org.grovewright.model.Climate.DayWeather;

/**
 * A daily series without holes, and what was done to it.
 *
 * @param days every day from the first to the last
 * @param leftOut values that the station's own quality control had marked as wrong
 * @param cutOff values of a station record that are not there, for their lines are cut off
 * @param swapped days whose lowest temperature was above the highest, turned round
 * @param interpolated temperatures put on a straight line between their neighbours
 * @param borrowed temperatures taken from the same day of the nearest year that has one
 * @param rainBorrowed rain taken from the same day of the nearest year that has it
 */
public record FilledSeries(
    List<DayWeather> days,
    int leftOut,
    int cutOff,
    int swapped,
    int interpolated,
    int borrowed,
    int rainBorrowed) {
  /** Copies the days. */
  public FilledSeries {
    days = List.copyOf(days);
  }

  FilledSeries withCutOff(int values) {
    return new FilledSeries(days, leftOut, values, swapped, interpolated, borrowed, rainBorrowed);
  }

  /** What was done, in words; empty text if nothing was. */
  public String remarks() {
    StringBuilder text = new StringBuilder();
    add(
        text,
        leftOut,
        "value marked as wrong by the station left out",
        "values marked as wrong by" + " the station left out");
    add(
        text,
        cutOff,
        "value missing where a line of the file is cut off",
        "values missing where lines of the file are cut off");
    add(text, swapped, "day with its temperatures swapped", "days with their temperatures swapped");
    add(text, interpolated, "temperature interpolated", "temperatures interpolated");
    add(
        text,
        borrowed,
        "temperature taken from the nearest year",
        "temperatures taken from the nearest year");
    add(
        text,
        rainBorrowed,
        "day of rain taken from the nearest year",
        "days of rain taken from the" + " nearest year");
    return text.toString();
  }

  private static void add(StringBuilder text, int count, String one, String many) {
    if (count > 0) {
      text.append(text.isEmpty() ? "" : ", ").append(count).append(' ');
      text.append(count == 1 ? one : many);
    }
  }
}
