package fettle.calibration;

import fettle.curve.RunEffects;
import fettle.policy.TypeB;
import fettle.refusal.InputRefusedException;
import fettle.uncertainty.RunEffectPosterior;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * Estimates the scatter of responses from the fitting blocks' readings.
 *
 * <p>Repeatability is pooled within the cells of blocks and runs, as a constant or as a fraction of
 * the response: whichever leaves the blocks' variances more alike by Bartlett's statistic (from
 * memory: M. S. Bartlett, Proc. R. Soc. A 160 (1937) 268). The block × run interaction comes from
 * the residuals of the two-way layout of cell means; the run effect from four runs on by restricted
 * likelihood, with fewer from the policy.
 */
final class ResponseVariances {
  private static final int FEWEST_RUNS = 4;

  private ResponseVariances() {}

  static ResponseVariance of(List<BlockResponse> blocks, TypeB typeB, double resolution) {
    double degrees = 0;
    double[] sums = new double[blocks.size()];
    double[] freedoms = new double[blocks.size()];
    TreeSet<String> names = new TreeSet<>();
    for (int i = 0; i < blocks.size(); i++) {
      BlockResponse block = blocks.get(i);
      names.addAll(block.readingsPerRun().keySet());
      sums[i] = block.withinRunSumOfSquares();
      freedoms[i] = block.count() - block.readingsPerRun().size();
      degrees += freedoms[i];
    }
    if (degrees == 0) {
      throw new InputRefusedException(
          "No block was read twice in one run, so repeatability cannot be estimated.",
          "readings of the fitting blocks",
          "at least two readings of a block in the same run; five or more are usual",
          "take further readings, or name the runs as they were");
    }
    double constant = bartlett(sums, freedoms, blocks, false);
    double proportional = bartlett(sums, freedoms, blocks, true);
    boolean relative = proportional <= constant;
    double pooled = 0;
    double typical = 0;
    for (int i = 0; i < blocks.size(); i++) {
      double size = relative ? Math.abs(blocks.get(i).mean()) : 1;
      pooled += sums[i] / (size * size);
      typical += size / blocks.size();
    }
    // Where every reading shows the same figure the resolution is all that is known of the scatter.
    double smallest = resolution / typical / Math.sqrt(12);
    double repeatability = Math.max(Math.sqrt(pooled / degrees), smallest);
    List<String> runs = List.copyOf(names);
    Cells cells = Cells.of(blocks, runs, relative);
    double blockRun = cells.interaction(repeatability);
    boolean estimable = runs.size() >= FEWEST_RUNS && cells.connected();
    double run = typeB.run().orElse(0);
    // A Type B value is a fraction of the response, whatever the model of repeatability.
    run = relative ? run : run * meanResponse(blocks);
    List<RunEffects.Node> nodes = List.of(new RunEffects.Node(1, run));
    if (estimable) {
      RunEffectPosterior posterior =
          RunEffectPosterior.of(cells.means, cells.variances(repeatability, blockRun));
      run = posterior.restricted();
      nodes = new ArrayList<>();
      for (RunEffectPosterior.Node node : posterior.nodes()) {
        nodes.add(new RunEffects.Node(node.weight(), node.sigma()));
      }
    }
    return new ResponseVariance(
        relative,
        repeatability,
        degrees,
        blockRun,
        runs,
        run,
        estimable,
        nodes,
        constant,
        proportional);
  }

  private static double meanResponse(List<BlockResponse> blocks) {
    double sum = 0;
    for (BlockResponse block : blocks) {
      sum += Math.abs(block.mean());
    }
    return sum / blocks.size();
  }

  /** Bartlett's statistic over its degrees of freedom; infinite where a block shows no scatter. */
  private static double bartlett(
      double[] sums, double[] freedoms, List<BlockResponse> blocks, boolean relative) {
    double pooled = 0;
    double total = 0;
    double logs = 0;
    int groups = 0;
    for (int i = 0; i < sums.length; i++) {
      if (freedoms[i] <= 0) {
        continue;
      }
      double size = relative ? blocks.get(i).mean() : 1;
      double variance = sums[i] / freedoms[i] / (size * size);
      if (variance == 0) {
        return Double.MAX_VALUE;
      }
      pooled += freedoms[i] * variance;
      total += freedoms[i];
      logs += freedoms[i] * StrictMath.log(variance);
      groups++;
    }
    return groups < 2 ? 0 : (total * StrictMath.log(pooled / total) - logs) / (groups - 1);
  }

