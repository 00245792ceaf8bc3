package fettle.fit;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts of the solver against each other, and against differences and exchanges of the data. */
class SecondOpinionTest {
  private static final int M = 9;

  /** A campaign with errors in both coordinates and one shared effect on each. */
  private record Drawn(
      double[] r, double[] h, double[] vr, double[] vh, double[][] z, double[][] c) {
    Points points() throws FitFailedException {
      return Points.of(r, h, vr, vh, z, c);
    }

    Points with(double[] responses, double[] hardnesses) throws FitFailedException {
      return Points.of(responses, hardnesses, vr, vh, z, c);
    }
  }

  private static double law(String model, double r) {
    return switch (model) {
      case "polynomial-1" -> 520 - 0.12 * r;
      case "polynomial-2", "polynomial-3" -> 1000 - 0.44 * r + 0.00005 * r * r;
      case "exponential" -> 900 * StrictMath.exp(-r / 1500);
      case "rational-1-1" -> (600 - 0.1 * r) / (1 + 0.0004 * r);
      default -> 200 * StrictMath.pow(r / 2400, -2.1);
    };
  }

  private static Drawn draw(String model, double noise, long seed) {
    Random random = new Random(seed);
    double[] r = new double[M];
    double[] h = new double[M];
    double[] vr = new double[M];
    double[] vh = new double[M];
    double[][] z = new double[1][M];
    double[][] c = new double[1][M];
    for (int i = 0; i < M; i++) {
      double xi = 1900 + 1100.0 * i / (M - 1);
      double truth = law(model, xi);
      double ur = 0.002 * xi;
      double uh = 0.007 * truth;
      z[0][i] = 0.002 * xi;
      c[0][i] = 0.006 * truth;
      vr[i] = ur * ur;
      vh[i] = uh * uh;
      r[i] = xi + noise * ur * random.nextGaussian();
      h[i] = truth + noise * uh * random.nextGaussian();
    }
    return new Drawn(r, h, vr, vh, z, c);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "polynomial-1",
        "polynomial-2",
        "polynomial-3",
        "power",
        "log-polynomial-2",
        "exponential",
        "rational-1-1"
      })
  void refitterGivesTheSolversCurve(String model) throws FitFailedException {
    Drawn base = draw(model, 1, 1);
    CurveFit fit = CurveSolver.fit(new ModelId(model), base.points());
    Refitter refitter = new Refitter(base.points(), fit);
    double[] beta = new double[fit.parameterCount()];
    for (int n = 2; n < 30; n++) {
      Drawn other = draw(model, 1, n);
      refitter.refit(other.r(), other.h(), beta);
      CurveFit full =
          CurveSolver.fit(
              fit.model(),
              base.with(other.r(), other.h()),
              fit.model().start(other.r(), other.h()));
      for (double at = 1900; at <= 3000; at += 100) {
        double expected = fit.model().value(at, full.beta());
        assertEquals(expected, fit.model().value(at, beta), 1e-9 * Math.abs(expected));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"polynomial-1", "polynomial-2", "power", "log-polynomial-2"})
  void sensitivitiesAreDerivativesOfTheFit(String model) throws FitFailedException {
    // On points that lie on the curve first order is exact; elsewhere it leaves out residual times
    // curvature, as York 2004's convention does.
    Drawn data = draw(model, 0, 1);
    CurveFit fit = CurveSolver.fit(new ModelId(model), data.points());
    FitSensitivity sensitivity = new FitSensitivity(fit, data.points());
    double[][] byPoint = sensitivity.byPoint();
    for (int i = 0; i < M; i++) {
      double step = 1e-3 * Math.sqrt(data.vh()[i]);
      double[] up = data.h().clone();
      double[] down = data.h().clone();
      up[i] += step;
      down[i] -= step;
      double[] high = CurveSolver.fit(fit.model(), data.with(data.r(), up), fit.beta()).beta();
      double[] low = CurveSolver.fit(fit.model(), data.with(data.r(), down), fit.beta()).beta();
      double[] unit = new double[M];
      unit[i] = 1;
      assertArrayEquals(byPoint[i], sensitivity.ofHardnessShift(unit), 0);
      double[] byResponse = sensitivity.ofResponseShift(unit);
      double across = 1e-3 * Math.sqrt(data.vr()[i]);
      double[] right = data.r().clone();
      double[] left = data.r().clone();
      right[i] += across;
      left[i] -= across;
      double[] far = CurveSolver.fit(fit.model(), data.with(right, data.h()), fit.beta()).beta();
      double[] near = CurveSolver.fit(fit.model(), data.with(left, data.h()), fit.beta()).beta();
      for (int k = 0; k < fit.parameterCount(); k++) {
        double difference = (high[k] - low[k]) / (2 * step);
        assertEquals(difference, byPoint[i][k], 1e-5 * largest(byPoint, k));
        double slope = Math.abs(fit.slopes()[i]);
        assertEquals(
            (far[k] - near[k]) / (2 * across), byResponse[k], 1e-5 * slope * largest(byPoint, k));
      }
    }
  }

  private static double largest(double[][] rows, int k) {
    double largest = 0;
    for (double[] row : rows) {
      largest = Math.max(largest, Math.abs(row[k]));
    }
    return largest;
  }

  @ParameterizedTest
  @ValueSource(strings = {"polynomial-1", "polynomial-2", "power", "log-polynomial-2"})
  void sensitivitiesMakeUpTheCovariance(String model) throws FitFailedException {
    // A V Aᵀ with V = V_h + D V_r D is the whole covariance.
    Drawn data = draw(model, 1, 5);
    CurveFit fit = CurveSolver.fit(new ModelId(model), data.points());
    FitSensitivity sensitivity = new FitSensitivity(fit, data.points());
    int p = fit.parameterCount();
    double[] sum = new double[p * p];
    double[][] byPoint = sensitivity.byPoint();
    for (int i = 0; i < M; i++) {
      double slope = fit.slopes()[i];
      add(sum, byPoint[i], data.vh()[i] + slope * slope * data.vr()[i]);
    }
    add(sum, sensitivity.ofHardnessShift(data.c()[0]), 1);
    add(sum, sensitivity.ofResponseShift(data.z()[0]), 1);
    double[] covariance = fit.covariance();
    for (int j = 0; j < p; j++) {
      for (int k = 0; k < p; k++) {
        double size = Math.sqrt(covariance[j * p + j] * covariance[k * p + k]);
        assertEquals(covariance[j * p + k], sum[j * p + k], 1e-10 * size);
      }
    }
  }

  private static void add(double[] sum, double[] v, double weight) {
    for (int j = 0; j < v.length; j++) {
      for (int k = 0; k < v.length; k++) {
        sum[j * v.length + k] += weight * v[j] * v[k];
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"polynomial-2", "power", "log-polynomial-2", "exponential"})
  void theOrderOfPointsDoesNotMatter(String model) throws FitFailedException {
    Drawn a = draw(model, 1, 9);
    int[] order = {4, 0, 8, 2, 6, 1, 7, 3, 5};
    Drawn b =
        new Drawn(
            pick(a.r(), order),
            pick(a.h(), order),
            pick(a.vr(), order),
            pick(a.vh(), order),
            new double[][] {pick(a.z()[0], order)},
            new double[][] {pick(a.c()[0], order)});
    CurveFit first = CurveSolver.fit(new ModelId(model), a.points());
    CurveFit second = CurveSolver.fit(new ModelId(model), b.points());
    assertEquals(first.chiSquared(), second.chiSquared(), 1e-10 * first.chiSquared());
    for (double at = 1900; at <= 3000; at += 110) {
      double value = first.model().value(at, first.beta());
      assertEquals(value, second.model().value(at, second.beta()), 1e-11 * value);
      assertEquals(
          first.varianceOfCurveAt(at), second.varianceOfCurveAt(at), 1e-9 * value * value * 1e-4);
    }
  }

  private static double[] pick(double[] values, int[] order) {
    double[] picked = new double[order.length];
    for (int i = 0; i < order.length; i++) {
      picked[i] = values[order[i]];
    }
    return picked;
  }

  private static double[] times(double[] values, double factor) {
    double[] scaled = values.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    return scaled;
  }

  @ParameterizedTest
  @ValueSource(strings = {"polynomial-1", "polynomial-2", "power", "exponential", "rational-1-1"})
  void aChangeOfUnitsChangesTheCoefficientsAccordingly(String model) throws FitFailedException {
    Drawn a = draw(model, 1, 11);
    double cr = 1e-3;
    double ch = 1e4;
    Drawn b =
        new Drawn(
            times(a.r(), cr),
            times(a.h(), ch),
            times(a.vr(), cr * cr),
            times(a.vh(), ch * ch),
            new double[][] {times(a.z()[0], cr)},
            new double[][] {times(a.c()[0], ch)});
    CurveFit first = CurveSolver.fit(new ModelId(model), a.points());
    CurveFit second = CurveSolver.fit(new ModelId(model), b.points());
    assertEquals(first.chiSquared(), second.chiSquared(), 1e-9 * first.chiSquared());
    double[] own = first.reported().values();
    double[] other = second.reported().values();
    for (int k = 0; k < own.length; k++) {
      // b_k r^k and numerators go with ch / cr^k, denominators with 1 / cr^k, a with ch / cr^b,
      // exponents as they are, decay constants with 1 / cr.
      double factor =
          switch (model) {
            case "power" -> k == 0 ? ch * StrictMath.pow(cr, -own[1]) : 1;
            case "exponential" -> k == 0 ? ch : 1 / cr;
            case "rational-1-1" -> k == 0 ? ch : k == 1 ? ch / cr : 1 / cr;
            default -> ch * StrictMath.pow(cr, -k);
          };
      assertEquals(own[k] * factor, other[k], 1e-9 * Math.abs(own[k] * factor), model + " " + k);
      if (!model.equals("power") || k == 1) {
        assertEquals(
            first.reported().standardUncertainty(k) * Math.abs(factor),
            second.reported().standardUncertainty(k),
            1e-8 * first.reported().standardUncertainty(k) * Math.abs(factor));
      }
    }
  }

  @Test
  void exchangingTheAxesOfALineWithSharedErrors() throws FitFailedException {
    Drawn a = draw("polynomial-1", 1, 21);
    CurveFit line = CurveSolver.fit(new ModelId("polynomial-1"), a.points());
    CurveFit inverse =
        CurveSolver.fit(
            new ModelId("polynomial-1"), Points.of(a.h(), a.r(), a.vh(), a.vr(), a.c(), a.z()));
    double[] b = line.reported().values();
    double[] c = inverse.reported().values();
    assertEquals(1 / b[1], c[1], 1e-12 * Math.abs(c[1]));
    assertEquals(-b[0] / b[1], c[0], 1e-12 * Math.abs(c[0]));
    assertEquals(line.chiSquared(), inverse.chiSquared(), 1e-11 * line.chiSquared());
  }

  @Test
  void equalUncertaintiesOfALineDoNotFallBackToTheOrdinaryFit() throws FitFailedException {
    // The closed form of Deming's slope (K. Linnet, Clin. Chem. 39 (1993) 424).
    double[] x = {10, 20, 30, 40, 50};
    double[] y = {12, 19, 33, 37, 52};
    double[] vx = {4, 4, 4, 4, 4};
    double[] vy = {1, 1, 1, 1, 1};
    double u = 0;
    double q = 0;
    double p = 0;
    for (int i = 0; i < 5; i++) {
      u += (x[i] - 30) * (x[i] - 30);
      q += (y[i] - 30.6) * (y[i] - 30.6);
      p += (x[i] - 30) * (y[i] - 30.6);
    }
    double k = 0.25;
    double slope = (q - k * u + Math.sqrt((q - k * u) * (q - k * u) + 4 * k * p * p)) / (2 * p);
    CurveFit fit =
        CurveSolver.fit(
            new ModelId("polynomial-1"), Points.of(x, y, vx, vy, new double[0][], new double[0][]));
    assertEquals(slope, fit.reported().values()[1], 1e-13);
  }
}
