package fettle.statistics;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** Points and weights of the Gauss–Legendre rule on 0 to 1. */
final class GaussLegendre {
  final double[] points;
  final double[] weights;

  GaussLegendre(int count) {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(count);
    points = new double[count];
    weights = new double[count];
    for (int i = 0; i < count; i++) {
      points[i] = 0.5 * (1 + rule.getPoint(i));
      weights[i] = 0.5 * rule.getWeight(i);
    }
  }
}
