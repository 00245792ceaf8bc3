package fettle.uncertainty;

import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.Points;
import fettle.fit.ResponseModel;

/** The likelihood of τ with the curve fitted at every value of it. */
final class Profile {
  /** Tolerance in τ / (τ + unit) for a τ that is reported. */
  static final double FINE = 1e-5;

  /** Tolerance for a τ that only weights a fit or a likelihood, which is flat at its maximum. */
  static final double COARSE = 1e-4;

  private static final int SCAN = 6;

  private final ResponseModel model;
  private final Points points;
  private final double[] sizes;
  private final CurveFit atZero;
  private double[] latest;

  private Profile(ResponseModel model, Points points, double[] sizes, CurveFit atZero) {
    this.model = model;
    this.points = points;
    this.sizes = sizes;
    this.atZero = atZero;
    this.latest = atZero.beta();
  }

  static Profile of(ResponseModel model, Points points, ScatterScale scale)
      throws FitFailedException {
    int m = points.size();
    if (m < model.parameterCount() + 2) {
      throw new FitFailedException(
          FitFailedException.Reason.TOO_FEW_POINTS,
          m
              + " points leave no freedom to estimate the scatter between them beside the "
              + model.parameterCount()
              + " parameters of "
              + model.id());
    }
    if (!points.hasUncertainties()) {
      throw new FitFailedException(
          FitFailedException.Reason.BAD_UNCERTAINTY,
          "between-block scatter needs stated uncertainties to be told apart from");
    }
    CurveFit atZero = CurveSolver.fit(model, points);
    double[] sizes = sizes(atZero, scale);
    Profile first = new Profile(model, points, sizes, atZero);
    if (scale == ScatterScale.ABSOLUTE) {
      return first;
    }
    // S follows the curve fitted with the scatter in force; a second pass changes τ by far less
    // than its own uncertainty.
    CurveFit better = first.fitAt(first.maximise(true, COARSE));
    return new Profile(model, points, sizes(better, scale), atZero);
  }

  /** The same likelihood with one point left out and S as found with all points. */
  Profile without(int left, double[] start) throws FitFailedException {
    Points others = points.without(left);
    double[] rest = new double[sizes.length - 1];
    System.arraycopy(sizes, 0, rest, 0, left);
    System.arraycopy(sizes, left + 1, rest, left, rest.length - left);
    return new Profile(model, others, rest, CurveSolver.refit(model, others, start));
  }

  private static double[] sizes(CurveFit fit, ScatterScale scale) {
    double[] sizes = new double[fit.fitted().length];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(scale.at(fit.fitted()[i]));
    }
    return sizes;
  }

  CurveFit atZero() {
    return atZero;
  }

  double[] sizes() {
    return sizes.clone();
  }

  double[] variancesAt(double tau) {
    double[] variances = points.hardnessVariances();
    for (int i = 0; i < variances.length; i++) {
      double size = tau * sizes[i];
      variances[i] += size * size;
    }
    return variances;
  }

  CurveFit fitAt(double tau) throws FitFailedException {
    if (tau == 0) {
      return atZero;
    }
    CurveFit fit = CurveSolver.refit(model, points.withHardnessVariance(variancesAt(tau)), latest);
    latest = fit.beta();
    return fit;
  }

  double restrictedLogLikelihood(CurveFit fit) {
    return -0.5 * (fit.logDeterminants() + fit.chiSquared());
  }

  double likelihoodTerm(CurveFit fit) {
    return fit.logDeterminantV() + fit.chiSquared();
  }

  /** A τ of the order of the stated uncertainties: their root mean square in units of √S. */
  double unit() {
    double sum = 0;
    int counted = 0;
    for (int i = 0; i < sizes.length; i++) {
      if (sizes[i] > 0) {
        sum += atZero.effectiveVariances()[i] / (sizes[i] * sizes[i]);
        counted++;
      }
    }
    double stated = Math.sqrt(sum / counted);
    double excess = Math.sqrt(Math.max(1, atZero.chiSquared() / atZero.degreesOfFreedom()));
    return stated * excess;
  }

  double logPosteriorInX(double x, double unit) throws FitFailedException {
    return logPosteriorInX(x, unit, fitAt(unit * x / (1 - x)));
  }

  double logPosteriorInX(double x, double unit, CurveFit fit) {
    double information = 0;
    for (int i = 0; i < sizes.length; i++) {
      double share = sizes[i] * sizes[i] / fit.effectiveVariances()[i];
      information += share * share;
    }
    return restrictedLogLikelihood(fit)
        + 0.25 * StrictMath.log(information)
        - 2 * StrictMath.log(1 - x);
  }

  /** The τ that maximises the restricted or the plain likelihood. */
  double maximise(boolean restricted, double tolerance) throws FitFailedException {
    double unit = unit();
    int best = 0;
    double bestValue = value(atZero, restricted);
    double atZeroValue = bestValue;
    for (int k = 1; k < SCAN; k++) {
      double v = value(fitAt(tauAt((double) k / SCAN, unit)), restricted);
      if (v > bestValue) {
        bestValue = v;
        best = k;
      }
    }
    double low = Math.max(0, best - 1) / (double) SCAN;
    double high = Math.min(SCAN - 0.5, best + 1) / SCAN;
    double x =
        Maximum.within(low, high, tolerance, at -> value(fitAt(tauAt(at, unit)), restricted));
    // A maximum within the search's tolerance of 0 is one at 0: nothing larger has been found.
    double tau = x <= 2 * tolerance ? 0 : tauAt(x, unit);
    return value(fitAt(tau), restricted) > atZeroValue ? tau : 0;
  }

  private static double tauAt(double x, double unit) {
    return unit * x / (1 - x);
  }

  private double value(CurveFit fit, boolean restricted) {
    return restricted ? restrictedLogLikelihood(fit) : -0.5 * likelihoodTerm(fit);
  }

  /** Where L passes a level between two values of τ that lie on either side of it. */
  double crossing(double from, double to, double level) throws FitFailedException {
    double a = from;
    double b = to;
    double fa = restrictedLogLikelihood(fitAt(a)) - level;
    double fb = restrictedLogLikelihood(fitAt(b)) - level;
    // Regula falsi with halved ends (Illinois): an interval's end to 1e-4 of itself is enough.
    for (int k = 0; k < 60 && Math.abs(b - a) > 1e-4 * (a + b); k++) {
      double c = b - fb * (b - a) / (fb - fa);
      double fc = restrictedLogLikelihood(fitAt(c)) - level;
      if (fc == 0) {
        return c;
      }
      if (fc > 0 == fb < 0) {
        a = b;
        fa = fb;
      } else {
        fa *= 0.5;
      }
      b = c;
      fb = fc;
      if (Math.abs(fc) < 1e-6) {
        return c;
      }
    }
    return b;
  }

  double upperCrossing(double from, double level) throws FitFailedException {
    double inside = from;
    double outside = Math.max(2 * from, unit());
    for (int k = 0; k < 20; k++) {
      if (restrictedLogLikelihood(fitAt(outside)) < level) {
        return crossing(inside, outside, level);
      }
      inside = outside;
      outside *= 2;
    }
    return Double.POSITIVE_INFINITY;
  }
}
