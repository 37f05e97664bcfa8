package org.grovewright.formats.weather;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;
import org.grovewright.model.Climate.DayWeather;

/** Reads daily weather from whatever kind of file it is in. */
public final class WeatherFiles {
  private static final int LONGEST_LINE = 4096;

  private WeatherFiles() {}

  /**
   * Reads a file of daily weather and fills its holes: a table as {@link WeatherCsv} reads it, or a
   * station record of the Global Historical Climatology Network (fixed width or by-station CSV),
   * either packed by gzip or not.
   *
   * @throws WeatherFileException if it cannot be read or used, or has months rather than days
   */
  public static FilledSeries days(Path path) {
    String file = path.toString();
    try (InputStream stream = Files.newInputStream(path);
        InputStream open = file.endsWith(".gz") ? new GZIPInputStream(stream) : stream;
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(open, StandardCharsets.UTF_8.newDecoder()))) {
      reader.mark(2 * LONGEST_LINE);
      char[] start = new char[LONGEST_LINE];
      int length = Math.max(0, reader.read(start));
      reader.reset();
      String firstLine = new String(start, 0, length).lines().findFirst().orElse("");
      if (GhcnDaily.isRecord(firstLine)) {
        return GhcnDaily.read(file, reader);
      }
      return filled(WeatherCsv.read(file, reader));
    } catch (NoSuchFileException e) {
      throw problem(file, "there is no such file");
    } catch (CharacterCodingException e) {
      throw problem(file, "is not text in UTF-8; save it as CSV in UTF-8");
    } catch (IOException e) {
      throw problem(file, "cannot be read: " + e.getMessage());
    }
  }

  private static FilledSeries filled(WeatherTable table) {
    if (table.monthly()) {
      throw problem(table.file(), "holds months; days are needed, a row each with a column date");
    }
    TreeMap<LocalDate, RawDay> raw = new TreeMap<>();
    for (DayWeather day : ClimateOfDays.days(table)) {
      raw.put(day.date(), RawDay.of(day));
    }
    return GapFilling.of(table.file(), raw, 0);
  }

  private static WeatherFileException problem(String file, String message) {
    return new WeatherFileException(file, List.of(new WeatherProblem(0, "", message)));
  }
}
