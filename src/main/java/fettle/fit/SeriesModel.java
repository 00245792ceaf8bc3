package fettle.fit;

import fettle.fit.FitFailedException.Reason;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.numbers.core.DD;

/**
 * Curves that are a polynomial in a scaled argument, with or without an exponential around it:
 *
 * <pre>
 *   polynomial-N       h = Σ c_k t^k                t = scaled r        b_0 + b_1 r + …
 *   power              h = exp(c_0 + c_1 t)         t = scaled ln r     a r^b
 *   log-polynomial-N   h = exp(Σ c_k t^k)           t = scaled ln r     ln h = Σ c_k (ln r)^k
 *   exponential        h = exp(c_0 + c_1 t)         t = scaled r        a exp(b r)
 * </pre>
 *
 * <p>Contact stiffness and rebound both lead to power laws (K. L. Johnson, Contact Mechanics,
 * 1985); the log-polynomial is a power law with curvature; ISO 6143 names polynomials, the power
 * and the exponential function for analysis functions.
 *
 * @param kind which of the four
 * @param degree highest power of t, 1 to 10
 * @param argument how t is made from r
 */
public record SeriesModel(Kind kind, int degree, ArgumentScaling argument)
    implements ResponseModel {
  /** Which curve. */
  public enum Kind {
    /** Polynomial in r. */
    POLYNOMIAL(false, false),
    /** Power law a r^b. */
    POWER(true, true),
    /** ln h is a polynomial in ln r. */
    LOG_POLYNOMIAL(true, true),
    /** a exp(b r). */
    EXPONENTIAL(true, false);

    private final boolean exponentiated;
    private final boolean logarithmicArgument;

    Kind(boolean exponentiated, boolean logarithmicArgument) {
      this.exponentiated = exponentiated;
      this.logarithmicArgument = logarithmicArgument;
    }

    /** Whether h is the exponential of the series, hence always positive. */
    boolean exponentiated() {
      return exponentiated;
    }

    /** Whether the argument is ln r. */
    boolean logarithmicArgument() {
      return logarithmicArgument;
    }
  }

  /** Checks that the parts agree. */
  public SeriesModel {
    if (degree < 1 || degree > 10) {
      throw new IllegalArgumentException("degree " + degree + ": 1 to 10 expected");
    }
    if (argument.logarithmic() != kind.logarithmicArgument()) {
      throw new IllegalArgumentException("argument scaling does not belong to " + kind);
    }
  }

  @Override
  public String id() {
    return switch (kind) {
      case POLYNOMIAL -> "polynomial-" + degree;
      case POWER -> "power";
      case LOG_POLYNOMIAL -> "log-polynomial-" + degree;
      case EXPONENTIAL -> "exponential";
    };
  }

  @Override
  public int parameterCount() {
    return degree + 1;
  }

  @Override
  public void linearise(double r, double[] beta, double[] out) {
    double t = argument.at(r);
    double series = beta[degree];
    double derivative = 0;
    for (int k = degree - 1; k >= 0; k--) {
      derivative = derivative * t + series;
      series = series * t + beta[k];
    }
    double outer = 1;
    if (kind.exponentiated()) {
      outer = StrictMath.exp(series);
      out[0] = outer;
    } else {
      out[0] = series;
    }
    out[1] = outer * derivative * argument.slope(r);
    double power = outer;
    for (int k = 0; k <= degree; k++) {
      out[2 + k] = power;
      power *= t;
    }
  }

  @Override
  public double value(double r, double[] beta) {
    double series = seriesAt(argument.at(r), beta);
    return kind.exponentiated() ? StrictMath.exp(series) : series;
  }

  private double seriesAt(double t, double[] beta) {
    double series = beta[degree];
    for (int k = degree - 1; k >= 0; k--) {
      series = series * t + beta[k];
    }
    return series;
  }

  @Override
  public double[] start(double[] responses, double[] hardnesses) throws FitFailedException {
    int n = responses.length;
    int p = parameterCount();
    double[] normal = new double[p * p];
    double[] beta = new double[p];
    double[] powers = new double[p];
    for (int i = 0; i < n; i++) {
      double target = hardnesses[i];
      if (kind.exponentiated()) {
        if (!(target > 0)) {
          throw new FitFailedException(
              Reason.OUTSIDE_DOMAIN,
              "hardness " + target + " is not above 0, and model " + id() + " is always positive");
        }
        target = StrictMath.log(target);
      }
      double t = argument.at(responses[i]);
      powers[0] = 1;
      for (int k = 1; k < p; k++) {
        powers[k] = powers[k - 1] * t;
      }
      for (int j = 0; j < p; j++) {
        beta[j] += powers[j] * target;
        for (int k = 0; k <= j; k++) {
          normal[j * p + k] += powers[j] * powers[k];
        }
      }
    }
    if (Cholesky.decompose(normal, p) < 1e-15) {
      throw new FitFailedException(
          Reason.ILL_CONDITIONED,
          "the responses do not determine the "
              + p
              + " parameters of "
              + id()
              + "; more responses must differ");
    }
    Cholesky.solve(normal, p, beta);
    return beta;
  }

  @Override
  public ReportedCoefficients reported(double[] beta, double[] covariance) {
    int p = parameterCount();
    DD[] internal = new DD[p];
    DD[][] internalCovariance = new DD[p][p];
    for (int j = 0; j < p; j++) {
      internal[j] = DD.of(beta[j]);
      for (int k = 0; k < p; k++) {
        internalCovariance[j][k] = DD.of(covariance[j * p + k]);
      }
    }
    return reported(internal, internalCovariance);
  }

  /** The coefficients in raw units from parameters known to more than double precision. */
  ReportedCoefficients reported(DD[] beta, DD[][] covariance) {
    int p = parameterCount();
    DD[][] map = argument.toPowersOfArgument(degree);
    DD[] raw = new DD[p];
    double[] values = new double[p];
    double[] rawCovariance = new double[p * p];
    DD[][] half = new DD[p][p];
    for (int j = 0; j < p; j++) {
      DD sum = DD.ZERO;
      for (int k = 0; k < p; k++) {
        sum = sum.add(map[j][k].multiply(beta[k]));
        DD product = DD.ZERO;
        for (int l = 0; l < p; l++) {
          product = product.add(map[j][l].multiply(covariance[l][k]));
        }
        half[j][k] = product;
      }
      raw[j] = sum;
      values[j] = sum.doubleValue();
    }
    for (int j = 0; j < p; j++) {
      for (int k = 0; k < p; k++) {
        DD sum = DD.ZERO;
        for (int l = 0; l < p; l++) {
          sum = sum.add(half[j][l].multiply(map[k][l]));
        }
        rawCovariance[j * p + k] = sum.doubleValue();
      }
    }
    if (kind == Kind.POWER || kind == Kind.EXPONENTIAL) {
      // a = exp(d_0); the low half of d_0 still counts because exp turns absolute into relative.
      double a = StrictMath.exp(raw[0].hi()) * (1 + raw[0].lo());
      // Below the normal numbers digits are lost: as good as no number.
      values[0] = a >= Double.MIN_NORMAL ? a : Double.NaN;
      rawCovariance[0] *= a * a;
      rawCovariance[1] *= a;
      rawCovariance[2] *= a;
    }
    return new ReportedCoefficients(coefficientNames(), values, rawCovariance);
  }

  private List<String> coefficientNames() {
    return switch (kind) {
      case POWER, EXPONENTIAL -> List.of("a", "b");
      case POLYNOMIAL -> numbered("b");
      case LOG_POLYNOMIAL -> numbered("c");
    };
  }

  private List<String> numbered(String letter) {
    List<String> names = new ArrayList<>();
    for (int k = 0; k <= degree; k++) {
      names.add(letter + k);
    }
    return names;
  }

  @Override
  public Monotonicity monotonicity(double[] beta, double low, double high) {
    double[] derivative = new double[degree];
    for (int k = 1; k <= degree; k++) {
      derivative[k - 1] = k * beta[k];
    }
    // exp and ln are increasing and the scale is positive: the series' derivative has g′'s sign.
    return BernsteinSign.signOf(derivative, argument.at(low), argument.at(high));
  }
}
