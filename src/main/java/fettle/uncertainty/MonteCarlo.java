package fettle.uncertainty;

import fettle.fit.FitFailedException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Propagation of distributions by Monte Carlo, JCGM 101:2008 clause 7.
 *
 * <p>Trials are made in blocks of 1024, each with a generator of its own seeded from the run's seed
 * and the block's number (XoShiRo256++, seeded through SplitMix64), so that results do not depend
 * on the number of threads. Intervals come from order statistics by selection, not by sorting.
 *
 * <p><b>Storage:</b> 8 bytes a trial and output.
 */
public final class MonteCarlo {
  private static final int BLOCK = 1024;
  private static final double PROBABILITY = 0.95;

  /** Blocks of one step of the adaptive procedure: JCGM 101 asks for 10⁴ trials or more. */
  private static final int BLOCKS_A_BATCH = 10;

  private static final int FEWEST_BATCHES = 10;

  private MonteCarlo() {}

  /** One trial: draws the inputs and computes the outputs. Holds its own working storage. */
  public interface Trial {
    /**
     * Runs the trial.
     *
     * @param random source of chance
     * @param outputs filled with the output quantities
     * @throws FitFailedException if this draw gives no value; it is counted and left out
     */
    void run(UniformRandomProvider random, double[] outputs) throws FitFailedException;
  }

  /**
   * A fixed number of trials.
   *
   * @param trials makes one trial object a thread
   * @param outputs number of output quantities
   * @param count number of trials, at least 1000
   * @param seed seed
   * @param threads number of threads, at least 1
   * @return estimates and intervals
   */
  public static MonteCarloResult fixed(
      Supplier<Trial> trials, int outputs, int count, long seed, int threads) {
    if (count < 1000) {
      throw new IllegalArgumentException("count " + count + ": at least 1000 expected");
    }
    double[][] values = new double[outputs][count];
    run(trials, values, 0, count, seed, threads);
    return result(values, count, seed, true);
  }

  /**
   * As many trials as it takes until estimate, standard uncertainty and interval ends stand to the
   * numerical tolerance of the standard uncertainty (JCGM 101:2008, 7.9.4): until the standard
   * deviation of their averages over all batches, times a coverage factor, is below it.
   *
   * <p>The factor is Student's for the number of batches instead of 2, and no fewer than ten
   * batches are made: from two or three batches their scatter is so poorly known that the procedure
   * as written stops by chance (G. Wübbeler, P. M. Harris, M. G. Cox, C. Elster, Metrologia 47
   * (2010) 317).
   *
   * @param trials makes one trial object a thread
   * @param outputs number of output quantities
   * @param digits significant digits of the standard uncertainty that are to stand, 1 or 2
   * @param largest most trials that may be made
   * @param seed seed
   * @param threads number of threads, at least 1
   * @return estimates and intervals; not settled where the largest number was reached first
   */
  public static MonteCarloResult adaptive(
      Supplier<Trial> trials, int outputs, int digits, int largest, long seed, int threads) {
    int batch = BLOCK * BLOCKS_A_BATCH;
    double[][] values = new double[outputs][4 * batch];
    List<List<MonteCarloOutput>> batches = new ArrayList<>();
    int made = 0;
    while (made + batch <= largest) {
      if (made + batch > values[0].length) {
        for (int k = 0; k < outputs; k++) {
          values[k] = Arrays.copyOf(values[k], Math.min(largest, 2 * values[k].length));
        }
      }
      run(trials, values, made, batch, seed, threads);
      List<MonteCarloOutput> one = new ArrayList<>();
      for (double[] output : values) {
        one.add(summary(Arrays.copyOfRange(output, made, made + batch)));
      }
      batches.add(one);
      made += batch;
      if (batches.size() >= FEWEST_BATCHES && settled(batches, digits)) {
        return result(values, made, seed, true);
      }
    }
    return result(values, made, seed, false);
  }

  private static boolean settled(List<List<MonteCarloOutput>> batches, int digits) {
    int h = batches.size();
    int outputs = batches.get(0).size();
    double factor = TDistribution.of(h - 1).inverseCumulativeProbability(0.975);
    for (int k = 0; k < outputs; k++) {
      double[] sums = new double[4];
      double[] squares = new double[4];
      for (List<MonteCarloOutput> batch : batches) {
        double[] four = four(batch.get(k));
        for (int j = 0; j < 4; j++) {
          sums[j] += four[j];
        }
      }
      for (List<MonteCarloOutput> batch : batches) {
        double[] four = four(batch.get(k));
        for (int j = 0; j < 4; j++) {
          double off = four[j] - sums[j] / h;
          squares[j] += off * off;
        }
      }
      double tolerance = numericalTolerance(sums[1] / h, digits);
      for (double square : squares) {
        if (factor * Math.sqrt(square / (h - 1) / h) > tolerance) {
          return false;
        }
      }
    }
    return true;
  }

