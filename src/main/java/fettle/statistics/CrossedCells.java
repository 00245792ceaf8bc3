package fettle.statistics;

import org.ejml.data.DMatrixRMaj;

/** Cells of a blocks-by-runs layout, grouped by block; some may be missing. */
final class CrossedCells {
  final int blocks;
  final int runs;
  final double[] mean;
  final int[] run;
  final int[] count;

  /** Cells of block i are those from start[i] to start[i + 1] − 1. */
  final int[] start;

  CrossedCells(int[] block, int[] run, double[] mean, int[] count) {
    Arguments.sameLength("block", block.length, "mean", mean.length);
    Arguments.sameLength("run", run.length, "mean", mean.length);
    Arguments.sameLength("count", count.length, "mean", mean.length);
    Arguments.atLeast("mean", mean.length, 3, "a crossed layout");
    Arguments.finite("mean", mean);
    int cells = mean.length;
    blocks = indices("block", block);
    runs = indices("run", run);
    if (runs < 2) {
      throw new IllegalArgumentException("run names 1 run: a run effect needs at least 2");
    }
    start = new int[blocks + 1];
    for (int b : block) {
      start[b + 1]++;
    }
    for (int i = 0; i < blocks; i++) {
      start[i + 1] += start[i];
    }
    this.mean = new double[cells];
    this.run = new int[cells];
    this.count = new int[cells];
    int[] next = start.clone();
    boolean[] seen = new boolean[blocks * runs];
    for (int c = 0; c < cells; c++) {
      Arguments.countAtLeast("count[" + c + "]", count[c], 1);
      int key = block[c] * runs + run[c];
      if (seen[key]) {
        throw new IllegalArgumentException(
            "block "
                + block[c]
                + " and run "
                + run[c]
                + " have more than one cell: give their readings as one");
      }
      seen[key] = true;
      int place = next[block[c]]++;
      this.mean[place] = mean[c];
      this.run[place] = run[c];
      this.count[place] = count[c];
    }
  }

  private static int indices(String name, int[] index) {
    int most = 0;
    for (int i = 0; i < index.length; i++) {
      Arguments.countAtLeast(name + "[" + i + "]", index[i], 0);
      most = Math.max(most, index[i]);
    }
    boolean[] used = new boolean[Math.min(most, index.length) + 1];
    for (int i : index) {
      if (i < used.length) {
        used[i] = true;
      }
    }
    for (int i = 0; i < used.length; i++) {
      if (!used[i]) {
        throw new IllegalArgumentException(
            name + " names no cell for index " + i + ": indices must run from 0 without a gap");
      }
    }
    return used.length;
  }

  int size() {
    return mean.length;
  }

  /**
   * The layout with the block means taken out, for given weights of the cells.
   *
   * @param matrix A = Σ_i (diag(w_i) − w_i w_iᵀ/w_i.), runs by runs
   * @param vector r, with r_k = Σ_i w_ik (y_ik − weighted mean of block i)
   * @param squares Σ w (y − weighted block mean)²
   * @param logBlockWeights Σ_i ln w_i.
   */
  record Reduced(DMatrixRMaj matrix, double[] vector, double squares, double logBlockWeights) {}

  Reduced reduced(double[] weight) {
    DMatrixRMaj a = new DMatrixRMaj(runs, runs);
    double[] r = new double[runs];
    double squares = 0;
    double logs = 0;
    for (int i = 0; i < blocks; i++) {
      double total = 0;
      double centre = 0;
      for (int c = start[i]; c < start[i + 1]; c++) {
        total += weight[c];
        centre += weight[c] * mean[c];
      }
      centre /= total;
      logs += StrictMath.log(total);
      for (int c = start[i]; c < start[i + 1]; c++) {
        double off = mean[c] - centre;
        r[run[c]] += weight[c] * off;
        squares += weight[c] * off * off;
        a.add(run[c], run[c], weight[c]);
        for (int d = start[i]; d < start[i + 1]; d++) {
          a.add(run[c], run[d], -weight[c] * weight[d] / total);
        }
      }
    }
    return new Reduced(a, r, squares, logs);
  }
}
