package fettle.statistics;

/**
 * Levene's test for equal variances, about the means or, after Brown and Forsythe, the medians.
 *
 * <p>One-way analysis of variance of the absolute deviations from the centre of each group.
 *
 * @see "H. Levene, in: Contributions to Probability and Statistics (1960) 278"
 * @see "M. B. Brown, A. B. Forsythe, Robust tests for the equality of variances, J. Am. Stat.
 *     Assoc. 69 (1974) 364"
 */
public final class LeveneTest {
  private LeveneTest() {}

  /**
   * About the means (Levene).
   *
   * @param groups at least 2 groups of at least 3 finite values
   * @return the F ratio W
   */
  public static FTest aboutMeans(double[][] groups) {
    return about(groups, false);
  }

  /**
   * About the medians (Brown and Forsythe): keeps its level for skew and heavy-tailed values.
   *
   * @param groups at least 2 groups of at least 3 finite values
   * @return the F ratio W
   */
  public static FTest aboutMedians(double[][] groups) {
    return about(groups, true);
  }

  private static FTest about(double[][] groups, boolean medians) {
    Arguments.finite("groups", groups);
    double[][] deviations = new double[groups.length][];
    for (int i = 0; i < groups.length; i++) {
      // both deviations of a pair are equal: their scatter within a group would be nothing
      Arguments.atLeast("groups[" + i + "]", groups[i].length, 3, "Levene's test");
      double centre = medians ? OrderStatistics.median(groups[i]) : Moments.mean(groups[i]);
      deviations[i] = new double[groups[i].length];
      for (int j = 0; j < groups[i].length; j++) {
        deviations[i][j] = Math.abs(groups[i][j] - centre);
      }
    }
    OneWayAnova a = OneWayAnova.of(deviations);
    return FTest.ofMeanSquares(
        a.betweenMeanSquare(),
        a.betweenDegreesOfFreedom(),
        a.withinMeanSquare(),
        a.withinDegreesOfFreedom());
  }
}
