package fettle.fit;

import fettle.fit.FitFailedException.Reason;
import java.util.Optional;
import org.apache.commons.numbers.core.DD;

/**
 * Polynomial through points with exact responses, in double-double arithmetic (106 bits).
 *
 * <p><b>Method:</b> generalized least squares of H on the powers of the centred and scaled response
 * by Householder reflections, shared errors as unknown effects of unit variance; then the exact
 * shift to powers of r. Inputs are the printed decimals, not their nearest doubles: on an
 * ill-conditioned set such as NIST StRD's Filip the difference alone costs eight digits.
 *
 * <p><b>Shapes:</b> m points, p = degree + 1 parameters, q effects. <b>Cost:</b> about 2 (m + q)(p
 * + q)² double-double operations of some 20 flops.
 *
 * @see "T. J. Dekker, A floating-point technique for extending the available precision, Numer.
 *     Math. 18 (1971) 224"
 */
final class PrecisePolynomialFit {
  /** Beyond this, 106 bits no longer leave 12 digits. */
  private static final double WORST_CONDITION = 1e17;

  private PrecisePolynomialFit() {}

  static CurveFit fit(SeriesModel model, Points points) throws FitFailedException {
    int m = points.size();
    int p = model.parameterCount();
    int q = points.hardnessEffectCount();
    int columns = q + p;
    int rows = m + q;
    boolean stated = points.hasUncertainties();
    DD[][] a = new DD[columns + 1][rows];
    DD[] roots = new DD[m];
    double logVariances = 0;
    DD centre = DD.of(model.argument().centre());
    DD scale = DD.of(model.argument().scale());
    for (int i = 0; i < m; i++) {
      double variance = stated ? points.hardnessVariance(i) : 1;
      logVariances += StrictMath.log(variance);
      roots[i] = DD.of(variance).sqrt();
      DD t = DD.from(points.exactResponse(i)).subtract(centre).divide(scale);
      for (int k = 0; k < q; k++) {
        a[k][i] = DD.of(points.hardnessEffect(k, i)).divide(roots[i]);
      }
      DD power = DD.ONE.divide(roots[i]);
      for (int k = 0; k < p; k++) {
        a[q + k][i] = power;
        power = power.multiply(t);
      }
      a[columns][i] = DD.from(points.exactHardness(i)).divide(roots[i]);
    }
    for (int i = 0; i < q; i++) {
      for (int k = 0; k <= columns; k++) {
        a[k][m + i] = k == i ? DD.ONE : DD.ZERO;
      }
    }
    DD[] diagonal = factor(a, columns, rows, model);
    DD[] solution = new DD[columns];
    for (int j = columns - 1; j >= 0; j--) {
      DD sum = a[columns][j];
      for (int k = j + 1; k < columns; k++) {
        sum = sum.subtract(a[k][j].multiply(solution[k]));
      }
      solution[j] = sum.divide(diagonal[j]);
    }
    DD[] beta = new DD[p];
    System.arraycopy(solution, q, beta, 0, p);

    DD chiSquared = DD.ZERO;
    double[] fitted = new double[m];
    double[] slopes = new double[m];
    for (int i = 0; i < m; i++) {
      DD t = DD.from(points.exactResponse(i)).subtract(centre).divide(scale);
      DD value = beta[p - 1];
      DD slope = DD.ZERO;
      for (int k = p - 2; k >= 0; k--) {
        slope = slope.multiply(t).add(value);
        value = value.multiply(t).add(beta[k]);
      }
      fitted[i] = value.doubleValue();
      slopes[i] = slope.divide(scale).doubleValue();
      DD error = DD.from(points.exactHardness(i)).subtract(value);
      for (int k = 0; k < q; k++) {
        error = error.subtract(solution[k].multiply(points.hardnessEffect(k, i)));
      }
      DD whitened = error.divide(roots[i]);
      chiSquared = chiSquared.add(whitened.multiply(whitened));
    }
    for (int k = 0; k < q; k++) {
      chiSquared = chiSquared.add(solution[k].multiply(solution[k]));
    }
    int degrees = m - p;
    DD[][] covariance = covariance(a, diagonal, q, p);
    if (!stated) {
      DD s2 = chiSquared.divide(DD.of(degrees));
      for (DD[] row : covariance) {
        for (int k = 0; k < p; k++) {
          row[k] = row[k].multiply(s2);
        }
      }
    }
    double leading = 0;
    double all = 0;
    for (int k = 0; k < columns; k++) {
      double log = 2 * StrictMath.log(Math.abs(diagonal[k].doubleValue()));
      all += log;
      leading += k < q ? log : 0;
    }
    double[] betaDouble = new double[p];
    double[] covarianceDouble = new double[p * p];
    for (int j = 0; j < p; j++) {
      betaDouble[j] = beta[j].doubleValue();
      for (int k = 0; k < p; k++) {
        covarianceDouble[j * p + k] = covariance[j][k].doubleValue();
      }
    }
    double[] variances = new double[m];
    for (int i = 0; i < m; i++) {
      variances[i] = stated ? points.hardnessVariance(i) : 1;
    }
    double q2 = Math.max(0, chiSquared.doubleValue());
    requireFinite(betaDouble, covarianceDouble, q2, model);
    return new CurveFit(
        model,
        betaDouble,
        covarianceDouble,
        Optional.of(model.reported(beta, covariance)),
        q2,
        degrees,
        points.responses(),
        fitted,
        slopes,
        variances,
        logVariances + all,
        logVariances + leading,
        condition(a, diagonal, q, p),
        1,
        stated);
  }

