package org.grovewright.bench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.grovewright.catalogue.Mulch;
import org.grovewright.catalogue.Species;
import org.grovewright.water.BalanceTotals;
import org.grovewright.water.DailyClimate;
import org.grovewright.water.PlantSeries;
import org.grovewright.water.SoilWater;
import org.grovewright.water.WettedSurface;

/**
 * Times the daily water balance and writes its input for the same loop in C; {@code
 * bench/compare-balance} runs both.
 */
public final class BalanceComparison {
  private static final int PLANTS = 1000;
  private static final int RUNS = 9;

  private BalanceComparison() {}

  /**
   * Writes the input to the file named and prints nanoseconds per plant and day, transpired and
   * lost water.
   */
  public static void main(String[] args) throws IOException {
    BalanceCase grove = new BalanceCase(PLANTS);
    write(grove, Path.of(args[0]));
    // Processor time of this thread, so that other work on the machine does not count.
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    double best = Double.POSITIVE_INFINITY;
    double transpired = 0;
    double lost = 0;
    for (int run = 0; run < RUNS; run++) {
      transpired = 0;
      lost = 0;
      long from = threads.getCurrentThreadCpuTime();
      for (int plant = 0; plant < PLANTS; plant++) {
        BalanceTotals totals = grove.run(plant);
        transpired += totals.transpiredM3();
        lost += totals.lostM3();
      }
      best = Math.min(best, (double) (threads.getCurrentThreadCpuTime() - from));
    }
    double each = best / PLANTS / grove.weather.days();
    System.out.printf(Locale.ROOT, "%.3f %.6f %.6f%n", each, transpired, lost);
  }

  private static void write(BalanceCase grove, Path file) throws IOException {
    DailyClimate weather = grove.weather;
    SoilWater soil = grove.needs.soil();
    Mulch mulch = grove.catalogue.mulches().get("mulch.wood-chips");
    double depth = grove.catalogue.constant("water.evaporation-depth").value();
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
      number(out, weather.days());
      number(out, weather.months());
      number(out, PLANTS);
      number(out, soil.readilyEvaporableM() * 1000);
      number(
          out, WettedSurface.totalEvaporableMm(soil.fieldCapacity(), soil.wiltingPoint(), depth));
      number(out, soil.totalAvailableM(1) * 1000);
      number(out, mulch.evaporationReduction());
      for (int day = 0; day < weather.days(); day++) {
        number(out, weather.et0Mm(day));
        number(out, weather.rainMm(day) - weather.runoffMm(day));
        number(out, weather.limitShift(day));
        number(out, grove.irrigationM3[day]);
        number(out, weather.dayOfYear(day));
        number(out, weather.slot(day));
      }
      for (int i = 0; i < PLANTS; i++) {
        Species species =
            grove.catalogue.species().get(grove.grove.plantings().get(i).speciesKey());
        write(out, grove.plants.get(i), species, weather.months());
      }
    }
  }

  private static void write(OutputStream out, PlantSeries plant, Species species, int months)
      throws IOException {
    number(out, species.depletion());
    for (int day = 0; day <= 365; day++) {
      number(out, plant.basal(day));
    }
    for (int slot = 0; slot < months; slot++) {
      number(out, plant.soilM2(slot));
      number(out, plant.rootDepthM(slot));
      number(out, plant.perSoil(slot));
      number(out, plant.shade(slot));
      number(out, plant.heightFactor(slot));
      number(out, plant.wetted(slot));
      number(out, plant.exposedDrip(slot));
      number(out, plant.exposedRain(slot));
    }
  }

  private static void number(OutputStream out, double value) throws IOException {
    out.write(
        ByteBuffer.allocate(Double.BYTES).order(ByteOrder.nativeOrder()).putDouble(value).array());
  }
}
