package fettle.uncertainty;

import fettle.fit.FitFailedException;

/**
 * Maximum of a smooth function of one variable without derivatives: golden section with parabolic
 * steps.
 *
 * @see "R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 5"
 */
final class Maximum {
  private static final double GOLDEN = 0.3819660112501051;

  private Maximum() {}

  /** A function whose evaluation may find that there is no fit. */
  interface Function {
    double at(double x) throws FitFailedException;
  }

  static double within(double from, double to, double tolerance, Function function)
      throws FitFailedException {
    double low = from;
    double high = to;
    double x = low + GOLDEN * (high - low);
    double w = x;
    double v = x;
    double fx = function.at(x);
    double fw = fx;
    double fv = fx;
    double step = 0;
    double before = 0;
    for (int k = 0; k < 60; k++) {
      double middle = 0.5 * (low + high);
      if (Math.abs(x - middle) <= 2 * tolerance - 0.5 * (high - low)) {
        return x;
      }
      double p = 0;
      double q = 0;
      if (Math.abs(before) > tolerance) {
        double r = (x - w) * (fx - fv);
        double t = (x - v) * (fx - fw);
        p = (x - v) * t - (x - w) * r;
        q = 2 * (t - r);
        if (q > 0) {
          p = -p;
        } else {
          q = -q;
        }
      }
      double previous = before;
      before = step;
      boolean parabolic =
          q != 0
              && Math.abs(p) < Math.abs(0.5 * q * previous)
              && p > q * (low - x)
              && p < q * (high - x);
      if (parabolic) {
        step = p / q;
      } else {
        before = (x < middle ? high : low) - x;
        step = GOLDEN * before;
      }
      double u = x + (Math.abs(step) >= tolerance ? step : Math.copySign(tolerance, step));
      double fu = function.at(u);
      if (fu >= fx) {
        if (u < x) {
          high = x;
        } else {
          low = x;
        }
        v = w;
        fv = fw;
        w = x;
        fw = fx;
        x = u;
        fx = fu;
      } else {
        if (u < x) {
          low = u;
        } else {
          high = u;
        }
        if (fu >= fw || w == x) {
          v = w;
          fv = fw;
          w = u;
          fw = fu;
        } else if (fu >= fv || v == x || v == w) {
          v = u;
          fv = fu;
        }
      }
    }
    return x;
  }
}
