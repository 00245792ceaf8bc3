package fettle.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Points;
import fettle.reference.CorrectDigits;
import fettle.reference.ReferenceCase;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.junit.jupiter.api.Test;

/** The worked examples of the GUM (JCGM 100:2008) and of its Supplement 1 (JCGM 101:2008). */
class PublishedPropagationsTest {
  private static final double NORMAL_95 = 1.959963984540054;

  private static ReferenceCase load(String name) {
    return ReferenceCase.load("/fettle/uncertainty/reference/" + name + ".json");
  }

  private static void assertNumber(
      ReferenceCase file, String pointer, double value, double digits) {
    CorrectDigits.atLeast(digits, value, file.at(pointer), pointer);
    CorrectDigits.roundsToPrinted(value, file.at(pointer), pointer);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double x : values) {
      sum += x;
    }
    return sum / values.length;
  }

  private static double covarianceOfMeans(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - mean(a)) * (b[i] - mean(b));
    }
    return sum / (a.length * (a.length - 1.0));
  }

  /** R, X, Z from V (volt), I (milliampere), φ. */
  private static double[] impedance(double v, double i, double phi) {
    double z = 1000 * v / i;
    return new double[] {z * StrictMath.cos(phi), z * StrictMath.sin(phi), z};
  }

  @Test
  void gumH2ByTheLawAndByMonteCarlo() {
    ReferenceCase file = load("gum-h2-impedance-correlated");
    double[][] data = {file.column("/data/V"), file.column("/data/I"), file.column("/data/phi")};
    double[][] covariance = new double[3][3];
    for (int a = 0; a < 3; a++) {
      for (int b = 0; b < 3; b++) {
        covariance[a][b] = covarianceOfMeans(data[a], data[b]);
      }
    }
    double v = mean(data[0]);
    double i = mean(data[1]);
    double phi = mean(data[2]);
    double[] y = impedance(v, i, phi);
    double[][] c = {
      {y[0] / v, -y[0] / i, -y[1]}, {y[1] / v, -y[1] / i, y[0]}, {y[2] / v, -y[2] / i, 0}
    };
    double[][] out = LawOfPropagation.covariance(c, covariance);
    String one = "/expected/approach_1/";
    String[] names = {"R", "X", "Z"};
    for (int k = 0; k < 3; k++) {
      assertNumber(file, one + names[k], y[k], 13);
      assertNumber(file, one + "u_" + names[k], Math.sqrt(out[k][k]), 11);
    }
    assertNumber(file, one + "r_V_I", LawOfPropagation.correlation(covariance, 0, 1), 11);
    assertNumber(file, one + "r_V_phi", LawOfPropagation.correlation(covariance, 0, 2), 11);
    assertNumber(file, one + "r_I_phi", LawOfPropagation.correlation(covariance, 1, 2), 11);
    assertNumber(file, one + "r_R_X", LawOfPropagation.correlation(out, 0, 1), 11);
    assertNumber(file, one + "r_R_Z", LawOfPropagation.correlation(out, 0, 2), 11);
    assertNumber(file, one + "r_X_Z", LawOfPropagation.correlation(out, 1, 2), 11);

    // The functions are all but linear over these uncertainties: Monte Carlo validates the law.
    double[] flat = IntStream.range(0, 9).mapToDouble(n -> covariance[n / 3][n % 3]).toArray();
    double[] root = CovarianceRoot.of(flat, 3);
    MonteCarloResult result =
        MonteCarlo.adaptive(
            () ->
                (random, outputs) -> {
                  double[] x = new double[3];
                  CovarianceRoot.draw(
                      new double[] {v, i, phi},
                      root,
                      ZigguratSampler.NormalizedGaussian.of(random),
                      x);
                  System.arraycopy(impedance(x[0], x[1], x[2]), 0, outputs, 0, 3);
                },
            3,
            2,
            10_000_000,
            20080102,
            2);
    assertTrue(result.settled());
    for (int k = 0; k < 3; k++) {
      double u = Math.sqrt(out[k][k]);
      MonteCarloOutput output = result.outputs().get(k);
      double tolerance = MonteCarlo.numericalTolerance(u, 2);
      assertEquals(u, output.standardUncertainty(), tolerance);
      assertTrue(PropagationCheck.of(y[k], u, NORMAL_95 * u, output, 1).validated());
    }
  }

  @Test
  void gumH3ThermometerLine() throws FitFailedException {
    ReferenceCase file = load("gum-h3-thermometer-line");
    double[] t = file.column("/data/t");
    double[] b = file.column("/data/b");
    for (String origin : new String[] {"20_C", "mean"}) {
      double t0 = origin.equals("mean") ? mean(t) : 20;
      double[] shifted = IntStream.range(0, t.length).mapToDouble(k -> t[k] - t0).toArray();
      Points points = Points.plain(shifted, b);
      CurveFit fit = CurveSolver.fit(new ModelId("polynomial-1"), points);
      var line = fit.reported();
      String at = "/expected/t0_" + origin + "/";
      at = origin.equals("mean") ? "/expected/t0_mean/" : at;
      assertNumber(file, at + "intercept_y1", line.values()[0], 11);
      assertNumber(file, at + "slope_y2", line.values()[1], 11);
      assertNumber(file, at + "s_y1", line.standardUncertainty(0), 11);
      assertNumber(file, at + "s_y2", line.standardUncertainty(1), 11);
      double correlation =
          line.covariance()[1] / line.standardUncertainty(0) / line.standardUncertainty(1);
      if (origin.equals("mean")) {
        assertEquals(0, correlation, 1e-12);
      } else {
        assertNumber(file, at + "correlation_y1_y2", correlation, 11);
        assertNumber(file, at + "residual_sd", fit.residualStandardDeviation(points), 11);
        double predicted = fit.model().value(10, fit.beta());
        assertNumber(file, at + "predicted_correction_at_30_C", predicted, 11);
        assertNumber(
            file,
            at + "u_of_predicted_correction_at_30_C",
            Math.sqrt(fit.varianceOfCurveAt(10)),
            11);
        for (int k = 0; k < t.length; k++) {
          assertNumber(file, "/expected/predicted_corrections/" + k, fit.fitted()[k], 11);
          assertNumber(
              file,
              "/expected/differences_observed_minus_predicted/" + k,
              b[k] - fit.fitted()[k],
              10);
        }
      }
    }
  }

  private static double rectangular(UniformRandomProvider random, double halfWidth) {
    return halfWidth * (2 * random.nextDouble() - 1);
  }

  private static Supplier<MonteCarlo.Trial> sumOfFour(String which) {
    double width = Math.sqrt(3);
    return () ->
        (random, outputs) -> {
          var normal = ZigguratSampler.NormalizedGaussian.of(random);
          double sum = 0;
          for (int k = 0; k < 4; k++) {
            double size = which.equals("dominant") && k == 3 ? 10 * width : width;
            sum += which.equals("normal") ? normal.sample() : rectangular(random, size);
          }
          outputs[0] = sum;
        };
  }

  private static void additive(String which, String place, boolean validated) {
    ReferenceCase file = load("jcgm101-9-2-additive");
    MonteCarloResult result = MonteCarlo.adaptive(sumOfFour(which), 1, 2, 20_000_000, 20080902, 2);
    assertTrue(result.settled());
    assertEquals(0, result.failed());
    MonteCarloOutput output = result.outputs().get(0);
    double u = file.number(place + "/u");
    double half = file.number(place + "/half_width_95_exact");
    // What the adaptive procedure promises: half a unit of the second digit of u.
    double tolerance = MonteCarlo.numericalTolerance(u, 2);
    assertEquals(0, output.mean(), tolerance);
    assertEquals(u, output.standardUncertainty(), tolerance);
    assertEquals(-half, output.low(), tolerance);
    assertEquals(half, output.high(), tolerance);
    // The shortest interval may slide along a flat density; its length is what stands.
    assertEquals(2 * half, output.shortestHigh() - output.shortestLow(), 2 * tolerance);
    // Clause 8 asks for more: ends that stand to a fraction of δ.
    MonteCarloOutput many =
        MonteCarlo.fixed(sumOfFour(which), 1, 4_000_000, 20080908, 2).outputs().get(0);
    assertEquals(validated, PropagationCheck.of(0, u, NORMAL_95 * u, many, 2).validated(), which);
  }

  @Test
  void supplement92FourNormalInputs() {
    additive("normal", "/expected/case_1_normal", true);
  }

  @Test
  void supplement92FourRectangularInputs() {
    // d = 0.04 against δ = 0.05.
    additive("rectangular", "/expected/case_2_rectangular", true);
  }

  @Test
  void supplement92DominantRectangularInput() {
    // d = 2.9 against δ = 0.5.
    additive("dominant", "/expected/case_3_dominant_rectangular", false);
  }

  private static MonteCarloResult mass(int trials, long seed, int threads) {
    return MonteCarlo.fixed(
        () ->
            (random, outputs) -> {
              var normal = ZigguratSampler.NormalizedGaussian.of(random);
              double reference = 100_000 + 0.050 * normal.sample();
              double added = 1.234 + 0.020 * normal.sample();
              double air = 1.2 + rectangular(random, 0.1);
              double weight = 8000 + rectangular(random, 1000);
              double standard = 8000 + rectangular(random, 50);
              outputs[0] =
                  (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000;
            },
        1,
        trials,
        seed,
        threads);
  }

  @Test
  void supplement93MassCalibration() {
    ReferenceCase file = load("jcgm101-9-3-mass");
    int trials = 1_000_000;
    MonteCarloOutput output = mass(trials, 20080903, 2).outputs().get(0);
    String exact = "/expected/exact_distribution/";
    double u = file.number(exact + "u");
    // Five standard errors: u/√M for the mean, u/√(2M) for u, √(p(1 − p)/M)/f = 2.7 u/√M for an
    // end of the interval.
    double unit = u / Math.sqrt(trials);
    assertEquals(1.234, output.mean(), 5 * unit);
    assertEquals(u, output.standardUncertainty(), 5 * unit);
    assertEquals(file.number(exact + "low"), output.low(), 5 * 2.7 * unit);
    assertEquals(file.number(exact + "high"), output.high(), 5 * 2.7 * unit);
    // The source's own run of 0.72 million trials scatters likewise; it is printed to 0.0001 mg.
    String run = "/expected/monte_carlo_run_in_source/";
    assertEquals(file.number(run + "u"), output.standardUncertainty(), 0.0002);
    assertEquals(file.number(run + "low"), output.low(), 0.002);
    assertEquals(file.number(run + "high"), output.high(), 0.002);
    // Clause 8 with one significant digit: δ = 0.005 mg.
    double first = file.number("/expected/gum_first_order/u");
    PropagationCheck check = PropagationCheck.of(1.234, first, NORMAL_95 * first, output, 1);
    assertEquals(file.number("/settings/delta"), check.tolerance(), 1e-15);
    assertFalse(check.validated());
    assertEquals(file.number(run + "d_low_first_order"), check.lowDifference(), 0.002);
    assertEquals(file.number(run + "d_high_first_order"), check.highDifference(), 0.002);
    double second = file.number("/expected/gum_with_higher_order_terms/u");
    assertTrue(PropagationCheck.of(1.234, second, NORMAL_95 * second, output, 1).validated());
  }

  @Test
  void sameSeedGivesTheSameBitsOnAnyNumberOfThreads() {
    MonteCarloResult one = mass(50_001, 7, 1);
    for (int threads = 2; threads <= 5; threads++) {
      assertEquals(one, mass(50_001, 7, threads));
    }
    assertNotEquals(one, mass(50_001, 8, 1));
    MonteCarloResult adaptive = MonteCarlo.adaptive(sumOfFour("normal"), 1, 1, 1_000_000, 3, 1);
    assertEquals(adaptive, MonteCarlo.adaptive(sumOfFour("normal"), 1, 1, 1_000_000, 3, 2));
  }
}
