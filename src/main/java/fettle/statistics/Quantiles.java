package fettle.statistics;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Quantiles and upper-tail probabilities of the distributions that tests refer to.
 *
 * <p>{@code upper…(alpha, …)} is the point exceeded with probability alpha; asking by the upper
 * tail keeps small alpha exact. {@code …Tail(x, …)} is the probability of exceeding x. Degrees of
 * freedom may be fractional (Welch, Satterthwaite). Computed by Apache Commons Statistics 1.2.
 */
public final class Quantiles {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private Quantiles() {}

  /**
   * Point of the standard normal distribution.
   *
   * @param alpha upper-tail probability, strictly between 0 and 1
   * @return z with P(Z above z) = alpha
   */
  public static double upperNormal(double alpha) {
    Arguments.probability("alpha", alpha);
    return NORMAL.inverseSurvivalProbability(alpha);
  }

  /**
   * Upper tail of the standard normal distribution.
   *
   * @param z any number
   * @return P(Z above z)
   */
  public static double normalTail(double z) {
    return NORMAL.survivalProbability(z);
  }

  /**
   * Point of Student's t distribution.
   *
   * @param alpha upper-tail probability, strictly between 0 and 1
   * @param degreesOfFreedom above zero
   * @return t with P(T above t) = alpha
   */
  public static double upperT(double alpha, double degreesOfFreedom) {
    Arguments.probability("alpha", alpha);
    Arguments.positive("degreesOfFreedom", degreesOfFreedom);
    return TDistribution.of(degreesOfFreedom).inverseSurvivalProbability(alpha);
  }

  /**
   * Upper tail of Student's t distribution.
   *
   * @param t any number
   * @param degreesOfFreedom above zero
   * @return P(T above t)
   */
  public static double tTail(double t, double degreesOfFreedom) {
    Arguments.positive("degreesOfFreedom", degreesOfFreedom);
    return TDistribution.of(degreesOfFreedom).survivalProbability(t);
  }

  /**
   * Both tails of Student's t distribution.
   *
   * @param t any number
   * @param degreesOfFreedom above zero
   * @return P(|T| above |t|)
   */
  public static double tTwoTails(double t, double degreesOfFreedom) {
    return Math.min(1, 2 * tTail(Math.abs(t), degreesOfFreedom));
  }

  /**
   * Point of the F distribution.
   *
   * @param alpha upper-tail probability, strictly between 0 and 1
   * @param numerator degrees of freedom of the numerator, above zero
   * @param denominator degrees of freedom of the denominator, above zero
   * @return F with P(F above it) = alpha
   */
  public static double upperF(double alpha, double numerator, double denominator) {
    Arguments.probability("alpha", alpha);
    Arguments.positive("numerator", numerator);
    Arguments.positive("denominator", denominator);
    return FDistribution.of(numerator, denominator).inverseSurvivalProbability(alpha);
  }

  /**
   * Upper tail of the F distribution.
   *
   * @param f any number
   * @param numerator degrees of freedom of the numerator, above zero
   * @param denominator degrees of freedom of the denominator, above zero
   * @return P(F above f)
   */
  public static double fTail(double f, double numerator, double denominator) {
    Arguments.positive("numerator", numerator);
    Arguments.positive("denominator", denominator);
    return FDistribution.of(numerator, denominator).survivalProbability(f);
  }

  /**
   * Point of the chi-squared distribution.
   *
   * @param alpha upper-tail probability, strictly between 0 and 1
   * @param degreesOfFreedom above zero
   * @return x with P(χ² above x) = alpha
   */
  public static double upperChiSquared(double alpha, double degreesOfFreedom) {
    Arguments.probability("alpha", alpha);
    Arguments.positive("degreesOfFreedom", degreesOfFreedom);
    return ChiSquaredDistribution.of(degreesOfFreedom).inverseSurvivalProbability(alpha);
  }

  /**
   * Upper tail of the chi-squared distribution.
   *
   * @param x any number
   * @param degreesOfFreedom above zero
   * @return P(χ² above x)
   */
  public static double chiSquaredTail(double x, double degreesOfFreedom) {
    Arguments.positive("degreesOfFreedom", degreesOfFreedom);
    return ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(x);
  }

  static double betaTail(double x, double a, double b) {
    return BetaDistribution.of(a, b).survivalProbability(x);
  }
}
