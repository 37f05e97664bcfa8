package org.grovewright.bench;

import java.util.concurrent.TimeUnit;
import org.grovewright.quantity.FigureBook;
import org.grovewright.water.WaterNeeds;
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

/** The water needs of forty plants in every month of three years, figures and workings included. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class WaterNeedsBenchmark {
  private static final int PLANTS = 40;

  private BalanceCase grove;

  /** Makes the grove. */
  @Setup
  public void makeGrove() {
    grove = new BalanceCase(PLANTS);
  }

  /** The needs and their figures. */
  @Benchmark
  public WaterNeeds needs() {
    return WaterNeeds.of(grove.grove, grove.catalogue, new FigureBook());
  }
}
