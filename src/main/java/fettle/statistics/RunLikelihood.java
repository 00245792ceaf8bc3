package fettle.statistics;

/**
 * Gain of the restricted log-likelihood of a run variance over that of no run effect,
 *
 * <pre>  ½ Σ_j [ (q_jᵀ r)² σ_a² / (1 + σ_a² λ_j) − ln(1 + σ_a² λ_j) ]</pre>
 *
 * and its maximum. It may have several: all are looked at.
 */
final class RunLikelihood {
  private static final int SCAN = 240;
  private static final double SCAN_DEPTH = 1e-8;

  private final RunSpectrum spectrum;

  RunLikelihood(RunSpectrum spectrum) {
    this.spectrum = spectrum;
  }

  private double slope(double variance) {
    double slope = 0;
    for (int j = 0; j < spectrum.rank; j++) {
      double d = 1 + variance * spectrum.value[j];
      slope += (spectrum.power[j] / d - spectrum.value[j]) / d;
    }
    return slope;
  }

  double gain(double variance) {
    double sum = 0;
    for (int j = 0; j < spectrum.rank; j++) {
      double x = variance * spectrum.value[j];
      sum += spectrum.power[j] * variance / (1 + x) - StrictMath.log1p(x);
    }
    return 0.5 * sum;
  }

  /** The best of 0 and all points where the slope turns from rising to falling. */
  double maximum() {
    double limit = 0;
    for (int j = 0; j < spectrum.rank; j++) {
      double lambda = spectrum.value[j];
      limit = Math.max(limit, (spectrum.power[j] / lambda - 1) / lambda);
    }
    if (limit == 0) {
      return 0;
    }
    // beyond the limit every term falls
    double best = 0;
    double before = limit * SCAN_DEPTH;
    if (slope(before) < 0 && slope(0) > 0) {
      best = turn(0, before);
    }
    for (int s = 1; s <= SCAN; s++) {
      double here = limit * StrictMath.pow(SCAN_DEPTH, 1 - s / (double) SCAN);
      if (slope(before) > 0 && slope(here) <= 0) {
        double candidate = turn(before, here);
        if (gain(candidate) > gain(best)) {
          best = candidate;
        }
      }
      before = here;
    }
    return best;
  }

  private double turn(double rising, double falling) {
    double low = rising;
    double high = falling;
    for (int i = 0; i < 200 && high - low > Math.ulp(high); i++) {
      double middle = 0.5 * (low + high);
      if (slope(middle) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }
}