  private static void requireFinite(
      double[] beta, double[] covariance, double chiSquared, SeriesModel model)
      throws FitFailedException {
    double sum = chiSquared;
    for (double value : beta) {
      sum += value;
    }
    for (double value : covariance) {
      sum += value;
    }
    if (!Double.isFinite(sum)) {
      throw new FitFailedException(
          Reason.NOT_FINITE, "model " + model.id() + " left the range of numbers on these values");
    }
  }

  private static DD[] factor(DD[][] a, int columns, int rows, SeriesModel model)
      throws FitFailedException {
    DD[] diagonal = new DD[columns];
    for (int j = 0; j < columns; j++) {
      DD[] column = a[j];
      DD whole = DD.ZERO;
      DD below = DD.ZERO;
      for (int i = 0; i < rows; i++) {
        DD square = column[i].multiply(column[i]);
        whole = whole.add(square);
        below = i >= j ? below.add(square) : below;
      }
      // A column that keeps less than 1e-26 of its length is a combination of the ones before.
      if (!(below.doubleValue() > 1e-52 * whole.doubleValue())) {
        throw CurveSolver.illConditioned(model, Double.POSITIVE_INFINITY);
      }
      DD norm = below.sqrt();
      DD alpha = column[j].hi() > 0 ? norm.negate() : norm;
      diagonal[j] = alpha;
      column[j] = column[j].subtract(alpha);
      DD factor = DD.ONE.divide(alpha.multiply(column[j])).negate();
      for (int k = j + 1; k <= columns; k++) {
        DD[] other = a[k];
        DD dot = DD.ZERO;
        for (int i = j; i < rows; i++) {
          dot = dot.add(column[i].multiply(other[i]));
        }
        dot = dot.multiply(factor);
        for (int i = j; i < rows; i++) {
          other[i] = other[i].subtract(dot.multiply(column[i]));
        }
      }
    }
    return diagonal;
  }

  private static DD[][] inverse(DD[][] a, DD[] diagonal, int q, int p) {
    DD[][] inverse = new DD[p][p];
    for (int j = 0; j < p; j++) {
      for (int i = 0; i < p; i++) {
        inverse[i][j] = DD.ZERO;
      }
      inverse[j][j] = DD.ONE.divide(diagonal[q + j]);
      for (int i = j - 1; i >= 0; i--) {
        DD sum = DD.ZERO;
        for (int k = i + 1; k <= j; k++) {
          sum = sum.add(a[q + k][q + i].multiply(inverse[k][j]));
        }
        inverse[i][j] = sum.divide(diagonal[q + i]).negate();
      }
    }
    return inverse;
  }

  private static DD[][] covariance(DD[][] a, DD[] diagonal, int q, int p) {
    DD[][] inverse = inverse(a, diagonal, q, p);
    DD[][] covariance = new DD[p][p];
    for (int i = 0; i < p; i++) {
      for (int j = 0; j <= i; j++) {
        DD sum = DD.ZERO;
        for (int k = i; k < p; k++) {
          sum = sum.add(inverse[i][k].multiply(inverse[j][k]));
        }
        covariance[i][j] = sum;
        covariance[j][i] = sum;
      }
    }
    return covariance;
  }

  private static double condition(DD[][] a, DD[] diagonal, int q, int p) throws FitFailedException {
    DD[][] inverse = inverse(a, diagonal, q, p);
    double norm = 0;
    double inverseNorm = 0;
    for (int j = 0; j < p; j++) {
      double length = 0;
      for (int i = 0; i < q + j; i++) {
        length += square(a[q + j][i].doubleValue());
      }
      length = Math.sqrt(length + square(diagonal[q + j].doubleValue()));
      for (int i = 0; i <= j; i++) {
        double r = i == j ? diagonal[q + j].doubleValue() : a[q + j][q + i].doubleValue();
        norm += square(r / length);
      }
      for (int k = j; k < p; k++) {
        inverseNorm += square(inverse[j][k].doubleValue() * length);
      }
    }
    double condition = Math.sqrt(norm * inverseNorm) / p;
    if (!(condition < WORST_CONDITION)) {
      throw new FitFailedException(
          Reason.ILL_CONDITIONED,
          "the points do not determine the "
              + p
              + " parameters (condition number "
              + condition
              + ")");
    }
    return condition;
  }

  private static double square(double x) {
    return x * x;
  }
}
