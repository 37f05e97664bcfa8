/**
 * Weather as people have it in files.
 *
 * <p>A weather file is a table of values with a heading, parted by commas, or all by semicolons as
 * spreadsheets of many countries write; then numbers may have a decimal comma. Each row is a day
 * ({@code date}, as 2025-07-31) or the mean of a month ({@code month}, 1 to 12); lowest and highest
 * temperature must be there, everything else as far as it was measured. Headings may say their unit
 * ({@code tmax_f}, {@code rain_in}). {@link org.grovewright.formats.weather.WeatherCsv} reads the
 * table and names every fault by line and column. Station records of the Global Historical
 * Climatology Network are read as they are published. {@link
 * org.grovewright.formats.weather.WeatherFiles} takes either, fills the holes and counts what it
 * filled; {@link org.grovewright.formats.weather.ClimateOfDays} averages the days into the months
 * of a climate. {@link org.grovewright.formats.weather.UsualTemperatures} asks about files that
 * cannot be of their place, {@link org.grovewright.formats.weather.WaterLogCsv} reads an owner's
 * log of watering, and {@link org.grovewright.formats.weather.ForecastSource} fetches the coming
 * days from a service of the owner's choice; nothing is fetched unless asked for.
 */
package org.grovewright.formats.weather;
