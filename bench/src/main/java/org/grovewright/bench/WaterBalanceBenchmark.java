package org.grovewright.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The daily water balance of a thousand plants through thirty years, on one core. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class WaterBalanceBenchmark {
  private static final int PLANTS = 1000;

  private BalanceCase grove;

  /** Makes the grove and its weather. */
  @Setup
  public void makeGrove() {
    grove = new BalanceCase(PLANTS);
  }

  /** The balance alone. */
  @Benchmark
  public double balance() {
    double lost = 0;
    for (int plant = 0; plant < PLANTS; plant++) {
      lost += grove.run(plant).lostM3();
    }
    return lost;
  }

  /** The sizes of all plants by month and then the balance. */
  @Benchmark
  public double growthAndBalance() {
    grove.buildPlants();
    return balance();
  }
}
