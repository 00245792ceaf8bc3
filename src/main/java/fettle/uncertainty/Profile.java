package fettle.uncertainty;

import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.Points;
import fettle.fit.ResponseModel;

/** The likelihood of τ with the curve fitted at every value of it. */
final class Profile {
  private static final double GOLDEN = 0.3819660112501051;

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
    CurveFit better = first.fitAt(first.maximise(true));
    return new Profile(model, points, sizes(better, scale), atZero);
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
    CurveFit fit = CurveSolver.fit(model, points.withHardnessVariance(variancesAt(tau)), latest);
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
    double tau = unit * x / (1 - x);
    double information = 0;
    for (int i = 0; i < sizes.length; i++) {
      double share = sizes[i] * sizes[i] / fit.effectiveVariances()[i];
      information += share * share;
    }
    return restrictedLogLikelihood(fit)
        + StrictMath.log(tau)
        + 0.5 * StrictMath.log(information)
        - 2 * StrictMath.log(1 - x);
  }

  /** The τ that maximises the restricted or the plain likelihood, to 1e-6 of the unit. */
  double maximise(boolean restricted) throws FitFailedException {
    double unit = unit();
    // Coarse scan, then golden section in x = τ / (τ + unit).
    int best = 0;
    double bestValue = value(atZero, restricted);
    int steps = 16;
    for (int k = 1; k < steps; k++) {
      double v = value(fitAt(tauAt((double) k / steps, unit)), restricted);
      if (v > bestValue) {
        bestValue = v;
        best = k;
      }
    }
    double low = Math.max(0, best - 1) / (double) steps;
    double high = Math.min(steps - 0.5, best + 1) / steps;
    double a = low + GOLDEN * (high - low);
    double b = high - GOLDEN * (high - low);
    double fa = value(fitAt(tauAt(a, unit)), restricted);
    double fb = value(fitAt(tauAt(b, unit)), restricted);
    while (high - low > 1e-6) {
      if (fa >= fb) {
        high = b;
        b = a;
        fb = fa;
        a = low + GOLDEN * (high - low);
        fa = value(fitAt(tauAt(a, unit)), restricted);
      } else {
        low = a;
        a = b;
        fa = fb;
        b = high - GOLDEN * (high - low);
        fb = value(fitAt(tauAt(b, unit)), restricted);
      }
    }
    double x = 0.5 * (low + high);
    double tau = tauAt(x, unit);
    return value(fitAt(tau), restricted) > value(atZero, restricted) ? tau : 0;
  }

  private static double tauAt(double x, double unit) {
    return unit * x / (1 - x);
  }

  private double value(CurveFit fit, boolean restricted) {
    return restricted ? restrictedLogLikelihood(fit) : -0.5 * likelihoodTerm(fit);
  }

  /** Where L rises through a level between two values of τ. */
  double crossing(double below, double above, double level) throws FitFailedException {
    double low = below;
    double high = above;
    for (int k = 0; k < 40; k++) {
      double middle = 0.5 * (low + high);
      if (restrictedLogLikelihood(fitAt(middle)) < level) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 0.5 * (low + high);
  }

  double upperCrossing(double from, double level) throws FitFailedException {
    double inside = from;
    double outside = Math.max(2 * from, unit());
    for (int k = 0; k < 20; k++) {
      if (restrictedLogLikelihood(fitAt(outside)) < level) {
        double low = inside;
        double high = outside;
        for (int j = 0; j < 40; j++) {
          double middle = 0.5 * (low + high);
          if (restrictedLogLikelihood(fitAt(middle)) < level) {
            high = middle;
          } else {
            low = middle;
          }
        }
        return 0.5 * (low + high);
      }
      inside = outside;
      outside *= 2;
    }
    return Double.POSITIVE_INFINITY;
  }
}
