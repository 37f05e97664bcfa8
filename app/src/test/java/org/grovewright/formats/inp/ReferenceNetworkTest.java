package org.grovewright.formats.inp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.grovewright.hydraulics.Network;
import org.grovewright.hydraulics.Node;
import org.grovewright.hydraulics.Solution;
import org.grovewright.hydraulics.Solver;
import org.junit.jupiter.api.Test;

/**
 * Heads and flows of 240 random networks against those of the public-domain EPANET engine; see the
 * README beside the data for where they come from.
 */
class ReferenceNetworkTest {
  private static final Path DATA = Path.of("../engine/src/test/reference/networks");

  /**
   * Flows below this, in m3/s (10 l/h), are compared by their difference alone, which may be 0.01
   * l/h: the engine rounds the coefficients of friction and of fittings differently (32.2 ft/s2 and
   * 0.02517), which shows in the trickle through the middle of a loop.
   */
  private static final double LEAST_FLOW = 1e-2 / 3600;

  private static final double HEAD_TOLERANCE = 1e-3;
  private static final double FLOW_TOLERANCE = 1e-3;

  private double worstHead;
  private double worstFlow;
  private double worstOutflow;
  private int compared;
  private final List<String> failures = new ArrayList<>();

  @Test
  void headsAndFlowsAgree() throws IOException {
    List<String> networks = List.of(read("networks.inp.gz").split("(?m)^;; network \\d+\\n"));
    List<String> results = List.of(read("results.txt.gz").split("(?m)^network \\d+\\n"));
    assertThat(networks).hasSameSizeAs(results).hasSizeGreaterThan(200);
    for (int i = 1; i < networks.size(); i++) {
      compare(i - 1, networks.get(i), results.get(i));
    }
    assertThat(failures)
        .as("worst head %s m, link flow %s, outflow %s", worstHead, worstFlow, worstOutflow)
        .isEmpty();
    assertThat(compared).isGreaterThanOrEqualTo(200);
  }

  private void compare(int number, String text, String result) {
    InpReading reading = InpReader.read(text);
    assertThat(reading.complete()).as("notes of network " + number + reading.notes()).isTrue();
    Network network = reading.network();
    assertThat(network.problems()).as("network " + number).isEmpty();
    InpUnits units = InpUnits.named(text.split("Units ")[1].split("\\s")[0]);
    Solution solution = Solver.solve(network);
    for (String line : result.split("\n")) {
      String[] fields = line.split(" ");
      String id = fields[1];
      String where = "network " + number + " " + line;
      if (fields[0].equals("n")) {
        double head = units.length() * Double.parseDouble(fields[2]);
        double error = Math.abs(solution.head(id) - head);
        worstHead = Math.max(worstHead, error);
        if (!(error < HEAD_TOLERANCE)) {
          failures.add(where + ": head " + solution.head(id) / units.length());
        }
        if (network.nodes().get(network.nodeIndex(id)) instanceof Node.Junction) {
          double outflow = solution.outflow(id) + network.demands().getOrDefault(id, 0.0);
          worstOutflow = Math.max(worstOutflow, flowError(where, outflow, fields[3], units));
        }
      } else {
        worstFlow = Math.max(worstFlow, flowError(where, solution.flow(id), fields[2], units));
      }
    }
    compared++;
  }

  private double flowError(String where, double ours, String reference, InpUnits units) {
    double theirs = units.flow() * Double.parseDouble(reference);
    double error = Math.abs(ours - theirs) / Math.max(Math.abs(theirs), LEAST_FLOW);
    if (!(error < FLOW_TOLERANCE)) {
      failures.add(where + ": " + ours / units.flow());
    }
    return error;
  }

  private static String read(String name) throws IOException {
    try (InputStream in = new GZIPInputStream(Files.newInputStream(DATA.resolve(name)));
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      StringBuilder text = new StringBuilder();
      char[] buffer = new char[1 << 16];
      for (int n = reader.read(buffer); n > 0; n = reader.read(buffer)) {
        text.append(buffer, 0, n);
      }
      return text.toString();
    }
  }
}
