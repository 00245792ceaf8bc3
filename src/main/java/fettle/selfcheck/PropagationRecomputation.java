package fettle.selfcheck;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.uncertainty.MonteCarlo;
import fettle.uncertainty.MonteCarloOutput;
import fettle.uncertainty.PropagationCheck;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * The examples 9.2 and 9.3 of JCGM 101:2008 by Monte Carlo, with the case's seed and number of
 * trials.
 */
final class PropagationRecomputation implements Recomputation {
  private static final double NORMAL_95 = 1.959963984540054;
  private static final double UNIT_RECTANGULAR = Math.sqrt(3);

  private final int trials;
  private final long seed;
  private final int threads;
  private final Map<String, MonteCarloOutput> done = new HashMap<>();

  PropagationRecomputation(CaseFile file, int threads) {
    this.trials = Math.toIntExact(file.number("trials"));
    this.seed = file.number("seed");
    this.threads = threads;
  }

  @Override
  public double of(JsonNode expected) {
    MonteCarloOutput output =
        done.computeIfAbsent(expected.get("input").textValue(), this::propagate);
    String result = expected.get("result").textValue();
    return switch (result) {
      case "mean" -> output.mean();
      case "u" -> output.standardUncertainty();
      case "low" -> output.low();
      case "high" -> output.high();
      case "low difference" -> againstFirstOrder(output).lowDifference();
      case "high difference" -> againstFirstOrder(output).highDifference();
      default -> throw new IllegalArgumentException("result \"" + result + "\": unknown");
    };
  }

  /** Example 9.3: the first-order law knows nothing of the buoyancy. */
  private static PropagationCheck againstFirstOrder(MonteCarloOutput output) {
    double u = Math.sqrt(0.050 * 0.050 + 0.020 * 0.020);
    return PropagationCheck.of(1.234, u, NORMAL_95 * u, output, 1);
  }

  private MonteCarloOutput propagate(String input) {
    return MonteCarlo.fixed(() -> trial(input), 1, trials, seed, threads).outputs().get(0);
  }

  private static MonteCarlo.Trial trial(String input) {
    return switch (input) {
      case "normal" ->
          (random, outputs) -> {
            var normal = ZigguratSampler.NormalizedGaussian.of(random);
            outputs[0] = normal.sample() + normal.sample() + normal.sample() + normal.sample();
          };
      case "rectangular" -> (random, outputs) -> outputs[0] = sumOfRectangular(random, 1);
      case "dominant" -> (random, outputs) -> outputs[0] = sumOfRectangular(random, 10);
      case "mass" -> (random, outputs) -> outputs[0] = deviationOfMass(random);
      default -> throw new IllegalArgumentException("input \"" + input + "\": unknown");
    };
  }

  private static double sumOfRectangular(UniformRandomProvider random, double last) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += rectangular(random, UNIT_RECTANGULAR);
    }
    return sum + rectangular(random, last * UNIT_RECTANGULAR);
  }

  /** In mg from the nominal 100 g; densities in kg/m³. */
  private static double deviationOfMass(UniformRandomProvider random) {
    var normal = ZigguratSampler.NormalizedGaussian.of(random);
    double reference = 100_000 + 0.050 * normal.sample();
    double added = 1.234 + 0.020 * normal.sample();
    double air = rectangular(random, 0.1);
    double weight = 8000 + rectangular(random, 1000);
    double standard = 8000 + rectangular(random, 50);
    return (reference + added) * (1 + air * (1 / weight - 1 / standard)) - 100_000;
  }

  private static double rectangular(UniformRandomProvider random, double halfWidth) {
    return halfWidth * (2 * random.nextDouble() - 1);
  }
}
