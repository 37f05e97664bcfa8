package org.grovewright.hydraulics;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Fits a network's doubtful figures to field readings by Gauss-Newton least squares, damped after
 * Levenberg and Marquardt.
 */
public final class Calibration {
  /** What can be fitted; each is a factor, from 1/5 to 5, on what the network says. */
  public enum Parameter {
    /** Roughness of all pipes: the C of Hazen-Williams or the roughness height. */
    ROUGHNESS,
    /** How fast the pressure of every source falls with its flow. */
    SUPPLY,
    /** Flow of all emitters, as by clogging. */
    EMITTERS
  }

  /**
   * A fitted factor with its 95 % confidence bounds, which are as good as the fit is straight near
   * its best and the deviations of the readings are true.
   *
   * @param factor the best factor
   * @param low lower bound
   * @param high upper bound
   */
  public record Estimate(double factor, double low, double high) {}

  /**
   * The result of a fit.
   *
   * @param estimates the factors
   * @param misfit sum of squared differences that remains, of the readings and of the factors from
   *     what was believed of them, in standard deviations; about the number of readings less that
   *     of parameters if the network and deviations are right
   * @param steps steps taken
   */
  public record Fit(Map<Parameter, Estimate> estimates, double misfit, int steps) {}

  /** Two-sided 95 % point of the normal distribution. */
  private static final double NORMAL_95 = 1.959964;

  /** Logarithm of the largest factor that is looked at; beyond it the network itself is wrong. */
  private static final double MOST_CHANGE = Math.log(5);

  private static final int MOST_STEPS = 50;
  private static final double DIFFERENCE = 1e-3;

  private final Parameter[] parameters;
  private final List<FieldRun> runs;
  private final List<PreparedNetwork> prepared = new ArrayList<>();
  private final Map<Parameter, Double> priors;
  private final int size;

  private Calibration(
      List<FieldRun> runs, List<Parameter> parameters, Map<Parameter, Double> priors) {
    this.runs = runs;
    this.parameters = parameters.toArray(Parameter[]::new);
    this.priors = priors;
    int readings = 0;
    for (FieldRun run : runs) {
      PreparedNetwork ready = Solver.prepare(run.network());
      run.closed().forEach(pipe -> ready.setClosed(pipe, true));
      prepared.add(ready);
      readings += run.readings().size();
    }
    size = readings + priors.size();
  }

  /**
   * Fits the parameters.
   *
   * @throws IllegalArgumentException if there are fewer readings than parameters, or if the
   *     readings do not tell the parameters apart
   */
  public static Fit fit(Network network, List<Parameter> parameters, List<Reading> readings) {
    if (parameters.isEmpty() || readings.size() < parameters.size()) {
      throw new IllegalArgumentException(
          "at least as many readings as fitted figures are needed, but there are "
              + readings.size()
              + " for "
              + parameters.size());
    }
    return new Calibration(List.of(FieldRun.of(network, readings)), parameters, Map.of()).fit();
  }

  /**
   * Fits the parameters, which are the same in several networks, from what is thought of them
   * beforehand and from readings. With a belief for every parameter there may be as few readings as
   * one; bounds that are as wide as the belief then say that the readings tell nothing of it.
   *
   * @param runs networks and what was read while each ran
   * @param beliefs parameters with the standard deviation of the logarithm of each beforehand
   */
  public static Fit fit(List<FieldRun> runs, Map<Parameter, Double> beliefs) {
    return new Calibration(runs, List.copyOf(beliefs.keySet()), new EnumMap<>(beliefs)).fit();
  }

  /** A network with its doubtful figures multiplied by fitted factors. */
  public static Network withFactors(Network network, Map<Parameter, Double> factors) {
    Network.Builder builder = network.toBuilder();
    factors.forEach(
        (parameter, factor) -> {
          switch (parameter) {
            case ROUGHNESS -> {
              for (Link link : network.links()) {
                if (link instanceof Link.Pipe pipe) {
                  builder.replace(rougher(pipe, factor));
                }
              }
            }
            case SUPPLY -> {
              for (Node node : network.nodes()) {
                if (node instanceof Node.Source source) {
                  builder.replace(
                      new Node.Source(
                          source.id(), source.elevation(), steeper(source.supply(), factor)));
                }
              }
            }
            case EMITTERS -> {
              for (EmitterGroup group : network.emitters()) {
                builder.replace(
                    new EmitterGroup(
                        group.id(), group.nodeId(), group.curve().scaled(factor), group.count()));
              }
            }
          }
        });
    return builder.build();
  }

  private static SupplyCurve steeper(SupplyCurve supply, double factor) {
    return new SupplyCurve(supply.staticHead(), factor * supply.a(), supply.n());
  }

  private Fit fit() {
    int p = parameters.length;
    double[] logs = new double[p];
    double[] residuals = residuals(logs);
    double misfit = squared(residuals);
    double damping = 1e-3;
    int steps = 0;
    boolean settled = false;
    while (!settled && steps < MOST_STEPS) {
      steps++;
      double[][] jacobian = jacobian(logs);
      double[] gradient = new double[p];
      double[][] normal = normal(jacobian, residuals, gradient);
      double[] trial = null;
      double[] trialResiduals = null;
      double change = 0;
      do {
        double[][] damped = new double[p][];
        for (int i = 0; i < p; i++) {
          damped[i] = normal[i].clone();
          damped[i][i] *= 1 + damping;
        }
        double[] step = solve(damped, gradient.clone());
        trial = logs.clone();
        change = 0;
        for (int i = 0; i < p; i++) {
          trial[i] = Math.max(-MOST_CHANGE, Math.min(MOST_CHANGE, trial[i] + step[i]));
          change = Math.max(change, Math.abs(step[i]));
        }
        trialResiduals = residuals(trial);
        damping *= 10;
      } while (squared(trialResiduals) > misfit && change > 1e-9 && damping < 1e12);
      settled = change < 1e-7;
      if (squared(trialResiduals) <= misfit) {
        settled |= misfit - squared(trialResiduals) < 1e-10 * misfit;
        logs = trial;
        residuals = trialResiduals;
        misfit = squared(residuals);
      } else {
        settled = true;
      }
      damping = Math.max(1e-12, damping / 1000);
    }
    return new Fit(estimates(logs, residuals), misfit, steps);
  }

