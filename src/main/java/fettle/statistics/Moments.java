package fettle.statistics;

/** Mean and sum of squared deviations of an array in two passes, without allocation. */
final class Moments {
  private Moments() {}

  static double sum(double[] values) {
    double sum = 0;
    double lost = 0;
    for (double value : values) {
      double next = sum + value;
      // Neumaier's correction: the larger of the two keeps its digits
      lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
      sum = next;
    }
    return sum + lost;
  }

  static double mean(double[] values) {
    return sum(values) / values.length;
  }

  /** Corrected two-pass sum of squared deviations from the mean. */
  static double squaredDeviations(double[] values, double mean) {
    double squares = 0;
    double first = 0;
    for (double value : values) {
      double deviation = value - mean;
      squares += deviation * deviation;
      first += deviation;
    }
    return squares - first * first / values.length;
  }

  static double variance(double[] values) {
    return squaredDeviations(values, mean(values)) / (values.length - 1);
  }

  static boolean allEqual(double[] values) {
    for (double value : values) {
      if (value != values[0]) {
        return false;
      }
    }
    return true;
  }
}
