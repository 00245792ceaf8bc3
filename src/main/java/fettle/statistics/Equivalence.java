package fettle.statistics;

/**
 * Two one-sided tests (TOST): is a difference inside stated bounds?
 *
 * <pre>  t₁ = (d − low)/se, p₁ = P(T above t₁);   t₂ = (d − high)/se, p₂ = P(T below t₂)</pre>
 *
 * Equivalent at level α when both p are below α, which is the same as the interval of confidence 1
 * − 2α lying inside the bounds. "Not significantly different" is not equivalence.
 *
 * @param difference the difference tested
 * @param low lower bound
 * @param high upper bound, above the lower
 * @see "D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657"
 * @see "D. Lakens, Equivalence tests, Soc. Psychol. Pers. Sci. 8 (2017) 355"
 */
public record Equivalence(MeanDifference difference, double low, double high) {
  /**
   * Checks the bounds.
   *
   * @param difference the difference tested
   * @param low lower bound
   * @param high upper bound
   */
  public Equivalence {
    Arguments.finite("low", low);
    Arguments.finite("high", high);
    if (low >= high) {
      throw new IllegalArgumentException(
          "low is " + low + " and high is " + high + ": low must be below high");
    }
  }

  /**
   * t against the lower bound.
   *
   * @return t₁
   */
  public double lowerT() {
    return difference.t(low);
  }

  /**
   * Probability of so large a t₁ if the difference were the lower bound.
   *
   * @return p₁
   */
  public double lowerPValue() {
    return Quantiles.tTail(lowerT(), difference.degreesOfFreedom());
  }

  /**
   * t against the upper bound.
   *
   * @return t₂
   */
  public double upperT() {
    return difference.t(high);
  }

  /**
   * Probability of so small a t₂ if the difference were the upper bound.
   *
   * @return p₂
   */
  public double upperPValue() {
    return Quantiles.tTail(-upperT(), difference.degreesOfFreedom());
  }

  /**
   * p of the whole test.
   *
   * @return the larger of both
   */
  public double pValue() {
    return Math.max(lowerPValue(), upperPValue());
  }

  /**
   * Verdict.
   *
   * @param alpha level, strictly between 0 and 1
   * @return true when the difference is shown to lie inside the bounds
   */
  public boolean equivalent(double alpha) {
    Arguments.probability("alpha", alpha);
    return pValue() < alpha;
  }
}
