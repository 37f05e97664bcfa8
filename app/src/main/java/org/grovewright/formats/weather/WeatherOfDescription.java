package org.grovewright.formats.weather;

import java.nio.file.Path;
import org.grovewright.formats.description.DailyWeather;
import org.grovewright.formats.description.DescriptionException;
import org.grovewright.formats.description.Problem;
import org.grovewright.model.Climate;
import org.grovewright.texts.Sentence;

/** The reader of the weather files that descriptions name. */
public final class WeatherOfDescription implements DailyWeather {
  @Override
  public Climate read(Path file, double windHeightM, String source) {
    try {
      return ClimateOfDays.of(file.toString(), WeatherFiles.days(file), windHeightM, source);
    } catch (WeatherFileException e) {
      throw new DescriptionException(
          e.file(),
          e.problems().stream()
              .map(
                  p ->
                      new Problem(
                          p.line(), p.line() > 0 ? 1 : 0, p.column(), Sentence.asIs(p.message())))
              .toList());
    }
  }
}
