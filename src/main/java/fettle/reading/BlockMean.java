package fettle.reading;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Mean and spread of the kept readings of one block, in the dossier's response unit.
 *
 * @param block block read
 * @param n number of readings, at least 1
 * @param mean arithmetic mean
 * @param standardDeviation of a single reading, with n − 1 in the denominator; empty for one
 *     reading
 * @param minimum least reading
 * @param maximum greatest reading
 */
public record BlockMean(
    String block,
    int n,
    double mean,
    OptionalDouble standardDeviation,
    double minimum,
    double maximum) {
  /** Checks values. */
  public BlockMean {
    Objects.requireNonNull(block);
    if (n < 1) {
      throw new IllegalArgumentException("n " + n + ": at least 1 expected");
    }
    if (standardDeviation.isPresent() != n > 1) {
      throw new IllegalArgumentException(
          "standardDeviation "
              + standardDeviation
              + ": expected exactly when n "
              + n
              + " is above 1");
    }
  }

  /**
   * Mean and spread by two passes, the second on differences from the first mean, with the mean
   * corrected by what remains (T. F. Chan, G. H. Golub, R. J. LeVeque, Algorithms for computing the
   * sample variance, Am. Stat. 37 (1983) 242).
   *
   * @param block block read
   * @param responses finite, at least one
   * @return mean and spread
   */
  public static BlockMean of(String block, double... responses) {
    int n = responses.length;
    if (n == 0) {
      throw new IllegalArgumentException("responses of " + block + ": at least one expected");
    }
    double sum = 0;
    double minimum = Double.POSITIVE_INFINITY;
    double maximum = Double.NEGATIVE_INFINITY;
    for (double response : responses) {
      if (!Double.isFinite(response)) {
        throw new IllegalArgumentException("response " + response + ": finite expected");
      }
      sum += response;
      minimum = Math.min(minimum, response);
      maximum = Math.max(maximum, response);
    }
    double first = sum / n;
    double squares = 0;
    double rest = 0;
    for (double response : responses) {
      double difference = response - first;
      rest += difference;
      squares += difference * difference;
    }
    double variance = n == 1 ? 0 : Math.max(0, squares - rest * rest / n) / (n - 1);
    return new BlockMean(
        block,
        n,
        first + rest / n,
        n == 1 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(variance)),
        minimum,
        maximum);
  }
}
