package org.grovewright.bench;

import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.formats.inp.InpWriter;
import org.grovewright.formats.weather.WeatherOfDescription;
import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.EmitterVariation;
import org.grovewright.hydraulics.FieldUniformity;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.PreparedNetwork;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.irrigation.ZoneResult;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;

/**
 * Prints time, memory, steps and residuals of the solver by size of network. Times are of the
 * thread's own processor time. Run it with {@code bench/network}.
 */
public final class NetworkBench {
  private static final int[] SIZES = {100, 1_000, 10_000, 100_000};
  private static final int WARMING_ROUNDS = 4;

  /** Time of this thread alone, so that other work on the machine counts as little as may be. */
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

  private NetworkBench() {}

  /**
   * Runs all sizes with both friction formulas.
   *
   * @param args a directory to write the networks to as text for other engines, or nothing
   * @throws IOException if the networks cannot be written
   */
  public static void main(String[] args) throws IOException {
    if (args.length > 0) {
      for (int size : SIZES) {
        Network network = LoopedOrchard.of(size, FrictionFormula.HAZEN_WILLIAMS);
        Path file = Path.of(args[0], "looped-" + size + ".inp");
        Files.writeString(file, InpWriter.write(network).text());
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%-16s %9s %10s %10s %10s %10s %10s %6s %10s %10s %8s%n",
        "formula",
        "emitters",
        "build ms",
        "prepare ms",
        "solve ms",
        "both ms",
        "edit ms",
        "steps",
        "mass m3/s",
        "energy m",
        "MB");
    // both formulas in turn and untimed first, so that no row stands cold beside a warm one
    for (int round = 0; round < WARMING_ROUNDS; round++) {
      for (FrictionFormula formula : FrictionFormula.values()) {
        rowOf(formula, 1_000);
        rowOf(formula, 10_000);
      }
    }
    for (int size : SIZES) {
      for (FrictionFormula formula : FrictionFormula.values()) {
        System.out.print(rowOf(formula, size));
      }
    }
    draws();
  }

  /** Ten thousand draws of the emitters of every zone of the demo, each a solve of its network. */
  private static void draws() throws IOException {
    Plan plan = demo();
    EmitterVariation variation = new EmitterVariation(0.04, 0.05, 0.5, 1).inWater(0.5, 30, 4, 20);
    int draws = 10_000;
    for (ZoneResult zone : plan.watering().zones()) {
      Network network = zone.network().network();
      FieldUniformity.simulate(network, variation, draws / 10, 1);
      long start = CLOCK.getCurrentThreadCpuTime();
      FieldUniformity.simulate(network, variation, draws, 1);
      double seconds = (CLOCK.getCurrentThreadCpuTime() - start) / 1e9;
      System.out.printf(
          Locale.ROOT,
          "%d draws of %s of the demo (%d emitters): %.2f s%n",
          draws,
          zone.design().id(),
          network.emitters().size(),
          seconds);
    }
  }

  private static Plan demo() throws IOException {
    Catalogue catalogue = CatalogueFiles.load().catalogue();
    try (InputStream in =
        CatalogueFiles.class.getResourceAsStream("/org/grovewright/examples/demo.yaml")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Planner.plan(
          new DescriptionReader(catalogue, new WeatherOfDescription())
              .read(text, "demo.yaml", Path.of("")),
          catalogue);
    }
  }

  private static String rowOf(FrictionFormula formula, int size) {
    int rounds = Math.max(20, Math.min(3000, 2_000_000 / size));
    Network network = LoopedOrchard.of(size, formula);
    int few = Math.max(15, Math.min(300, rounds));
    double build = median(few, i -> LoopedOrchard.of(size, formula));
    double prepare = median(few, i -> Solver.prepare(network));
    double both = median(few, i -> Solver.prepare(network).solve());
    long before = used();
    PreparedNetwork prepared = Solver.prepare(network);
    double megabytes = (used() - before) / 1e6;
    double solve = median(rounds, i -> prepared.solve());
    String group = network.emitters().get(size / 2).id();
    EmitterCurve usual = network.emitters().get(size / 2).curve();
    EmitterCurve worn = usual.scaled(0.7);
    double edit =
        median(
            rounds,
            i -> {
              prepared.setEmitter(group, i % 2 == 0 ? worn : usual);
              return prepared.resolve();
            });
    Solution solution = prepared.solve();
    return String.format(
        Locale.ROOT,
        "%-16s %9d %10.3f %10.3f %10.3f %10.3f %10.3f %6d %10.1e %10.1e %8.1f%n",
        formula,
        size,
        build,
        prepare,
        solve,
        both,
        edit,
        solution.iterations(),
        solution.massResidual(),
        solution.energyResidual(),
        megabytes);
  }

  private static long used() {
    Runtime runtime = Runtime.getRuntime();
    for (int i = 0; i < 3; i++) {
      System.gc();
    }
    return runtime.totalMemory() - runtime.freeMemory();
  }

  private static double median(int rounds, java.util.function.IntFunction<Object> work) {
    double[] times = new double[rounds];
    Object last = null;
    for (int i = 0; i < rounds; i++) {
      long start = CLOCK.getCurrentThreadCpuTime();
      last = work.apply(i);
      times[i] = (CLOCK.getCurrentThreadCpuTime() - start) / 1e6;
    }
    if (last == null) {
      throw new IllegalStateException("nothing was done");
    }
    Arrays.sort(times);
    return times[rounds / 2];
  }
}
