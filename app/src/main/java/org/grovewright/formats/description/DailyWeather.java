package org.grovewright.formats.description;

import java.nio.file.Path;
import org.grovewright.model.Climate;

/** Reads the file of daily weather that a description names. */
@FunctionalInterface
public interface DailyWeather {
  /**
   * Reads daily weather and averages its months.
   *
   * @param file the file
   * @param windHeightM height of the wind measurements above ground, metres
   * @param source where the numbers come from, in the owner's words
   * @throws DescriptionException if the file cannot be used; problems carry its own lines
   */
  Climate read(Path file, double windHeightM, String source);
}
