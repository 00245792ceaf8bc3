package fettle.statistics;

import java.util.ArrayList;
import java.util.List;

/**
 * Rosner's generalized extreme studentized deviate: up to k outliers, proof against masking.
 *
 * <p>Step i takes the value farthest from the mean of those remaining, R_i = |x − mean|/s, removes
 * it for the next step, and compares with
 *
 * <pre>  λ_i = (n − i) t / √((n − i − 1 + t²)(n − i + 1)),   t at α/(2(n − i + 1)), n − i − 1 d.f.
 * </pre>
 *
 * The number of outliers is the largest i with R_i above λ_i, whatever earlier steps said. Good
 * approximation for n of 25 and more, fair from 15 (Rosner's simulation).
 *
 * <p>Cost: O(k n).
 *
 * @param steps one for each possible outlier, in order of removal
 * @param outliers how many are declared
 * @see "B. Rosner, Percentage points for a generalized ESD many-outlier procedure, Technometrics 25
 *     (1983) 165"
 */
public record GeneralizedEsd(List<Step> steps, int outliers) {
  /**
   * One removal.
   *
   * @param index where the removed value stands in the array given
   * @param statistic R_i
   * @param critical λ_i
   */
  public record Step(int index, double statistic, double critical) {}

  /**
   * Makes the steps unchangeable.
   *
   * @param steps one for each possible outlier
   * @param outliers how many are declared
   */
  public GeneralizedEsd {
    steps = List.copyOf(steps);
  }

  /**
   * Tests the values.
   *
   * @param values finite values that differ, at least maxOutliers + 2
   * @param maxOutliers most outliers to look for, at least 1
   * @param alpha level, strictly between 0 and 1
   * @return the steps and the number of outliers
   * @throws IllegalArgumentException if there are too few values, one is not finite or all are
   *     equal
   */
  public static GeneralizedEsd test(double[] values, int maxOutliers, double alpha) {
    Arguments.countAtLeast("maxOutliers", maxOutliers, 1);
    Arguments.atLeast(
        "values",
        values.length,
        maxOutliers + 2,
        "the generalized ESD test for " + maxOutliers + " outliers");
    Arguments.probability("alpha", alpha);
    Arguments.finite("values", values);
    if (Moments.allEqual(values)) {
      throw Arguments.noSpread("values", values.length, values[0], "the generalized ESD test");
    }
    double[] rest = values.clone();
    int[] place = new int[values.length];
    for (int i = 0; i < place.length; i++) {
      place[i] = i;
    }
    List<Step> steps = new ArrayList<>(maxOutliers);
    int outliers = 0;
    int n = values.length;
    for (int i = 1; i <= maxOutliers; i++) {
      int kept = n - i + 1;
      int far = farthest(rest, kept);
      double r = studentized(rest, kept, far);
      double critical = criticalValue(n, i, alpha);
      steps.add(new Step(place[far], r, critical));
      if (r > critical) {
        outliers = i;
      }
      rest[far] = rest[kept - 1];
      place[far] = place[kept - 1];
    }
    return new GeneralizedEsd(steps, outliers);
  }

  /**
   * Critical value of a step.
   *
   * @param n number of values at the start
   * @param step 1 for the first
   * @param alpha level, strictly between 0 and 1
   * @return λ of the step
   */
  public static double criticalValue(int n, int step, double alpha) {
    Arguments.countAtLeast("step", step, 1);
    Arguments.countAtLeast("n", n, step + 2);
    Arguments.probability("alpha", alpha);
    double kept = n - step + 1.0;
    double t = Quantiles.upperT(alpha / (2 * kept), kept - 2);
    return (kept - 1) * t / Math.sqrt((kept - 2 + t * t) * kept);
  }

  private static double mean(double[] rest, int kept) {
    double sum = 0;
    for (int i = 0; i < kept; i++) {
      sum += rest[i];
    }
    double mean = sum / kept;
    double left = 0;
    for (int i = 0; i < kept; i++) {
      left += rest[i] - mean;
    }
    return mean + left / kept;
  }

  private static int farthest(double[] rest, int kept) {
    double mean = mean(rest, kept);
    int far = 0;
    for (int i = 1; i < kept; i++) {
      if (Math.abs(rest[i] - mean) > Math.abs(rest[far] - mean)) {
        far = i;
      }
    }
    return far;
  }

  private static double studentized(double[] rest, int kept, int far) {
    double mean = mean(rest, kept);
    double squares = 0;
    for (int i = 0; i < kept; i++) {
      squares += (rest[i] - mean) * (rest[i] - mean);
    }
    double out = Math.abs(rest[far] - mean);
    // once only equal values remain nothing stands out any more
    return out == 0 ? 0 : out / Math.sqrt(squares / (kept - 1));
  }
}
