package fettle.curve;

/**
 * The part of the curve's covariance that one independent source makes up, for the budget.
 *
 * @param source what it is
 * @param covariance p × p row-major
 * @param present false where nothing is known of the source, so that its part is zero by ignorance
 */
public record CovariancePart(String source, double[] covariance, boolean present) {}
