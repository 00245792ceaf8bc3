package fettle.curve;

/**
 * One value of the between-block scatter with its posterior weight and the curve that goes with it.
 *
 * @param weight posterior probability; all weights sum to 1
 * @param tau between-block standard uncertainty, relative or in the scale's unit
 * @param beta parameters, length p
 * @param covariance covariance of beta without run effects, p × p row-major
 */
public record PosteriorNode(double weight, double tau, double[] beta, double[] covariance) {}
