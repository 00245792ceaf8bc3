package fettle.fit;

import java.util.Optional;

/**
 * A fitted curve: parameters, covariance, agreement with the stated uncertainties, effort.
 *
 * <p>Covariances are the β block of (JᵀV⁻¹J)⁻¹ at the adjusted points (D. York et al., Am. J. Phys.
 * 72 (2004) 367; ISO/TS 28037:2010 clause 7 for the line). They rest on the stated uncertainties
 * and are <em>not</em> multiplied by χ²/ν, except where no uncertainties were stated: then they are
 * multiplied by the residual variance s² = Q/ν.
 *
 * @param model the model fitted
 * @param beta parameters of the model, length p
 * @param covariance covariance of beta, p × p row-major
 * @param precise coefficients in raw units where they are known better than beta tells, else empty
 * @param chiSquared Q at its minimum; the residual sum of squares where no uncertainties are stated
 * @param degreesOfFreedom m − p
 * @param adjustedResponses estimated true responses ξ of the points, shared effects removed
 * @param fitted g at the observed responses
 * @param slopes dg/dr at the adjusted responses
 * @param effectiveVariances independent variance of each point's deviation along hardness: V_h +
 *     slope² V_r
 * @param logDeterminants ln|V| + ln|JᵀV⁻¹J| with V the whole effective covariance; the part of the
 *     restricted likelihood that is not Q
 * @param logDeterminantV ln|V|
 * @param conditionNumber of the scaled, whitened Jacobian
 * @param iterations iterations used
 * @param uncertaintiesStated false where the residual variance scales the covariance
 */
public record CurveFit(
    ResponseModel model,
    double[] beta,
    double[] covariance,
    Optional<ReportedCoefficients> precise,
    double chiSquared,
    int degreesOfFreedom,
    double[] adjustedResponses,
    double[] fitted,
    double[] slopes,
    double[] effectiveVariances,
    double logDeterminants,
    double logDeterminantV,
    double conditionNumber,
    int iterations,
    boolean uncertaintiesStated) {

  /**
   * Coefficients in raw units with their covariance.
   *
   * @return named coefficients
   */
  public ReportedCoefficients reported() {
    return precise.orElseGet(() -> model.reported(beta, covariance));
  }

  /**
   * Number of parameters.
   *
   * @return p
   */
  public int parameterCount() {
    return beta.length;
  }

  /**
   * Variance of the curve itself at a response, from the covariance of the parameters.
   *
   * @param r response
   * @return g_βᵀ Cov(β) g_β, in the squared unit of the scale
   */
  public double varianceOfCurveAt(double r) {
    double[] line = new double[beta.length + 2];
    model.linearise(r, beta, line);
    return QuadraticForm.of(line, 2, covariance, beta.length);
  }

  /**
   * Residual standard deviation √(Σ(fitted − hardness)²/(m − p)) of the points about the curve.
   *
   * @param points the points fitted
   * @return in the scale's unit
   */
  public double residualStandardDeviation(Points points) {
    if (!uncertaintiesStated) {
      return Math.sqrt(chiSquared / degreesOfFreedom);
    }
    double sum = 0;
    for (int i = 0; i < fitted.length; i++) {
      double deviation = fitted[i] - points.hardness(i);
      sum += deviation * deviation;
    }
    return Math.sqrt(sum / degreesOfFreedom);
  }
}
