package org.grovewright.bench;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.grovewright.catalogue.Catalogue;
import org.grovewright.catalogue.files.CatalogueFiles;
import org.grovewright.formats.description.DescriptionReader;
import org.grovewright.model.Grove;
import org.grovewright.plan.Plan;
import org.grovewright.plan.Planner;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Time of a full plan of an example, description in memory to plan in memory. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
@State(Scope.Benchmark)
public class PlanBenchmark {
  /** The example, by its name in the examples folder. */
  @Param({"demo", "us-gravity"})
  public String example;

  private Catalogue catalogue;
  private Grove grove;

  /** Reads the example once. */
  @Setup
  public void read() {
    catalogue = CatalogueFiles.load().catalogue();
    DescriptionReader reader =
        new DescriptionReader(
            catalogue,
            (file, height, source) -> {
              throw new IllegalStateException("the examples name no weather file");
            });
    grove = reader.read(Path.of("examples", example + ".yaml"));
  }

  /** One whole plan. */
  @Benchmark
  public Plan plan() {
    return Planner.plan(grove, catalogue);
  }
}
