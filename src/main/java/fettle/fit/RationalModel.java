package fettle.fit;

import fettle.fit.FitFailedException.Reason;
import java.util.ArrayList;
import java.util.List;

/**
 * Ratio of two polynomials of one degree, for responses that saturate:
 *
 * <pre>  h = (n_0 + n_1 t + … + n_d t^d) / (1 + m_1 t + … + m_d t^d),   t = scaled r</pre>
 *
 * <p>Reported in raw units as (b_0 + b_1 r + …) / (1 + c_1 r + …). The certified calibration of
 * scanning-electron-microscope line-width standards (NIST StRD, Kirby2) has degree 2.
 *
 * @param degree of numerator and denominator, 1 or 2
 * @param argument how t is made from r
 */
public record RationalModel(int degree, ArgumentScaling argument) implements ResponseModel {
  /** Checks values. */
  public RationalModel {
    if (degree < 1 || degree > 2) {
      throw new IllegalArgumentException("degree " + degree + ": 1 or 2 expected");
    }
    if (argument.logarithmic()) {
      throw new IllegalArgumentException("argument: a rational model takes the response itself");
    }
  }

  @Override
  public String id() {
    return "rational-" + degree + "-" + degree;
  }

  @Override
  public int parameterCount() {
    return 2 * degree + 1;
  }

  @Override
  public void linearise(double r, double[] beta, double[] out) {
    double t = argument.at(r);
    double numerator = beta[degree];
    double numeratorSlope = 0;
    double denominator = beta[2 * degree];
    double denominatorSlope = 0;
    for (int k = degree - 1; k >= 0; k--) {
      numeratorSlope = numeratorSlope * t + numerator;
      numerator = numerator * t + beta[k];
      denominatorSlope = denominatorSlope * t + denominator;
      denominator = denominator * t + (k == 0 ? 1 : beta[degree + k]);
    }
    double value = numerator / denominator;
    out[0] = value;
    out[1] = (numeratorSlope - value * denominatorSlope) / denominator * argument.slope(r);
    double power = 1;
    for (int k = 0; k <= degree; k++) {
      out[2 + k] = power / denominator;
      if (k > 0) {
        out[2 + degree + k] = -value * power / denominator;
      }
      power *= t;
    }
  }

  @Override
  public double value(double r, double[] beta) {
    double[] out = new double[parameterCount() + 2];
    linearise(r, beta, out);
    return out[0];
  }

  @Override
  public double[] start(double[] responses, double[] hardnesses) throws FitFailedException {
    // h (1 + m t + …) = n_0 + n_1 t + … is linear in the parameters; twice reweighted by the
    // denominator it comes close to the least-squares solution (Sanathanan and Koerner, 1963).
    int p = parameterCount();
    double[] beta = new double[p];
    double[] weights = new double[responses.length];
    java.util.Arrays.fill(weights, 1);
    for (int pass = 0; pass < 3; pass++) {
      beta = linearised(responses, hardnesses, weights);
      for (int i = 0; i < weights.length; i++) {
        double t = argument.at(responses[i]);
        double denominator = 1 + beta[degree + 1] * t;
        if (degree == 2) {
          denominator += beta[4] * t * t;
        }
        weights[i] = 1 / Math.max(denominator * denominator, 1e-6);
      }
    }
    return beta;
  }

  private double[] linearised(double[] responses, double[] hardnesses, double[] weights)
      throws FitFailedException {
    int p = parameterCount();
    double[] normal = new double[p * p];
    double[] beta = new double[p];
    double[] row = new double[p];
    for (int i = 0; i < responses.length; i++) {
      double t = argument.at(responses[i]);
      double power = 1;
      for (int k = 0; k <= degree; k++) {
        row[k] = power;
        if (k > 0) {
          row[degree + k] = -hardnesses[i] * power;
        }
        power *= t;
      }
      for (int j = 0; j < p; j++) {
        beta[j] += weights[i] * row[j] * hardnesses[i];
        for (int k = 0; k <= j; k++) {
          normal[j * p + k] += weights[i] * row[j] * row[k];
        }
      }
    }
    if (Cholesky.decompose(normal, p) == 0) {
      throw new FitFailedException(
          Reason.ILL_CONDITIONED,
          "the points do not determine the " + p + " parameters of " + id());
    }
    Cholesky.solve(normal, p, beta);
    return beta;
  }

  @Override
  public ReportedCoefficients reported(double[] beta, double[] covariance) {
    int p = parameterCount();
    double[][] map = new double[degree + 1][degree + 1];
    var precise = argument.toPowersOfArgument(degree);
    for (int j = 0; j <= degree; j++) {
      for (int k = 0; k <= degree; k++) {
        map[j][k] = precise[j][k].doubleValue();
      }
    }
    double[] numerator = new double[degree + 1];
    double[] denominator = new double[degree + 1];
    for (int j = 0; j <= degree; j++) {
      denominator[j] = map[j][0];
      for (int k = 0; k <= degree; k++) {
        numerator[j] += map[j][k] * beta[k];
        if (k > 0) {
          denominator[j] += map[j][k] * beta[degree + k];
        }
      }
    }
    double constant = denominator[0];
    double[] values = new double[p];
    double[] jacobian = new double[p * p];
    List<String> names = new ArrayList<>();
    for (int j = 0; j <= degree; j++) {
      values[j] = numerator[j] / constant;
      names.add("b" + j);
      for (int k = 0; k <= degree; k++) {
        jacobian[j * p + k] = map[j][k] / constant;
        if (k > 0) {
          jacobian[j * p + degree + k] = -values[j] * map[0][k] / constant;
        }
      }
    }
    for (int j = 1; j <= degree; j++) {
      values[degree + j] = denominator[j] / constant;
      names.add("c" + j);
      for (int k = 1; k <= degree; k++) {
        jacobian[(degree + j) * p + degree + k] =
            (map[j][k] - values[degree + j] * map[0][k]) / constant;
      }
    }
    return new ReportedCoefficients(names, values, Propagation.sandwich(jacobian, covariance, p));
  }

  @Override
  public Monotonicity monotonicity(double[] beta, double low, double high) {
    double[] numerator = new double[degree + 1];
    double[] denominator = new double[degree + 1];
    denominator[0] = 1;
    System.arraycopy(beta, 0, numerator, 0, degree + 1);
    System.arraycopy(beta, degree + 1, denominator, 1, degree);
    double from = argument.at(low);
    double to = argument.at(high);
    if (!BernsteinSign.signOf(denominator, from, to).isProven()) {
      return Monotonicity.NOT_MONOTONE;
    }
    // Sign of g′ is that of N′M − N M′.
    double[] wronskian = new double[2 * degree];
    for (int i = 0; i <= degree; i++) {
      for (int j = 0; j <= degree; j++) {
        if (i + j >= 1 && i != j) {
          wronskian[i + j - 1] += (i - j) * numerator[i] * denominator[j];
        }
      }
    }
    return BernsteinSign.signOf(wronskian, from, to);
  }
}
