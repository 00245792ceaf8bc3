package fettle.fit;

import org.apache.commons.numbers.core.DD;

/**
 * The centred and scaled argument of a series: t = (a(r) − centre) / scale with a(r) = r or ln r,
 * so that t runs over about [−1, 1] on the data and the powers of t stay well conditioned.
 *
 * @param logarithmic whether a(r) = ln r
 * @param centre middle of the data's a(r)
 * @param scale half width of the data's a(r), above 0
 */
public record ArgumentScaling(boolean logarithmic, double centre, double scale) {
  /** Checks values. */
  public ArgumentScaling {
    if (!Double.isFinite(centre) || !(scale > 0) || Double.isInfinite(scale)) {
      throw new IllegalArgumentException(
          "centre " + centre + ", scale " + scale + ": finite, and scale above 0, expected");
    }
  }

  /**
   * The scaling that a set of responses calls for.
   *
   * @param responses length n
   * @param logarithmic whether the argument is the logarithm of the response
   * @return centre and half width of the data
   * @throws FitFailedException if all responses are equal, or one is not above 0 under a logarithm
   */
  static ArgumentScaling of(double[] responses, boolean logarithmic) throws FitFailedException {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double r : responses) {
      low = Math.min(low, r);
      high = Math.max(high, r);
    }
    if (!(high > low)) {
      throw new FitFailedException(
          FitFailedException.Reason.RESPONSES_NOT_DISTINCT,
          "all responses equal " + low + "; a curve needs responses that differ");
    }
    if (logarithmic && !(low > 0)) {
      throw new FitFailedException(
          FitFailedException.Reason.OUTSIDE_DOMAIN,
          "response " + low + " is not above 0, and this model takes its logarithm");
    }
    double first = logarithmic ? StrictMath.log(low) : low;
    double last = logarithmic ? StrictMath.log(high) : high;
    double half = 0.5 * (last - first);
    if (!(half > 0) || Double.isInfinite(half)) {
      throw new FitFailedException(
          FitFailedException.Reason.NOT_FINITE,
          "responses from " + low + " to " + high + " span too much or too little to be scaled");
    }
    return new ArgumentScaling(logarithmic, 0.5 * (first + last), half);
  }

  /** t at a response; NaN where the logarithm does not exist. */
  double at(double r) {
    return ((logarithmic ? StrictMath.log(r) : r) - centre) / scale;
  }

  /** dt/dr at a response. */
  double slope(double r) {
    return logarithmic ? 1 / (scale * r) : 1 / scale;
  }

  /**
   * The matrix T that turns coefficients of powers of t into coefficients of powers of a(r): d_j =
   * Σ T_jk c_k with T_jk = C(k, j) (−centre)^(k−j) / scale^k, in double-double so that the
   * cancellation of the shift loses nothing.
   *
   * @param degree highest power
   * @return (degree + 1) × (degree + 1)
   */
  DD[][] toPowersOfArgument(int degree) {
    DD[][] matrix = new DD[degree + 1][degree + 1];
    DD inverseScale = DD.ONE.divide(DD.of(scale));
    DD minusCentre = DD.of(-centre);
    for (int k = 0; k <= degree; k++) {
      DD scalePower = DD.ONE;
      for (int i = 0; i < k; i++) {
        scalePower = scalePower.multiply(inverseScale);
      }
      double binomial = 1;
      DD shift = DD.ONE;
      for (int j = k; j >= 0; j--) {
        matrix[j][k] = scalePower.multiply(shift).multiply(binomial);
        shift = shift.multiply(minusCentre);
        binomial = Math.rint(binomial * j / (k - j + 1));
      }
      for (int j = k + 1; j <= degree; j++) {
        matrix[j][k] = DD.ZERO;
      }
    }
    return matrix;
  }
}
