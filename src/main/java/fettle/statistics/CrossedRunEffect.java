package fettle.statistics;

/**
 * Variance components of runs that are crossed with blocks (also days or operators):
 *
 * <pre>
 *   y_ik = μ_i + a_k + ε_ik,   a_k ~ N(0, σ_a²),   ε_ik ~ N(0, φ_ik),   φ_ik = σ_ab² + σ_e²/n_ik
 * </pre>
 *
 * y_ik the mean of the n_ik readings of block i in run k, μ_i free, cells may be missing. σ_e²
 * comes from the scatter within cells; σ_ab² by moments from the block-by-run residual (not below
 * 0); σ_a² by restricted maximum likelihood given φ. The layout is reduced to the runs by taking
 * out the block means, A = Σ_i (W_i − w_i w_iᵀ/w_i.) with w = 1/φ, and with the eigenvalues λ of A
 *
 * <pre>  −2 ln L(σ_a²) = const + Σ ln(1 + σ_a² λ_j) − Σ (q_jᵀ r)² σ_a² / (1 + σ_a² λ_j)</pre>
 *
 * <p><b>Shapes:</b> one entry of each array a cell, in any order; indices from 0 without a gap.
 * <b>Cost:</b> O(Σ_i K_i² + K³) once, O(K) for each value of σ_a. <b>Fails</b> when no block was
 * read in two runs. Two parts of the layout without a common block or run are allowed.
 *
 * @see "S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992), 5.5 and 6.6"
 * @see "D. A. Harville, Maximum likelihood approaches to variance component estimation, J. Am.
 *     Stat. Assoc. 72 (1977) 320"
 */
public final class CrossedRunEffect {
  private final CrossedCells cells;
  private final double withinVariance;
  private final int withinFreedom;
  private final AdditiveLayout layout;
  private final double interactionVariance;
  private final RunSpectrum spectrum;
  private final double logConstant;
  private final RunLikelihood likelihood;
  private final double runVariance;

  private CrossedRunEffect(CrossedCells cells, double withinVariance, int withinFreedom) {
    this.cells = cells;
    this.withinVariance = withinVariance;
    this.withinFreedom = withinFreedom;
    this.layout = AdditiveLayout.of(cells);
    this.interactionVariance =
        layout.residualFreedom() == 0
            ? 0
            : Math.max(
                0,
                (layout.residualSquares() - layout.residualFreedom() * withinVariance)
                    / layout.trace());
    double[] weight = new double[cells.size()];
    double logs = 0;
    for (int c = 0; c < weight.length; c++) {
      double phi = interactionVariance + withinVariance / cells.count[c];
      if (phi == 0) {
        throw new IllegalArgumentException(
            "withinVariance is 0 and blocks and runs leave no scatter: there is no variance to"
                + " weigh the cells with");
      }
      weight[c] = 1 / phi;
      logs += StrictMath.log(phi);
    }
    CrossedCells.Reduced reduced = cells.reduced(weight);
    this.spectrum = new RunSpectrum(reduced);
    this.logConstant =
        -0.5
            * ((cells.size() - cells.blocks) * StrictMath.log(2 * Math.PI)
                + logs
                + reduced.logBlockWeights()
                + reduced.squares());
    this.likelihood = new RunLikelihood(spectrum);
    this.runVariance = likelihood.maximum();
  }

  /**
   * Estimates the components.
   *
   * @param block block index of each cell, from 0
   * @param run run index of each cell, from 0; at least 2 runs
   * @param mean mean reading of each cell
   * @param count readings in each cell, at least 1
   * @param withinVariance σ_e² of one reading, from the scatter within cells; 0 when there is none
   * @param withinDegreesOfFreedom of σ_e²; 0 when no cell has two readings: then σ_ab² holds both
   * @return the estimates
   * @throws IllegalArgumentException if shapes do not agree, a value is out of range, or runs
   *     cannot be told from blocks
   */
  public static CrossedRunEffect of(
      int[] block,
      int[] run,
      double[] mean,
      int[] count,
      double withinVariance,
      int withinDegreesOfFreedom) {
    Arguments.notNegative("withinVariance", withinVariance);
    Arguments.countAtLeast("withinDegreesOfFreedom", withinDegreesOfFreedom, 0);
    if (withinDegreesOfFreedom == 0 && withinVariance > 0) {
      throw new IllegalArgumentException(
          "withinVariance is " + withinVariance + " on 0 degrees of freedom: it must rest on some");
    }
    return new CrossedRunEffect(
        new CrossedCells(block, run, mean, count), withinVariance, withinDegreesOfFreedom);
  }

