package org.grovewright.formats.inp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Node;
import org.junit.jupiter.api.Test;

class InpReaderTest {
  private static final String TEXT =
      """
      [TITLE]
      an example
      [JUNCTIONS]
      ;id elev demand
      a  2.5  6 ; with a comment
      b  1
      [RESERVOIRS]
      r 30
      [TANKS]
      t 10 2 0 3 5 0
      [PIPES]
      p1 r a 100 25 0.02 1.5 Open
      p2 a b 50 20 0.02 CV
      p3 t b 10 20 0.02 0 Closed
      [VALVES]
      v a c 20 PRV 15 2
      w a b 20 TCV 4 0
      [STATUS]
      w Closed
      [EMITTERS]
      b 2
      [DEMANDS]
      b 12
      [OPTIONS]
      Units LPM
      Headloss D-W
      Emitter Exponent 0.5
      [CONTROLS]
      LINK p1 CLOSED AT TIME 3
      [END]
      """;

  @Test
  void readsPartsInTheirUnits() {
    var network = InpReader.read(TEXT).network();
    assertThat(network.formula()).isEqualTo(FrictionFormula.DARCY_WEISBACH);
    assertThat(network.nodes().get(0)).isEqualTo(new Node.Junction("a", 2.5));
    assertThat(network.nodes().get(3)).isEqualTo(new Node.Reservoir("t", 12));
    Link.Pipe pipe = (Link.Pipe) network.links().get(0);
    assertThat(pipe.length()).isEqualTo(100);
    assertThat(pipe.diameter()).isCloseTo(0.025, within(1e-12));
    assertThat(pipe.roughness().value()).isCloseTo(2e-5, within(1e-12));
    assertThat(pipe.minorLoss()).isEqualTo(1.5);
    assertThat(((Link.Pipe) network.links().get(1)).checkValve()).isTrue();
    assertThat(((Link.Pipe) network.links().get(2)).closed()).isTrue();
    assertThat(((Link.PressureRegulator) network.links().get(3)).setPressure()).isEqualTo(15);
    assertThat(((Link.LossDevice) network.links().get(4)).closed()).isTrue();
    assertThat(network.demands().get("a")).isCloseTo(1e-4, within(1e-9));
    assertThat(network.demands().get("b")).isCloseTo(2e-4, within(1e-8));
    assertThat(network.emitters().get(0).curve().flow(4)).isCloseTo(4e-3 / 60, within(1e-9));
  }

  @Test
  void namesWhatItLeavesOut() {
    InpReading reading = InpReader.read(TEXT);
    assertThat(reading.complete()).isFalse();
    assertThat(reading.notes())
        .extracting(InpNote::severity, InpNote::line, InpNote::message)
        .containsExactlyInAnyOrder(
            org.assertj.core.groups.Tuple.tuple(
                InpNote.Severity.NOTE,
                1,
                "section [TITLE] is left out; it does not change a steady solve"),
            org.assertj.core.groups.Tuple.tuple(
                InpNote.Severity.NOTE, 10, "tank t is held at its first level"),
            org.assertj.core.groups.Tuple.tuple(
                InpNote.Severity.ERROR,
                28,
                "section [CONTROLS] is not read, but may change the answer"));
    assertThat(reading.network().problems())
        .extracting(problem -> problem.message())
        .contains("link v names the node c, which does not exist");
  }

  @Test
  void namesWrongLines() {
    InpReading reading =
        InpReader.read(
            "[JUNCTIONS]\na high\n[PIPES]\np a b 3\n[VALVES]\nv a b 20 FCV 3 0\n"
                + "[PUMPS]\nu a b POWER 3\n[OPTIONS]\nUnits BARRELS\nHeadloss C-M\n");
    assertThat(reading.notes())
        .extracting(note -> note.line() + " " + note.message())
        .containsExactly(
            "10 the flow unit BARRELS is not known",
            "11 the friction formula C-M is not H-W or D-W",
            "2 \"high\" is not a number",
            "4 a pipe needs a name, two nodes, length, diameter and roughness",
            "8 pump u: POWER is not read",
            "8 pump u has no curve that can be read",
            "6 valve v: the type FCV is not read");
  }

  @Test
  void usUnitsAreFeetInchesAndPsi() {
    var network =
        InpReader.read(
                "[JUNCTIONS]\na 10 60\n[PIPES]\np a r 100 1 150\n[RESERVOIRS]\nr 100\n"
                    + "[OPTIONS]\nUnits GPM\nHeadloss H-W\n")
            .network();
    assertThat(network.nodes().get(0).elevation()).isCloseTo(3.048, within(1e-12));
    Link.Pipe pipe = (Link.Pipe) network.links().get(0);
    assertThat(pipe.length()).isCloseTo(30.48, within(1e-12));
    assertThat(pipe.diameter()).isCloseTo(0.0254, within(1e-12));
    assertThat(network.demands().get("a")).isCloseTo(3.785411784e-3, within(1e-8));
  }
}
