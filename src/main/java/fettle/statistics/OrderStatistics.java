package fettle.statistics;

import java.util.Arrays;

/** Median, sample quantiles and ranks. */
final class OrderStatistics {
  private OrderStatistics() {}

  /** Value at position p(n + 1) of sorted values, interpolated, held inside the values. */
  static double interpolated(double[] sorted, double p) {
    int n = sorted.length;
    double position = p * (n + 1);
    int below = (int) Math.floor(position);
    if (below < 1) {
      return sorted[0];
    }
    if (below >= n) {
      return sorted[n - 1];
    }
    double low = sorted[below - 1];
    return low + (position - below) * (sorted[below] - low);
  }

  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    double high = sorted[n / 2];
    return n % 2 == 1 ? high : 0.5 * (sorted[n / 2 - 1] + high);
  }

  /** Ranks from 1, ties share their mean rank. */
  static double[] ranks(double[] values) {
    Integer[] order = new Integer[values.length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
    double[] ranks = new double[values.length];
    int from = 0;
    while (from < order.length) {
      int to = from;
      while (to + 1 < order.length && values[order[to + 1]] == values[order[from]]) {
        to++;
      }
      for (int i = from; i <= to; i++) {
        ranks[order[i]] = 0.5 * (from + to) + 1;
      }
      from = to + 1;
    }
    return ranks;
  }
}