  private Map<Parameter, Estimate> estimates(double[] logs, double[] residuals) {
    int p = parameters.length;
    double[][] normal = normal(jacobian(logs), residuals, new double[p]);
    Map<Parameter, Estimate> estimates = new EnumMap<>(Parameter.class);
    for (int i = 0; i < p; i++) {
      double[] unit = new double[p];
      unit[i] = 1;
      double[][] copy = new double[p][];
      for (int j = 0; j < p; j++) {
        copy[j] = normal[j].clone();
      }
      double half = NORMAL_95 * Math.sqrt(solve(copy, unit)[i]);
      estimates.put(
          parameters[i],
          new Estimate(Math.exp(logs[i]), Math.exp(logs[i] - half), Math.exp(logs[i] + half)));
    }
    return estimates;
  }

  private double[] residuals(double[] logs) {
    double[] residuals = new double[size];
    int at = 0;
    for (int r = 0; r < runs.size(); r++) {
      apply(logs, runs.get(r).network(), prepared.get(r));
      Solution solution = prepared.get(r).solve();
      for (Reading reading : runs.get(r).readings()) {
        residuals[at++] = reading.residual(solution);
      }
    }
    for (int i = 0; i < parameters.length; i++) {
      Double deviation = priors.get(parameters[i]);
      if (deviation != null) {
        residuals[at++] = -logs[i] / deviation;
      }
    }
    return residuals;
  }

  private void apply(double[] logs, Network network, PreparedNetwork ready) {
    for (int i = 0; i < logs.length; i++) {
      double factor = Math.exp(logs[i]);
      switch (parameters[i]) {
        case ROUGHNESS -> {
          for (Link link : network.links()) {
            if (link instanceof Link.Pipe pipe) {
              ready.setPipe(rougher(pipe, factor));
            }
          }
        }
        case SUPPLY -> {
          for (Node node : network.nodes()) {
            if (node instanceof Node.Source source) {
              ready.setSupply(source.id(), steeper(source.supply(), factor));
            }
          }
        }
        case EMITTERS -> {
          for (int g = 0; g < network.emitters().size(); g++) {
            ready.setEmitterFactor(g, factor);
          }
        }
      }
    }
  }

  private static Link.Pipe rougher(Link.Pipe pipe, double factor) {
    return new Link.Pipe(
        pipe.id(),
        pipe.from(),
        pipe.to(),
        pipe.length(),
        pipe.diameter(),
        new Roughness(pipe.roughness().formula(), factor * pipe.roughness().value()),
        pipe.minorLoss(),
        pipe.checkValve(),
        pipe.closed());
  }

  /** Change of every residual with the logarithm of every factor, by central differences. */
  private double[][] jacobian(double[] logs) {
    double[][] jacobian = new double[logs.length][];
    for (int i = 0; i < logs.length; i++) {
      double[] moved = logs.clone();
      moved[i] = logs[i] + DIFFERENCE;
      double[] up = residuals(moved);
      moved[i] = logs[i] - DIFFERENCE;
      double[] down = residuals(moved);
      for (int r = 0; r < up.length; r++) {
        up[r] = (up[r] - down[r]) / (2 * DIFFERENCE);
      }
      jacobian[i] = up;
    }
    return jacobian;
  }

  private static double[][] normal(double[][] jacobian, double[] residuals, double[] gradient) {
    int p = jacobian.length;
    double[][] normal = new double[p][p];
    for (int i = 0; i < p; i++) {
      for (int r = 0; r < residuals.length; r++) {
        gradient[i] -= jacobian[i][r] * residuals[r];
        for (int j = 0; j < p; j++) {
          normal[i][j] += jacobian[i][r] * jacobian[j][r];
        }
      }
    }
    return normal;
  }

  /** Solves a small symmetric positive definite system in place by elimination. */
  private double[] solve(double[][] matrix, double[] right) {
    int p = right.length;
    for (int k = 0; k < p; k++) {
      double before = matrix[k][k];
      if (!(before > 1e-12)) {
        throw new IllegalArgumentException(
            "the readings do not tell the "
                + parameters[k].name().toLowerCase(java.util.Locale.ROOT)
                + " apart from the rest; take readings elsewhere or fit fewer figures");
      }
      for (int i = k + 1; i < p; i++) {
        double share = matrix[i][k] / before;
        for (int j = k; j < p; j++) {
          matrix[i][j] -= share * matrix[k][j];
        }
        right[i] -= share * right[k];
      }
    }
    for (int k = p - 1; k >= 0; k--) {
      for (int j = k + 1; j < p; j++) {
        right[k] -= matrix[k][j] * right[j];
      }
      right[k] /= matrix[k][k];
    }
    return right;
  }

  private static double squared(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value * value;
    }
    return sum;
  }
}
