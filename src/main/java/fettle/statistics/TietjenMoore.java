package fettle.statistics;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Tietjen and Moore's statistics for exactly k outliers.
 *
 * <p>L_k: sum of squares about the mean without the k largest (or smallest) values, over that of
 * all. E_k: the same without the k values farthest from the mean. Small ratios are significant. The
 * p value is a Monte Carlo estimate with a seed that the caller gives: the same seed gives the same
 * p; its standard deviation is √(p(1−p)/trials). For two values at one end {@link GrubbsPair} is
 * exact.
 *
 * @see "G. L. Tietjen, R. H. Moore, Some Grubbs-type statistics for the detection of several
 *     outliers, Technometrics 14 (1972) 583"
 */
public final class TietjenMoore {
  private TietjenMoore() {}

  /**
   * The statistic.
   *
   * @param values finite values that differ, at least k + 2
   * @param k number of suspected values, at least 1
   * @param tail {@link Tail#EITHER} for E_k, the others for L_k of the largest or smallest
   * @return the ratio, 0 to 1
   */
  public static double ratio(double[] values, int k, Tail tail) {
    Arguments.countAtLeast("k", k, 1);
    Arguments.atLeast("values", values.length, k + 2, "the Tietjen–Moore test for " + k);
    Arguments.finite("values", values);
    if (Moments.allEqual(values)) {
      throw Arguments.noSpread("values", values.length, values[0], "the Tietjen–Moore test");
    }
    return ratioOf(values.clone(), k, tail, new double[values.length]);
  }

  /** Sorts values; work has the length of values. */
  private static double ratioOf(double[] values, int k, Tail tail, double[] work) {
    int n = values.length;
    double mean = Moments.mean(values);
    double all = Moments.squaredDeviations(values, mean);
    Arrays.sort(values);
    int low = 0;
    int high = n;
    for (int removed = 0; removed < k; removed++) {
      boolean fromTop =
          tail == Tail.UPPER
              || (tail == Tail.EITHER && values[high - 1] - mean >= mean - values[low]);
      if (fromTop) {
        high--;
      } else {
        low++;
      }
    }
    System.arraycopy(values, low, work, 0, n - k);
    double sum = 0;
    for (int i = 0; i < n - k; i++) {
      sum += work[i];
    }
    double keptMean = sum / (n - k);
    double kept = 0;
    for (int i = 0; i < n - k; i++) {
      kept += (work[i] - keptMean) * (work[i] - keptMean);
    }
    return kept / all;
  }

  /**
   * Share of normal samples with a ratio as small or smaller.
   *
   * @param ratio the statistic
   * @param n number of values, at least k + 2
   * @param k number of suspected values
   * @param tail as for the statistic
   * @param trials number of samples drawn, at least 100
   * @param seed seed of the generator
   * @return (1 + samples as extreme)/(1 + trials)
   */
  public static double pValue(double ratio, int n, int k, Tail tail, int trials, long seed) {
    Arguments.countAtLeast("trials", trials, 100);
    Arguments.countAtLeast("k", k, 1);
    Arguments.countAtLeast("n", n, k + 2);
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(random);
    double[] sample = new double[n];
    double[] work = new double[n];
    int asExtreme = 0;
    for (int trial = 0; trial < trials; trial++) {
      for (int i = 0; i < n; i++) {
        sample[i] = normal.sample();
      }
      if (ratioOf(sample, k, tail, work) <= ratio) {
        asExtreme++;
      }
    }
    return (1.0 + asExtreme) / (1.0 + trials);
  }
}
