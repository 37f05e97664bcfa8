package org.grovewright.bench;

import java.util.concurrent.TimeUnit;
import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.PreparedNetwork;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
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

/** Time of the network solver by number of emitters. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class NetworkSolveBenchmark {
  /** Number of emitters. */
  @Param({"100", "1000", "10000", "100000"})
  public int emitters;

  /** Friction formula. */
  @Param({"HAZEN_WILLIAMS", "DARCY_WEISBACH"})
  public FrictionFormula formula;

  private Network network;
  private PreparedNetwork prepared;
  private String edited;
  private EmitterCurve usual;
  private EmitterCurve worn;
  private boolean isWorn;

  /** Builds the network and solves it once. */
  @Setup
  public void setUp() {
    network = LoopedOrchard.of(emitters, formula);
    prepared = Solver.prepare(network);
    prepared.solve();
    edited = network.emitters().get(emitters / 2).id();
    usual = network.emitters().get(emitters / 2).curve();
    worn = usual.scaled(0.7);
  }

  /** Order of elimination, pattern and first solve. */
  @Benchmark
  public Solution prepareAndSolve() {
    return Solver.prepare(network).solve();
  }

  /** A solve from scratch on a prepared network. */
  @Benchmark
  public Solution solve() {
    return prepared.solve();
  }

  /** A solve after one emitter's curve changed, from the solve before. */
  @Benchmark
  public Solution resolveAfterOneEmitter() {
    isWorn = !isWorn;
    prepared.setEmitter(edited, isWorn ? worn : usual);
    return prepared.resolve();
  }
}
