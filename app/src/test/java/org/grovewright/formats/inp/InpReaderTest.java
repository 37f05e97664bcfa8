package org.grovewright.formats.inp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.grovewright.hydraulics.FrictionFormula;
import org.grovewright.hydraulics.Link;
import org.grovewright.hydraulics.Node;
import org.grovewright.hydraulics.PumpCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  private static final String PUMPED =
      "[JUNCTIONS]\na 0 1\n[RESERVOIRS]\nr 0\n[PUMPS]\nu r a HEAD c%s\n[OPTIONS]\nUnits %s\n"
          + "[CURVES]\n%s\n";

  private static InpReading pumped(String speed, String units, String... points) {
    return InpReader.read(PUMPED.formatted(speed, units, "c " + String.join("\nc ", points)));
  }

  private static PumpCurve curve(InpReading reading) {
    assertThat(reading.notes()).isEmpty();
    assertThat(reading.network().problems()).isEmpty();
    return ((Link.Pump) reading.network().links().get(0)).curve();
  }

  /** As the format's engine does: one point and three from no flow make power laws, others not. */
  @Test
  void curvesOfAnyShapeAreRead() {
    assertThat(curve(pumped("", "LPS", "5 20"))).isInstanceOf(PumpCurve.PowerLaw.class);
    assertThat(curve(pumped("", "LPS", "0 30", "5 20", "7 10")))
        .isInstanceOf(PumpCurve.PowerLaw.class);
    for (String points : new String[] {"0 30|5 20", "1 30|5 20|7 10", "0 30|2 29|5 20|7 10"}) {
      PumpCurve curve = curve(pumped("", "LPS", points.split("\\|")));
      assertThat(curve).as(points).isInstanceOf(PumpCurve.Pieces.class);
      assertThat(curve.headAt(5 * InpUnits.LPS.flow())).as(points).isCloseTo(20, within(1e-9));
    }
  }

  /** By the affinity laws, in US units: 30 ft at 100 gal/min are 7.5 ft at 50 at half the speed. */
  @Test
  void aCurveOfPiecesIsReadAtItsSpeedAndInItsUnits() {
    PumpCurve curve = curve(pumped(" SPEED 0.5", "GPM", "0 40", "100 30", "150 20", "200 4"));
    assertThat(curve.headAt(50 * InpUnits.GPM.flow())).isCloseTo(7.5 * 0.3048, within(1e-9));
    assertThat(curve.mostHead()).isCloseTo(10 * 0.3048, within(1e-9));
    PumpCurve same =
        ((Link.Pump)
                InpReader.read(
                        PUMPED.formatted("", "GPM", "c 0 40\nc 100 30\nc 150 20\nc 200 4")
                            + "[STATUS]\nu 0.5\n")
                    .network()
                    .links()
                    .get(0))
            .curve();
    assertThat(same).isEqualTo(curve);
  }

  /** One message that names curve and pump, on the line of the point, and nothing after it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      value = {
        "0 30|5 30|6 20|7 10 = 11 curve c of pump u: its heads must fall from point to point, but"
            + " 30 ft follows 30 ft",
        "0 30|5 20|5 10 = 12 curve c of pump u: its flows must rise from point to point, but 5"
            + " gal/min follows 5 gal/min",
        "-2 30|5 20 = 10 curve c of pump u: its first flow must not be below 0 gal/min, but is -2"
            + " gal/min",
        "0 -1|5 -20 = 10 curve c of pump u: its first head must be above 0 ft, but is -1 ft",
        "0 30 = 10 curve c of pump u: its first flow must be above 0 gal/min, but is 0 gal/min",
        "5 0 = 10 curve c of pump u: its first head must be above 0 ft, but is 0 ft",
        "0 30|NaN 20 = 11 curve c of pump u: \"NaN\" is not a number",
        "0 30|5 Infinity = 11 curve c of pump u: \"Infinity\" is not a number",
        "0 30|5 1e999 = 11 curve c of pump u: 1e999 is too large a number",
        "0 30|5 = 11 curve c of pump u: every point needs a flow and a head",
        "0 30|5 29.99|5.1 1 = 10 curve c of pump u: three points from no flow are read as a power"
            + " law, which does not go through these; with a fourth point between two of them they"
            + " are read as straight pieces"
      })
  void aBadCurveGivesOneMessage(String points, String message) {
    InpReading reading = pumped("", "GPM", points.split("\\|"));
    assertThat(reading.notes())
        .extracting(note -> note.line() + " " + note.message())
        .containsExactly(message);
    assertThat(reading.complete()).isFalse();
    assertThat(reading.network().problems()).isEmpty();
  }

  @Test
  void aCurveOfSeveralPumpsIsToldOfOnce() {
    InpReading reading =
        InpReader.read(
            "[JUNCTIONS]\na 0 1\n[RESERVOIRS]\nr 0\n[PUMPS]\nu r a HEAD c\nw r a HEAD c\n"
                + "x r a HEAD d\n[CURVES]\nc 0 1\nc 1 2\n");
    assertThat(reading.notes())
        .extracting(note -> note.line() + " " + note.message())
        .containsExactly(
            "11 curve c of pumps u, w: its heads must fall from point to point, but 2 ft follows 1"
                + " ft",
            "8 curve d of pump x: there is no such curve in [CURVES]");
    assertThat(reading.network().problems()).isEmpty();
  }

  /** Every fault is told once, in the units of the text. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      value = {
        "GPM,H-W,p r a -3 1 130 = pipe p: length must be above 0 ft, but is -3 ft",
        "LPS,H-W,p r a -3 1 130 = pipe p: length must be above 0 m, but is -3 m",
        "GPM,H-W,p r a 3 0.0 130 = pipe p: inside diameter must be above 0 in, but is 0.0 in",
        "LPS,H-W,p r a 3 0.0 130 = pipe p: inside diameter must be above 0 mm, but is 0.0 mm",
        "LPS,D-W,p r a 3 20 12 = pipe p: its roughness height of 12 mm is half of its inside"
            + " diameter or more, which is 20 mm",
        "GPM,D-W,p r a 3 1 50 = pipe p: its roughness height of 50 thousandths of a foot is half"
            + " of its inside diameter or more, which is 1 in",
        "LPS,D-W,p r a 3 20 -1 = pipe p: roughness height must be 0 mm or more, but is -1 mm",
        "LPS,H-W,p r a 3 20 0 = pipe p: Hazen-Williams C must be above 0, but is 0",
        "LPS,H-W,p r a 3 2o 130 = \"2o\" is not a number",
        "LPS,D-W,p r a 3 2o 130 = \"2o\" is not a number",
        "LPS,H-W,p r a NaN 20 130 = \"NaN\" is not a number",
        "LPS,H-W,p r a 3 Infinity 130 = \"Infinity\" is not a number",
        "LPS,H-W,p r a 3 20 130 -1 = pipe p: minor-loss K must be 0 or more, but is -1",
        "LPS,H-W,p r a 3 = a pipe needs a name, two nodes, length, diameter and roughness",
        "LPS,H-W,p r a 3 20d 130 = \"20d\" is not a number"
      })
  void aFaultIsToldOnceInTheUnitsOfTheText(String network, String message) {
    String[] parts = network.split(",");
    InpReading reading =
        InpReader.read(
            "[OPTIONS]\nUnits %s\nHeadloss %s\n".formatted(parts[0], parts[1])
                + "[RESERVOIRS]\nr 50\n[JUNCTIONS]\na 0 1\n[STATUS]\np Open\n[PIPES]\n"
                + parts[2]
                + "\n");
    assertThat(reading.notes())
        .extracting(note -> note.line() + " " + note.message())
        .containsExactly("11 " + message);
    assertThat(reading.network().problems()).isEmpty();
  }

  @Test
  void valvesEmittersOptionsAndPumpsAreToldInTheUnitsOfTheTextToo() {
    InpReading reading =
        InpReader.read(
            "[OPTIONS]\nUnits GPM\nViscosity 0\nEmitter Exponent 2\nDemand Multiplier NaN\n"
                + "[RESERVOIRS]\nr Infinity\nt\n[JUNCTIONS]\na NaN x\nb 0\nc 0\n[VALVES]\n"
                + "v r a 0 PRV -4 0\nw a b 1 TCV -1\nz t c\n[EMITTERS]\na -1\n[PUMPS]\n"
                + "u r b HEAD k SPEED -1\n[CURVES]\nk 5 20\n");
    assertThat(reading.notes())
        .extracting(note -> note.line() + " " + note.message())
        .containsExactlyInAnyOrder(
            "3 the viscosity must be above 0, but is 0",
            "4 the emitter exponent must be from 0 to 1, but is 2",
            "5 \"NaN\" is not a number",
            "7 \"Infinity\" is not a number",
            "8 a reservoir needs a name and a head",
            "10 \"NaN\" is not a number",
            "10 \"x\" is not a number",
            "14 valve v: diameter must be above 0 in, but is 0 in",
            "14 valve v: set pressure must be 0 psi or more, but is -4 psi",
            "15 valve w: minor-loss K must be 0 or more, but is -1",
            "16 a valve needs a name, two nodes, diameter, type and setting",
            "18 emitter at a: coefficient must be 0 or more, but is -1",
            "20 pump u: speed must be 0 or more, but is -1");
    assertThat(reading.network().problems()).isEmpty();
  }

  /** What hangs on a link to a node that does not exist is not said to lack a source as well. */
  @Test
  void aMissingNodeIsToldOnce() {
    InpReading reading =
        InpReader.read("[RESERVOIRS]\nr 50\n[JUNCTIONS]\na 0 1\n[PIPES]\np x a 3 1 130\n");
    assertThat(reading.network().problems())
        .extracting(problem -> problem.message())
        .containsExactly("link p names the node x, which does not exist");
  }
}
