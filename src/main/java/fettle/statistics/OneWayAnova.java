package fettle.statistics;

import org.apache.commons.numbers.core.DD;

/**
 * One-way analysis of variance, and the variance components of the one-way random model.
 *
 * <p>Sums are carried with twice the precision on the decimals as written (see {@link
 * SummaryStatistics}), so that leading digits in common cost nothing. Groups may differ in size.
 *
 * <p>Cost: O(number of values).
 *
 * @param groups number of groups
 * @param size number of values in all
 * @param grandMean mean of all values
 * @param betweenSumOfSquares Σ n_i (m_i − m)²
 * @param withinSumOfSquares Σ (y_ij − m_i)²
 * @param effectiveGroupSize (N − Σ n_i²/N)/(groups − 1); the common size when groups are equal
 * @see "NIST/ITL Statistical Reference Datasets, analysis of variance"
 * @see "S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992), 3.6"
 */
public record OneWayAnova(
    int groups,
    int size,
    double grandMean,
    double betweenSumOfSquares,
    double withinSumOfSquares,
    double effectiveGroupSize) {
  private static final String TEST = "an analysis of variance";

  /**
   * Analyses groups of values.
   *
   * @param groups at least 2 groups of at least 1 finite value, at least one more value than groups
   * @return the table
   * @throws IllegalArgumentException if there are too few values, one is not finite, or all are
   *     equal
   */
  public static OneWayAnova of(double[][] groups) {
    if (groups.length < 2) {
      throw new IllegalArgumentException(
          "groups has " + groups.length + " groups: " + TEST + " needs at least 2");
    }
    Arguments.finite("groups", groups);
    int size = 0;
    double squaredSizes = 0;
    DD total = DD.ZERO;
    DD[][] y = new DD[groups.length][];
    DD[] sums = new DD[groups.length];
    for (int i = 0; i < groups.length; i++) {
      Arguments.atLeast("groups[" + i + "]", groups[i].length, 1, TEST);
      y[i] = PrintedDecimal.of(groups[i]);
      sums[i] = PrintedDecimal.sum(y[i]);
      total = total.add(sums[i]);
      size += groups[i].length;
      squaredSizes += (double) groups[i].length * groups[i].length;
    }
    if (size == groups.length) {
      throw new IllegalArgumentException(
          "each of the "
              + size
              + " groups has 1 value: "
              + TEST
              + " needs a group with at least 2");
    }
    DD mean = total.divide(DD.of(size));
    DD between = DD.ZERO;
    DD within = DD.ZERO;
    boolean allEqual = true;
    for (int i = 0; i < groups.length; i++) {
      DD own = sums[i].divide(DD.of(groups[i].length));
      between = between.add(own.subtract(mean).square().multiply(DD.of(groups[i].length)));
      if (!Moments.allEqual(groups[i])) {
        for (DD value : y[i]) {
          within = within.add(value.subtract(own).square());
        }
      }
      allEqual &= Moments.allEqual(groups[i]) && groups[i][0] == groups[0][0];
    }
    if (allEqual) {
      throw Arguments.noSpread("values", size, groups[0][0], TEST);
    }
    return new OneWayAnova(
        groups.length,
        size,
        mean.doubleValue(),
        between.doubleValue(),
        within.doubleValue(),
        (size - squaredSizes / size) / (groups.length - 1));
  }

  /**
   * Degrees of freedom between groups.
   *
   * @return groups − 1
   */
  public int betweenDegreesOfFreedom() {
    return groups - 1;
  }

  /**
   * Degrees of freedom within groups.
   *
   * @return values − groups
   */
  public int withinDegreesOfFreedom() {
    return size - groups;
  }

  /**
   * Mean square between groups.
   *
   * @return sum of squares over degrees of freedom
   */
  public double betweenMeanSquare() {
    return betweenSumOfSquares / betweenDegreesOfFreedom();
  }

  /**
   * Mean square within groups: the repeatability variance.
   *
   * @return sum of squares over degrees of freedom
   */
  public double withinMeanSquare() {
    return withinSumOfSquares / withinDegreesOfFreedom();
  }

  /**
   * F of the groups.
   *
   * @return between over within mean square; infinite when the groups do not scatter at all
   */
  public double f() {
    return betweenMeanSquare() / withinMeanSquare();
  }

  /**
   * Probability of so large an F if the groups have one mean.
   *
   * @return p
   */
  public double pValue() {
    return withinSumOfSquares == 0
        ? 0
        : Quantiles.fTail(f(), betweenDegreesOfFreedom(), withinDegreesOfFreedom());
  }

  /**
   * Share of the variation that lies between the groups.
   *
   * @return R²
   */
  public double rSquared() {
    return betweenSumOfSquares / (betweenSumOfSquares + withinSumOfSquares);
  }

  /**
   * Standard deviation within groups.
   *
   * @return root of the within mean square
   */
  public double withinStandardDeviation() {
    return Math.sqrt(withinMeanSquare());
  }

  /**
   * Variance between groups beyond what the scatter within explains (moment estimate).
   *
   * @return (between − within mean square)/effective group size, not below 0
   */
  public double betweenVariance() {
    return Math.max(0, (betweenMeanSquare() - withinMeanSquare()) / effectiveGroupSize);
  }
}