  private static double[] four(MonteCarloOutput output) {
    return new double[] {output.mean(), output.standardUncertainty(), output.low(), output.high()};
  }

  /**
   * Numerical tolerance of a standard uncertainty: half a unit of its last significant digit (JCGM
   * 101:2008, 7.9.2).
   *
   * @param standardUncertainty above 0
   * @param digits number of significant digits
   * @return δ, in the unit of the uncertainty
   */
  public static double numericalTolerance(double standardUncertainty, int digits) {
    double exponent = Math.floor(StrictMath.log10(standardUncertainty)) - digits + 1;
    return 0.5 * StrictMath.pow(10, exponent);
  }

  private static void run(
      Supplier<Trial> trials, double[][] values, int from, int count, long seed, int threads) {
    int blocks = (count + BLOCK - 1) / BLOCK;
    int first = from / BLOCK;
    if (threads == 1 || blocks == 1) {
      Trial trial = trials.get();
      for (int b = 0; b < blocks; b++) {
        block(trial, values, from + b * BLOCK, Math.min(count - b * BLOCK, BLOCK), first + b, seed);
      }
      return;
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<?>> parts = new ArrayList<>();
      for (int t = 0; t < threads; t++) {
        int start = t;
        Trial trial = trials.get();
        parts.add(
            pool.submit(
                () -> {
                  for (int b = start; b < blocks; b += threads) {
                    block(
                        trial,
                        values,
                        from + b * BLOCK,
                        Math.min(count - b * BLOCK, BLOCK),
                        first + b,
                        seed);
                  }
                }));
      }
      for (Future<?> part : parts) {
        part.get();
      }
    } catch (InterruptedException interruption) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Monte Carlo was interrupted", interruption);
    } catch (ExecutionException failure) {
      throw new IllegalStateException("a Monte Carlo trial failed", failure.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static void block(
      Trial trial, double[][] values, int from, int count, long number, long seed) {
    UniformRandomProvider random =
        RandomSource.XO_SHI_RO_256_PP.create(seed + 0x9E3779B97F4A7C15L * (number + 1));
    double[] outputs = new double[values.length];
    for (int i = from; i < from + count; i++) {
      boolean valid = true;
      try {
        trial.run(random, outputs);
      } catch (FitFailedException failure) {
        valid = false;
      }
      for (int k = 0; k < outputs.length; k++) {
        values[k][i] = valid ? outputs[k] : Double.NaN;
      }
    }
  }

  private static MonteCarloResult result(double[][] values, int count, long seed, boolean settled) {
    List<MonteCarloOutput> outputs = new ArrayList<>();
    long failed = 0;
    for (double[] value : values) {
      double[] kept = Arrays.copyOf(value, count);
      int n = 0;
      for (double x : kept) {
        if (!Double.isNaN(x)) {
          kept[n++] = x;
        }
      }
      failed = count - n;
      outputs.add(summary(n == count ? kept : Arrays.copyOf(kept, n)));
    }
    return new MonteCarloResult(count, failed, seed, settled, outputs);
  }

  /** Estimates and intervals; reorders the values. */
  private static MonteCarloOutput summary(double[] values) {
    int n = values.length;
    double sum = 0;
    for (double x : values) {
      sum += x;
    }
    double mean = sum / n;
    double squares = 0;
    for (double x : values) {
      squares += (x - mean) * (x - mean);
    }
    // JCGM 101:2008, 7.7.2: q = pM values lie within, the ends are order statistics r and r + q.
    int q = (int) Math.round(PROBABILITY * n);
    int r = (n - q) / 2;
    int tail = n - q;
    Selection.partition(values, tail);
    Selection.partition(values, n - tail - 1);
    Arrays.sort(values, 0, Math.min(n, tail + 1));
    Arrays.sort(values, Math.max(0, n - tail - 1), n);
    int best = 0;
    for (int k = 1; k < tail; k++) {
      if (values[k + q] - values[k] < values[best + q] - values[best]) {
        best = k;
      }
    }
    return new MonteCarloOutput(
        mean,
        Math.sqrt(squares / (n - 1)),
        values[r],
        values[Math.min(n - 1, r + q)],
        values[best],
        values[Math.min(n - 1, best + q)]);
  }
}
