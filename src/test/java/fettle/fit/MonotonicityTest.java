package fettle.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * The proof of a sign over an interval, on polynomials whose roots are known because they are
 * multiplied out of them, and on random ones against a dense scan.
 */
class MonotonicityTest {
  /** Coefficients a_0 … a_n of c Π (x − root). */
  private static double[] fromRoots(double factor, double... roots) {
    double[] a = new double[roots.length + 1];
    a[0] = factor;
    for (int n = 0; n < roots.length; n++) {
      for (int k = n + 1; k > 0; k--) {
        a[k] = a[k - 1] - roots[n] * a[k];
      }
      a[0] *= -roots[n];
    }
    return a;
  }

  /** The product with x² − 2 b x + b² + c², which has no real root. */
  private static double[] timesQuadratic(double[] a, double b, double c) {
    double[] product = new double[a.length + 2];
    for (int k = 0; k < a.length; k++) {
      product[k] += (b * b + c * c) * a[k];
      product[k + 1] -= 2 * b * a[k];
      product[k + 2] += a[k];
    }
    return product;
  }

  @Test
  void constantsAndLines() {
    assertEquals(Monotonicity.INCREASING, BernsteinSign.signOf(new double[] {2}, -1, 1));
    assertEquals(Monotonicity.DECREASING, BernsteinSign.signOf(new double[] {-2}, -1, 1));
    assertFalse(BernsteinSign.signOf(new double[] {0}, -1, 1).isProven());
    assertEquals(Monotonicity.INCREASING, BernsteinSign.signOf(new double[] {1.01, 1}, -1, 1));
    assertEquals(Monotonicity.NOT_MONOTONE, BernsteinSign.signOf(new double[] {0.5, 1}, -1, 1));
  }

  @Test
  void rootsOutsideDoNotMatter() {
    double[] a = fromRoots(1, -1.001, 1.001, 3, -7);
    // Two roots on either side: positive between −1.001 and 1.001 times (x − 3)(x + 7) < 0: > 0.
    assertEquals(Monotonicity.INCREASING, BernsteinSign.signOf(a, -1, 1));
    assertEquals(Monotonicity.NOT_MONOTONE, BernsteinSign.signOf(a, -1, 1.002));
  }

  @Test
  void aDoubleRootInsideIsNotStrict() {
    for (double root : new double[] {0, 0.25, 1.0 / 3, -0.7}) {
      assertFalse(
          BernsteinSign.signOf(fromRoots(1, root, root), -1, 1).isProven(), "double root " + root);
    }
  }

  @Test
  void aDoubleRootOutsideIsNoObstacle() {
    assertEquals(
        Monotonicity.INCREASING, BernsteinSign.signOf(fromRoots(1, 1.0001, 1.0001), -1, 1));
  }

  @Test
  void nearlyTangent() {
    // (x − 0.3)² + c²: above 0 by c², proven down to where rounding begins.
    for (double c : new double[] {1e-1, 1e-3, 1e-5}) {
      double[] above = timesQuadratic(new double[] {1}, 0.3, c);
      assertEquals(Monotonicity.INCREASING, BernsteinSign.signOf(above, -1, 1), "c " + c);
      double[] below = above.clone();
      below[0] -= 2 * c * c;
      assertEquals(Monotonicity.NOT_MONOTONE, BernsteinSign.signOf(below, -1, 1), "−c " + c);
    }
    // Below rounding nothing may be claimed.
    assertFalse(
        BernsteinSign.signOf(timesQuadratic(new double[] {1}, 0.3, 1e-9), -1, 1).isProven());
  }

  @Test
  void degreeTen() {
    double[] a = fromRoots(1, 1.05, -1.05, 1.5, -1.5);
    a = timesQuadratic(timesQuadratic(timesQuadratic(a, 0, 0.2), 0.5, 0.1), -0.5, 0.1);
    assertEquals(10, a.length - 1);
    assertEquals(Monotonicity.INCREASING, BernsteinSign.signOf(a, -1, 1));
    assertEquals(Monotonicity.NOT_MONOTONE, BernsteinSign.signOf(a, -1.1, 1));
  }

  @Test
  void randomPolynomialsAgainstADenseScan() {
    Random random = new Random(20240601);
    int proven = 0;
    for (int n = 0; n < 5000; n++) {
      double[] a = new double[1 + random.nextInt(10)];
      for (int k = 0; k < a.length; k++) {
        a[k] = random.nextGaussian();
      }
      a[0] += random.nextBoolean() ? 3 : 0;
      double low = -1 + 0.5 * random.nextDouble();
      double high = low + 0.1 + random.nextDouble();
      Monotonicity verdict = BernsteinSign.signOf(a, low, high);
      double smallest = Double.POSITIVE_INFINITY;
      double largest = Double.NEGATIVE_INFINITY;
      for (int i = 0; i <= 2000; i++) {
        double x = low + i * (high - low) / 2000;
        double value = 0;
        for (int k = a.length - 1; k >= 0; k--) {
          value = value * x + a[k];
        }
        smallest = Math.min(smallest, value);
        largest = Math.max(largest, value);
      }
      Monotonicity seen =
          smallest > 0
              ? Monotonicity.INCREASING
              : largest < 0 ? Monotonicity.DECREASING : Monotonicity.NOT_MONOTONE;
      // The scan may miss a dip of 1e-6 between its points; none of these polynomials has one.
      assertEquals(seen, verdict, "polynomial " + n);
      proven += verdict.isProven() ? 1 : 0;
    }
    assertTrue(proven > 500 && proven < 4500, "lopsided test");
  }

  @Test
  void modelsOverTheirRange() throws FitFailedException {
    double[] r = {1, 2, 3, 4, 5};
    ResponseModel parabola = new ModelId("polynomial-2").bind(r);
    // t = (r − 3)/2; vertex at t = −c1/(2 c2).
    assertEquals(Monotonicity.INCREASING, parabola.monotonicity(new double[] {0, 2.1, 1}, 1, 5));
    assertEquals(Monotonicity.NOT_MONOTONE, parabola.monotonicity(new double[] {0, 1.9, 1}, 1, 5));
    assertEquals(Monotonicity.DECREASING, parabola.monotonicity(new double[] {0, -2.1, 1}, 1, 5));
    ResponseModel power = new ModelId("power").bind(r);
    assertEquals(Monotonicity.DECREASING, power.monotonicity(new double[] {1, -0.1}, 1, 5));
    ResponseModel ratio = new ModelId("rational-1-1").bind(r);
    // (1 + 2 t)/(1 + 0.5 t): slope sign 2 − 0.5 > 0, pole at t = −2 outside.
    assertEquals(Monotonicity.INCREASING, ratio.monotonicity(new double[] {1, 2, 0.5}, 1, 5));
    // Pole at t = −0.5 inside.
    assertFalse(ratio.monotonicity(new double[] {1, 3, 2}, 1, 5).isProven());
  }
}
