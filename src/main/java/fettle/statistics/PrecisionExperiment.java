package fettle.statistics;

import java.util.stream.IntStream;

/**
 * Repeatability and reproducibility from one level of a precision experiment: cells (laboratories,
 * operators, days) of repeated readings.
 *
 * <pre>  s_r² within cells,  s_L² = (s_d² − s_r²)/n̄ not below 0,  s_R² = s_r² + s_L²</pre>
 *
 * with s_d² the mean square between cells and n̄ = (N − Σ n²/N)/(p − 1). Mandel's h is the
 * deviation of a cell mean from the general mean over the standard deviation of the cell means, k
 * the standard deviation of a cell over the root mean square of all. Cells are screened with {@link
 * GrubbsSingle}, {@link GrubbsPair} on {@link #cellMeans()} and {@link CochranVariance} on {@link
 * #cellVariances()}.
 *
 * <p>Cost: O(number of readings).
 *
 * @see "ISO 5725-2:1994, 7.3.1 and 7.4.5"
 * @see "ASTM E691, Standard practice for conducting an interlaboratory study"
 */
public final class PrecisionExperiment {
  private final OneWayAnova anova;
  private final double[] means;
  private final double[] variances;
  private final int[] counts;

  private PrecisionExperiment(double[][] cells) {
    anova = OneWayAnova.of(cells);
    means = new double[cells.length];
    variances = new double[cells.length];
    counts = new int[cells.length];
    for (int i = 0; i < cells.length; i++) {
      SummaryStatistics s = SummaryStatistics.of(cells[i]);
      means[i] = s.mean();
      variances[i] = s.variance();
      counts[i] = s.size();
    }
  }

  /**
   * From the readings of each cell.
   *
   * @param cells at least 2 cells of at least 2 finite readings each, not all equal
   * @return the estimates
   */
  public static PrecisionExperiment of(double[][] cells) {
    for (int i = 0; i < cells.length; i++) {
      Arguments.atLeast("cells[" + i + "]", cells[i].length, 2, "a precision experiment");
    }
    return new PrecisionExperiment(cells);
  }

  /**
   * General mean, each reading counting once.
   *
   * @return mean
   */
  public double generalMean() {
    return anova.grandMean();
  }

  /**
   * Repeatability standard deviation.
   *
   * @return s_r
   */
  public double repeatability() {
    return anova.withinStandardDeviation();
  }

  /**
   * Between-cell standard deviation.
   *
   * @return s_L
   */
  public double betweenCells() {
    return Math.sqrt(anova.betweenVariance());
  }

  /**
   * Reproducibility standard deviation.
   *
   * @return s_R
   */
  public double reproducibility() {
    return Math.sqrt(anova.withinMeanSquare() + anova.betweenVariance());
  }

  /**
   * Effective number of readings a cell.
   *
   * @return n̄
   */
  public double effectiveCount() {
    return anova.effectiveGroupSize();
  }

  /**
   * Repeatability limit.
   *
   * @return 2.8 s_r
   */
  public double repeatabilityLimit() {
    return 2.8 * repeatability();
  }

  /**
   * Reproducibility limit.
   *
   * @return 2.8 s_R
   */
  public double reproducibilityLimit() {
    return 2.8 * reproducibility();
  }

  /**
   * Means of the cells.
   *
   * @return a copy
   */
  public double[] cellMeans() {
    return means.clone();
  }

  /**
   * Variances of the cells.
   *
   * @return a copy
   */
  public double[] cellVariances() {
    return variances.clone();
  }

  /**
   * Readings in each cell.
   *
   * @return a copy
   */
  public int[] cellCounts() {
    return counts.clone();
  }

  /**
   * Standard deviation of the cell means about the general mean.
   *
   * @return root of Σ(cell mean − general mean)²/(p − 1)
   */
  public double standardDeviationOfCellMeans() {
    double squares = 0;
    for (double mean : means) {
      squares += (mean - generalMean()) * (mean - generalMean());
    }
    return Math.sqrt(squares / (means.length - 1));
  }

  /**
   * Mandel's h of each cell.
   *
   * @return between-cell consistency
   * @throws IllegalStateException if all cell means are equal
   */
  public double[] mandelH() {
    double s = standardDeviationOfCellMeans();
    if (s == 0) {
      throw new IllegalStateException("all cell means are equal: h is not defined");
    }
    return IntStream.range(0, means.length)
        .mapToDouble(i -> (means[i] - generalMean()) / s)
        .toArray();
  }

  /**
   * Mandel's k of each cell.
   *
   * @return within-cell consistency
   * @throws IllegalStateException if no cell scatters
   */
  public double[] mandelK() {
    double meanSquare = Moments.mean(variances);
    if (meanSquare == 0) {
      throw new IllegalStateException("all cell variances are 0: k is not defined");
    }
    return IntStream.range(0, means.length)
        .mapToDouble(i -> Math.sqrt(variances[i] / meanSquare))
        .toArray();
  }

  /**
   * Critical value of |h|.
   *
   * @param cells number of cells p, at least 3
   * @param alpha level for one cell, two-sided (ISO 5725-2: 0.05, 0.01; ASTM E691: 0.005)
   * @return (p − 1) t / √(p (t² + p − 2)), t on p − 2 degrees of freedom
   */
  public static double criticalH(int cells, double alpha) {
    Arguments.countAtLeast("cells", cells, 3);
    Arguments.probability("alpha", alpha);
    double t = Quantiles.upperT(0.5 * alpha, cells - 2.0);
    return (cells - 1) * t / Math.sqrt(cells * (t * t + cells - 2));
  }

  /**
   * Critical value of k for cells of equal size.
   *
   * @param cells number of cells p, at least 2
   * @param count readings in each, at least 2
   * @param alpha level for one cell
   * @return √(p / (1 + (p − 1)/F)), F on n − 1 and (p − 1)(n − 1) degrees of freedom
   */
  public static double criticalK(int cells, int count, double alpha) {
    Arguments.countAtLeast("cells", cells, 2);
    Arguments.countAtLeast("count", count, 2);
    double f = Quantiles.upperF(alpha, count - 1.0, (cells - 1.0) * (count - 1.0));
    return Math.sqrt(cells / (1 + (cells - 1) / f));
  }
}
