package fettle.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Points;
import fettle.fit.QuadraticForm;
import fettle.fit.ResponseModel;
import fettle.reference.ReferenceCase;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Between-block scatter of a straight line against a direct search of the same likelihood with 40
 * digits (between_block.py beside the case). The search is made to 1e-5 of τ / (τ + unit), interval
 * ends to 1e-4 of themselves, the posterior on 24 nodes.
 */
class BetweenBlockScatterTest {
  private static final ReferenceCase CASE =
      ReferenceCase.load("/fettle/uncertainty/reference/scatter/between-block.json");

  private static void near(String name, double value, double relative) {
    double expected = CASE.number("/expected/" + name);
    assertEquals(expected, value, relative * Math.abs(expected), name);
  }

  @Test
  void restrictedLikelihoodProfileAndPosterior() throws FitFailedException {
    double[] r = CASE.column("/data/r");
    double[] variances = Arrays.stream(CASE.column("/data/u_h")).map(u -> u * u).toArray();
    Points points =
        Points.of(
            r,
            CASE.column("/data/h"),
            new double[r.length],
            variances,
            new double[0][],
            new double[0][]);
    ResponseModel line = new ModelId("polynomial-1").bind(r);
    BetweenBlockScatter scatter = BetweenBlockScatter.of(line, points, ScatterScale.ABSOLUTE);
    near("chi_squared_at_zero", scatter.atZero().chiSquared(), 1e-12);
    near("restricted", scatter.restricted(), 5e-5);
    near("low", scatter.low(), 2e-4);
    near("high", scatter.high(), 2e-4);
    near("maximum_likelihood", scatter.maximumLikelihood(), 5e-5);
    near("maximum_log_likelihood", scatter.maximumLogLikelihood(), 1e-8);

    double at = CASE.number("/settings/at");
    double total = 0;
    double mean = 0;
    double value = 0;
    double square = 0;
    double[] gradient = new double[4];
    for (BetweenBlockScatter.Node node : scatter.nodes()) {
      line.linearise(at, node.fit().beta(), gradient);
      total += node.weight();
      mean += node.weight() * node.tau();
      value += node.weight() * gradient[0];
      square +=
          node.weight()
              * (gradient[0] * gradient[0]
                  + QuadraticForm.of(gradient, 2, node.fit().covariance(), 2));
    }
    assertEquals(1, total, 1e-12);
    near("posterior_mean", mean, 1e-3);
    near("marginal_value_at", value, 1e-6);
    near("marginal_variance_at", square - value * value, 2e-3);
  }

  @Test
  void agreeingBlocksShowNoScatter() throws FitFailedException {
    double[] r = {1, 2, 3, 4, 5, 6, 7};
    double[] h = {10.1, 19.9, 30.05, 39.95, 50.1, 59.9, 70.0};
    double[] variances = new double[7];
    Arrays.fill(variances, 1);
    Points points = Points.of(r, h, new double[7], variances, new double[0][], new double[0][]);
    BetweenBlockScatter scatter =
        BetweenBlockScatter.of(new ModelId("polynomial-1").bind(r), points, ScatterScale.ABSOLUTE);
    assertEquals(0, scatter.restricted());
    assertEquals(0, scatter.low());
    assertTrue(scatter.high() > 0 && scatter.high() < 1.5, "high " + scatter.high());
    // The marginal still allows for scatter that these blocks happen not to show.
    assertTrue(scatter.nodes().stream().anyMatch(node -> node.tau() > 0.1));
  }

  @Test
  void relativeScatterIsTheSameOnAnyScale() throws FitFailedException {
    double[] r = CASE.column("/data/r");
    double[] h = CASE.column("/data/h");
    double[] variances = Arrays.stream(CASE.column("/data/u_h")).map(u -> u * u).toArray();
    BetweenBlockScatter[] both = new BetweenBlockScatter[2];
    for (int k = 0; k < 2; k++) {
      double unit = k == 0 ? 1 : 1000;
      Points points =
          Points.of(
              r,
              Arrays.stream(h).map(x -> unit * x).toArray(),
              new double[r.length],
              Arrays.stream(variances).map(v -> unit * unit * v).toArray(),
              new double[0][],
              new double[0][]);
      both[k] =
          BetweenBlockScatter.of(
              new ModelId("polynomial-1").bind(r), points, ScatterScale.RELATIVE);
    }
    assertEquals(both[0].restricted(), both[1].restricted(), 1e-6 * both[0].restricted());
    assertEquals(both[0].high(), both[1].high(), 2e-4 * both[0].high());
  }
}