  /** Cell means of the block × run layout, in units of the block mean where relative. */
  private record Cells(double[][] means, int[][] counts) {
    static Cells of(List<BlockResponse> blocks, List<String> runs, boolean relative) {
      double[][] means = new double[blocks.size()][runs.size()];
      int[][] counts = new int[blocks.size()][runs.size()];
      for (int i = 0; i < blocks.size(); i++) {
        BlockResponse block = blocks.get(i);
        double size = relative ? Math.abs(block.mean()) : 1;
        for (int k = 0; k < runs.size(); k++) {
          Double mean = block.meanPerRun().get(runs.get(k));
          means[i][k] = mean == null ? Double.NaN : mean / size;
          counts[i][k] = block.readingsPerRun().getOrDefault(runs.get(k), 0);
        }
      }
      return new Cells(means, counts);
    }

    /** Whether blocks connect the runs, so that runs can be compared within blocks. */
    boolean connected() {
      int runs = means[0].length;
      boolean[] reached = new boolean[runs];
      reached[0] = true;
      boolean grew = true;
      while (grew) {
        grew = false;
        for (int[] block : counts) {
          boolean touches = false;
          for (int k = 0; k < runs; k++) {
            touches |= block[k] > 0 && reached[k];
          }
          for (int k = 0; touches && k < runs; k++) {
            if (block[k] > 0 && !reached[k]) {
              reached[k] = true;
              grew = true;
            }
          }
        }
      }
      for (boolean run : reached) {
        if (!run) {
          return false;
        }
      }
      return true;
    }

    /**
     * σ_ab by moments from the two-way residuals of the cell means, fitted by alternating sweeps;
     * exact for balanced layouts, converged for others.
     */
    double interaction(double repeatability) {
      int blocks = means.length;
      int runs = means[0].length;
      double[] row = new double[blocks];
      double[] column = new double[runs];
      int cells = 0;
      double inverseCounts = 0;
      for (int sweep = 0; sweep < 200; sweep++) {
        for (int i = 0; i < blocks; i++) {
          row[i] = meanOf(i, column, true);
        }
        for (int k = 0; k < runs; k++) {
          column[k] = meanOf(k, row, false);
        }
      }
      double squares = 0;
      for (int i = 0; i < blocks; i++) {
        for (int k = 0; k < runs; k++) {
          if (counts[i][k] > 0) {
            double residual = means[i][k] - row[i] - column[k];
            squares += residual * residual;
            inverseCounts += 1.0 / counts[i][k];
            cells++;
          }
        }
      }
      int freedom = cells - blocks - runs + 1;
      if (freedom <= 0) {
        return 0;
      }
      double excess = squares / freedom - repeatability * repeatability * inverseCounts / cells;
      return Math.sqrt(Math.max(0, excess));
    }

    private double meanOf(int index, double[] other, boolean byBlock) {
      double sum = 0;
      int n = 0;
      for (int j = 0; j < other.length; j++) {
        int i = byBlock ? index : j;
        int k = byBlock ? j : index;
        if (counts[i][k] > 0) {
          sum += means[i][k] - other[j];
          n++;
        }
      }
      return n == 0 ? 0 : sum / n;
    }

    double[][] variances(double repeatability, double interaction) {
      double[][] variances = new double[means.length][means[0].length];
      for (int i = 0; i < variances.length; i++) {
        Arrays.fill(variances[i], 1);
        for (int k = 0; k < variances[i].length; k++) {
          if (counts[i][k] > 0) {
            variances[i][k] =
                interaction * interaction + repeatability * repeatability / counts[i][k];
          }
        }
      }
      return variances;
    }
  }
}
