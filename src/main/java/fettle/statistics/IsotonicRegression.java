package fettle.statistics;

import java.util.Arrays;

/**
 * Non-decreasing least-squares fit by pooling adjacent violators.
 *
 * <p>Cost: O(n).
 *
 * @see "R. E. Barlow, D. J. Bartholomew, J. M. Bremner, H. D. Brunk, Statistical Inference under
 *     Order Restrictions (1972)"
 */
public final class IsotonicRegression {
  private IsotonicRegression() {}

  /**
   * Fits with equal weights.
   *
   * @param values at least 1 finite value, in the order of their abscissae
   * @return the non-decreasing values nearest to them
   */
  public static double[] fit(double[] values) {
    double[] weights = new double[values.length];
    Arrays.fill(weights, 1);
    return fit(values, weights);
  }

  /**
   * Fits with weights.
   *
   * @param values at least 1 finite value, in the order of their abscissae
   * @param weights above zero
   * @return the non-decreasing values nearest to them in Σ w (y − fit)²
   */
  public static double[] fit(double[] values, double[] weights) {
    Arguments.atLeast("values", values.length, 1, "an isotonic fit");
    Arguments.sameLength("values", values.length, "weights", weights.length);
    Arguments.finite("values", values);
    Arguments.positive("weights", weights);
    int n = values.length;
    double[] level = new double[n];
    double[] weight = new double[n];
    int[] end = new int[n];
    int pools = 0;
    for (int i = 0; i < n; i++) {
      level[pools] = values[i];
      weight[pools] = weights[i];
      end[pools] = i + 1;
      pools++;
      while (pools > 1 && level[pools - 2] > level[pools - 1]) {
        double w = weight[pools - 2] + weight[pools - 1];
        level[pools - 2] =
            (weight[pools - 2] * level[pools - 2] + weight[pools - 1] * level[pools - 1]) / w;
        weight[pools - 2] = w;
        end[pools - 2] = end[pools - 1];
        pools--;
      }
    }
    double[] fit = new double[n];
    int from = 0;
    for (int k = 0; k < pools; k++) {
      Arrays.fill(fit, from, end[k], level[k]);
      from = end[k];
    }
    return fit;
  }
}
