package fettle.uncertainty;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Gauss–Legendre rule on 0 to 1, computed once for each number of points: the library derives it
 * anew at every call.
 */
final class GaussRule {
  private final double[] points;
  private final double[] weights;

  private GaussRule(int count) {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(count, 0, 1);
    points = new double[count];
    weights = new double[count];
    for (int k = 0; k < count; k++) {
      points[k] = rule.getPoint(k);
      weights[k] = rule.getWeight(k);
    }
  }

  static GaussRule of(int count) {
    return new GaussRule(count);
  }

  double point(int k) {
    return points[k];
  }

  double weight(int k) {
    return weights[k];
  }
}
