package org.grovewright.formats.inp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.grovewright.hydraulics.EmitterCurve;
import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.LossCurve;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.PumpCurve;
import org.grovewright.hydraulics.Roughness;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.grovewright.hydraulics.SupplyCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class InpWriterTest {
  private static Network network(FrictionFormula formula) {
    Roughness rough =
        formula == FrictionFormula.HAZEN_WILLIAMS
            ? Roughness.hazenWilliams(145)
            : Roughness.darcyWeisbach(2e-5);
    EmitterCurve drip = EmitterCurve.through(1e-6, 10, 0.5);
    return Network.builder(formula)
        .gravity(InpUnits.GRAVITY)
        .source("tap", 1, new SupplyCurve(30, 3e6, 1.85))
        .reservoir("pond", 0)
        .junction("lift", 0)
        .junction("a", 0)
        .junction("b", 0)
        .junction("c", -1)
        .junction("d", 0)
        .pump("pump", "pond", "lift", PumpCurve.ofPoints(40, 5e-4, 35, 1e-3, 20))
        .checkValve("cv", "lift", "a", 0.025, 2)
        .filter("f", "tap", "a", LossCurve.power(2e6, 2))
        .valve("reg", "a", "b", 0.02, 12, 3)
        .link(Link.Pipe.of("p1", "b", "c", 20, 0.016, rough).withMinorLoss(1.5))
        .link(Link.Pipe.of("p2", "c", "d", 20, 0.016, rough).withCheckValve())
        .link(Link.Pipe.of("p3", "b", "d", 20, 0.016, rough).shut())
        .emitter("c", drip, 60)
        .emitter("d", drip)
        .emitter("d", drip, 30)
        .demand("d", 2e-5)
        .build();
  }

  /** Written and read again a network has the same heads and flows. */
  @ParameterizedTest
  @EnumSource(FrictionFormula.class)
  void roundTripKeepsTheSolution(FrictionFormula formula) {
    Network network = network(formula);
    InpWriting writing = InpWriter.write(network);
    InpReading reading = InpReader.read(writing.text());
    assertThat(reading.complete()).as(reading.notes().toString()).isTrue();
    assertThat(reading.network().problems()).isEmpty();
    Solution before = Solver.solve(network);
    Solution after = Solver.solve(reading.network());
    for (String id : new String[] {"tap", "lift", "a", "b", "c", "d"}) {
      assertThat(after.head(id)).as(id).isCloseTo(before.head(id), within(1e-3));
    }
    for (String id : new String[] {"pump", "f", "cv", "reg", "p1", "p2"}) {
      assertThat(after.flow(id)).as(id).isCloseTo(before.flow(id), within(1e-7));
    }
    assertThat(after.outflow("d")).isCloseTo(before.outflow("d"), within(1e-9));
  }

  @Test
  void namesWhatTheFormatCannotSay() {
    Network network =
        Network.builder(FrictionFormula.HAZEN_WILLIAMS)
            .reservoir("my tank", 20)
            .junction("a", 0)
            .filter("f", "my tank", "a", LossCurve.power(1e5, 1.7))
            .emitter("a", EmitterCurve.power(1e-6, 0.5))
            .emitter("a", EmitterCurve.pressureCompensating(1e-6, 5, 40, 0.02))
            .build();
    assertThat(InpWriter.write(network).notes())
        .extracting(InpNote::message)
        .containsExactly(
            "the name \"my tank\" is written as my_tank",
            "the loss curve of f is not of the squared flow and cannot be written",
            "the format has one exponent for all emitters, here 0.5; 1 of 2 follow another law and"
                + " have their flow at one pressure only, from 10.00 to 10.00 m");
  }

  /** A curve of pieces reads back as such, also where its points look like those of a power law. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "0 40 2 12",
        "0.5 40 2 12",
        "0 40 1 35 2 12",
        "0.5 40 1 35 2 12",
        "0 40 1 35 1.5 34 2 12"
      })
  void roundTripKeepsACurveOfPieces(String points) {
    double[] values = Arrays.stream(points.split(" ")).mapToDouble(Double::parseDouble).toArray();
    List<PumpCurve.Point> list = new ArrayList<>();
    for (int i = 0; i < values.length; i += 2) {
      list.add(new PumpCurve.Point(values[i] * 1e-3, values[i + 1]));
    }
    PumpCurve curve = new PumpCurve.Pieces(list);
    Network network =
        Network.builder(FrictionFormula.HAZEN_WILLIAMS)
            .reservoir("pond", 0)
            .junction("a", 0)
            .pump("pump", "pond", "a", curve)
            .emitter("a", EmitterCurve.through(1.2e-3, 30, 0.5))
            .build();
    InpReading reading = InpReader.read(InpWriter.write(network).text());
    assertThat(reading.complete()).as(reading.notes().toString()).isTrue();
    PumpCurve back = ((Link.Pump) reading.network().links().get(0)).curve();
    assertThat(back).isInstanceOf(PumpCurve.Pieces.class);
    assertThat(back.mostHead()).isEqualTo(curve.mostHead());
    assertThat(back.mostFlow()).isCloseTo(curve.mostFlow(), within(1e-12));
    for (double flow = 0; flow < 3e-3; flow += 1e-4) {
      assertThat(back.headAt(flow)).as("at " + flow).isCloseTo(curve.headAt(flow), within(1e-9));
    }
    assertThat(Solver.solve(reading.network()).flow("pump"))
        .isCloseTo(Solver.solve(network).flow("pump"), within(1e-9));
  }
}