  /**
   * Restricted log-likelihood of a run standard deviation, the other components as estimated, with
   * all constants.
   *
   * @param runStandardDeviation σ_a, finite and not negative
   * @return ln L
   */
  public double logLikelihood(double runStandardDeviation) {
    Arguments.notNegative("runStandardDeviation", runStandardDeviation);
    return logConstant + likelihood.gain(runStandardDeviation * runStandardDeviation);
  }

  /**
   * Restricted log-likelihood of several run standard deviations.
   *
   * @param runStandardDeviations σ_a, finite and not negative
   * @return ln L of each
   */
  public double[] logLikelihood(double[] runStandardDeviations) {
    double[] logs = new double[runStandardDeviations.length];
    for (int i = 0; i < logs.length; i++) {
      logs[i] = logLikelihood(runStandardDeviations[i]);
    }
    return logs;
  }

  /**
   * Variance of one reading within cells, as given.
   *
   * @return σ_e²
   */
  public double withinVariance() {
    return withinVariance;
  }

  /**
   * Degrees of freedom of the within-cell variance, as given.
   *
   * @return number of readings less cells
   */
  public int withinDegreesOfFreedom() {
    return withinFreedom;
  }

  /**
   * Block-by-run variance.
   *
   * @return σ_ab², 0 when nothing exceeds the scatter within cells or nothing can be estimated
   */
  public double interactionVariance() {
    return interactionVariance;
  }

  /**
   * Degrees of freedom of the block-by-run residual; with 0 σ_ab² is not estimable.
   *
   * @return cells − blocks − runs + connected parts
   */
  public int interactionDegreesOfFreedom() {
    return layout.residualFreedom();
  }

  /**
   * Variance of the runs by restricted maximum likelihood.
   *
   * @return σ_a², not below 0
   */
  public double runVariance() {
    return runVariance;
  }

  /**
   * Standard deviation of the runs by restricted maximum likelihood.
   *
   * @return σ_a
   */
  public double runStandardDeviation() {
    return Math.sqrt(runVariance);
  }

  /**
   * Best linear unbiased predictions of the run effects at the estimated σ_a.
   *
   * @return a_k, one for each run, all 0 when σ_a is 0
   */
  public double[] runEffects() {
    return runEffects(runStandardDeviation());
  }

  /**
   * Best linear unbiased predictions of the run effects at a given σ_a.
   *
   * @param runStandardDeviation σ_a, finite and not negative
   * @return a_k, one for each run
   */
  public double[] runEffects(double runStandardDeviation) {
    Arguments.notNegative("runStandardDeviation", runStandardDeviation);
    double variance = runStandardDeviation * runStandardDeviation;
    double[] gain = new double[spectrum.rank];
    for (int j = 0; j < gain.length; j++) {
      gain[j] = variance / (1 + variance * spectrum.value[j]);
    }
    return spectrum.combination(gain);
  }

  /**
   * F test of the runs: adjusted for blocks, against the block-by-run residual, or against the
   * scatter within cells where there is no such residual. Exact for equal counts.
   *
   * @return the ratio
   * @throws IllegalStateException if neither residual nor scatter has a degree of freedom
   */
  public FTest runTest() {
    double runs = layout.runSquares() / layout.runFreedom();
    if (layout.residualFreedom() > 0) {
      return FTest.ofMeanSquares(
          runs,
          layout.runFreedom(),
          layout.residualSquares() / layout.residualFreedom(),
          layout.residualFreedom());
    }
    if (withinFreedom == 0) {
      throw new IllegalStateException(
          "neither cells nor the layout leave a degree of freedom to test the runs with");
    }
    return FTest.ofMeanSquares(runs, layout.runFreedom(), withinVariance, withinFreedom);
  }

  /**
   * F test of the block-by-run residual against the scatter within cells.
   *
   * @return the ratio
   * @throws IllegalStateException if one of them has no degree of freedom
   */
  public FTest interactionTest() {
    if (layout.residualFreedom() == 0 || withinFreedom == 0) {
      throw new IllegalStateException(
          "block-by-run scatter has "
              + layout.residualFreedom()
              + " and scatter within cells "
              + withinFreedom
              + " degrees of freedom: both must have some");
    }
    return FTest.ofMeanSquares(
        layout.residualSquares() / layout.residualFreedom(),
        layout.residualFreedom(),
        withinVariance,
        withinFreedom);
  }

  /**
   * Number of blocks.
   *
   * @return largest block index + 1
   */
  public int blocks() {
    return cells.blocks;
  }

  /**
   * Number of runs.
   *
   * @return largest run index + 1
   */
  public int runs() {
    return cells.runs;
  }
}
