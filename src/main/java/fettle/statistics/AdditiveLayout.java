package fettle.statistics;

/**
 * Blocks and runs both fixed, cells weighed by their counts: what is left is block-by-run scatter.
 *
 * <p>Henderson's third method: the residual sum of squares has expectation σ_e² · degrees of
 * freedom + σ_ab² · trace, the trace by leverages of the reduced layout.
 *
 * @param runSquares sum of squares of the runs after the blocks
 * @param runFreedom runs less connected parts
 * @param residualSquares sum of squares left
 * @param residualFreedom cells − blocks − runFreedom
 * @param trace what the block-by-run variance is multiplied with in the expectation
 * @see "S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992), 5.5"
 */
record AdditiveLayout(
    double runSquares, int runFreedom, double residualSquares, int residualFreedom, double trace) {
  static AdditiveLayout of(CrossedCells cells) {
    int size = cells.size();
    double[] weight = new double[size];
    for (int c = 0; c < size; c++) {
      weight[c] = cells.count[c];
    }
    RunSpectrum spectrum = new RunSpectrum(cells.reduced(weight));
    if (spectrum.rank == 0) {
      throw new IllegalArgumentException(
          "no block has cells in two runs: runs cannot be told from blocks");
    }
    double[] inverse = new double[spectrum.rank];
    double runSquares = 0;
    for (int j = 0; j < inverse.length; j++) {
      inverse[j] = 1 / spectrum.value[j];
      runSquares += spectrum.power[j] * inverse[j];
    }
    double[] effect = spectrum.combination(inverse);
    int freedom = size - cells.blocks - spectrum.rank;
    double residual = 0;
    double trace = 0;
    double[][] g = spectrum.pseudoInverse();
    for (int i = 0; i < cells.blocks; i++) {
      residual += residualOfBlock(cells, i, effect);
      trace += traceOfBlock(cells, i, g);
    }
    // without spare cells both are rounding only
    return freedom == 0
        ? new AdditiveLayout(runSquares, spectrum.rank, 0, 0, 0)
        : new AdditiveLayout(runSquares, spectrum.rank, residual, freedom, trace);
  }

  private static double residualOfBlock(CrossedCells cells, int i, double[] effect) {
    double total = 0;
    double centre = 0;
    for (int c = cells.start[i]; c < cells.start[i + 1]; c++) {
      total += cells.count[c];
      centre += cells.count[c] * (cells.mean[c] - effect[cells.run[c]]);
    }
    centre /= total;
    double squares = 0;
    for (int c = cells.start[i]; c < cells.start[i + 1]; c++) {
      double e = cells.mean[c] - effect[cells.run[c]] - centre;
      squares += cells.count[c] * e * e;
    }
    return squares;
  }

  /** Σ n (1 − leverage) over a block; leverage n (1/N + dᵀ G d), d = e_k − n_i/N. */
  private static double traceOfBlock(CrossedCells cells, int i, double[][] g) {
    int from = cells.start[i];
    int to = cells.start[i + 1];
    double total = 0;
    for (int c = from; c < to; c++) {
      total += cells.count[c];
    }
    double[] mixed = new double[to - from];
    double all = 0;
    for (int c = from; c < to; c++) {
      for (int d = from; d < to; d++) {
        mixed[c - from] += g[cells.run[c]][cells.run[d]] * cells.count[d] / total;
      }
      all += mixed[c - from] * cells.count[c] / total;
    }
    double trace = 0;
    for (int c = from; c < to; c++) {
      double n = cells.count[c];
      double form = g[cells.run[c]][cells.run[c]] - 2 * mixed[c - from] + all;
      trace += n * (1 - n / total - n * form);
    }
    return trace;
  }
}
