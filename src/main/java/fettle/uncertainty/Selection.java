package fettle.uncertainty;

/**
 * Partial ordering of an array about one order statistic.
 *
 * @see "C. A. R. Hoare, Algorithm 65: Find, Comm. ACM 4 (1961) 321"
 */
final class Selection {
  private Selection() {}

  /** Puts the k-th smallest value at index k, smaller ones before it and larger ones after. */
  static void partition(double[] values, int k) {
    int low = 0;
    int high = values.length - 1;
    while (low < high) {
      double pivot = pivot(values, low, high, k);
      int i = low;
      int j = high;
      while (i <= j) {
        while (values[i] < pivot) {
          i++;
        }
        while (pivot < values[j]) {
          j--;
        }
        if (i <= j) {
          double swap = values[i];
          values[i++] = values[j];
          values[j--] = swap;
        }
      }
      if (k <= j) {
        high = j;
      } else if (k >= i) {
        low = i;
      } else {
        return;
      }
    }
  }

  /** The value at a place that stands to the interval as k does, from a median of three there. */
  private static double pivot(double[] values, int low, int high, int k) {
    double a = values[low + (high - low) / 4];
    double b = values[k];
    double c = values[high - (high - low) / 4];
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
