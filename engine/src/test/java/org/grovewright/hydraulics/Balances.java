package org.grovewright.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/** Checks both laws on a solution from the public figures alone. */
final class Balances {
  private Balances() {}

  static void check(Solution solution) {
    Network network = solution.network();
    double[] in = new double[network.nodes().size()];
    double[] flows = solution.flows();
    for (int l = 0; l < flows.length; l++) {
      Link link = network.links().get(l);
      in[network.nodeIndex(link.from())] -= flows[l];
      in[network.nodeIndex(link.to())] += flows[l];
      if (link instanceof Link.Pipe pipe && !pipe.closed()) {
        checkPipe(network, solution, pipe, flows[l]);
      }
    }
    for (Node node : network.nodes()) {
      double balance =
          in[network.nodeIndex(node.id())]
              + (node instanceof Node.Junction ? 0 : solution.supplied(node.id()))
              - solution.outflow(node.id())
              - network.demands().getOrDefault(node.id(), 0.0);
      assertThat(balance).as("balance at " + node.id()).isCloseTo(0, within(1e-9));
    }
    assertThat(solution.massResidual()).isLessThan(1e-9);
    assertThat(solution.energyResidual()).isLessThan(1e-6);
  }

  private static void checkPipe(Network network, Solution solution, Link.Pipe pipe, double flow) {
    if (pipe.checkValve() && flow == 0 || solution.isCutOff(pipe.from())) {
      return;
    }
    double size = Math.abs(flow);
    double speed = size / (Math.PI / 4 * pipe.diameter() * pipe.diameter());
    double loss =
        network.formula() == FrictionFormula.HAZEN_WILLIAMS
            ? Friction.hazenWilliamsLoss(
                size, pipe.length(), pipe.diameter(), pipe.roughness().value())
            : Friction.darcyWeisbachLoss(
                size,
                pipe.length(),
                pipe.diameter(),
                pipe.roughness().value(),
                network.viscosity());
    loss += pipe.minorLoss() * speed * speed / (2 * Water.STANDARD_GRAVITY);
    // below 0.1 mm/s Hazen-Williams is smoothed, which is worth less than 1e-7 m per metre here
    double slack = 1e-6 + (speed < 1e-4 ? 1e-7 * pipe.length() : 0);
    assertThat(solution.headLoss(pipe.id()))
        .as("loss along " + pipe.id())
        .isCloseTo(Math.signum(flow) * loss, within(slack));
  }
}
