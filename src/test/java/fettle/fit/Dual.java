package fettle.fit;

/**
 * A number with its derivatives, so that models written once as a formula come with exact analytic
 * derivatives (forward differentiation; A. Griewank, A. Walther, Evaluating Derivatives, 2nd ed.
 * 2008, chapter 3).
 */
final class Dual {
  final double value;
  final double[] gradient;

  private Dual(double value, double[] gradient) {
    this.value = value;
    this.gradient = gradient;
  }

  static Dual variable(double value, int index, int count) {
    double[] gradient = new double[count];
    gradient[index] = 1;
    return new Dual(value, gradient);
  }

  private Dual chain(double newValue, double slope) {
    double[] result = new double[gradient.length];
    for (int k = 0; k < result.length; k++) {
      result[k] = slope * gradient[k];
    }
    return new Dual(newValue, result);
  }

  private Dual combine(double newValue, double own, Dual other, double others) {
    double[] result = new double[gradient.length];
    for (int k = 0; k < result.length; k++) {
      result[k] = own * gradient[k] + others * other.gradient[k];
    }
    return new Dual(newValue, result);
  }

  Dual plus(Dual other) {
    return combine(value + other.value, 1, other, 1);
  }

  Dual plus(double constant) {
    return chain(value + constant, 1);
  }

  Dual minus(Dual other) {
    return combine(value - other.value, 1, other, -1);
  }

  Dual times(Dual other) {
    return combine(value * other.value, other.value, other, value);
  }

  Dual times(double factor) {
    return chain(value * factor, factor);
  }

  Dual over(Dual other) {
    double quotient = value / other.value;
    return combine(quotient, 1 / other.value, other, -quotient / other.value);
  }

  Dual negative() {
    return times(-1);
  }

  Dual square() {
    return chain(value * value, 2 * value);
  }

  Dual exp() {
    double e = StrictMath.exp(value);
    return chain(e, e);
  }

  /** 1 − e^x without loss of digits at small x. */
  Dual oneMinusExp() {
    return chain(-StrictMath.expm1(value), -StrictMath.exp(value));
  }

  Dual log() {
    return chain(StrictMath.log(value), 1 / value);
  }

  Dual pow(double exponent) {
    double p = StrictMath.pow(value, exponent);
    return chain(p, exponent * p / value);
  }

  Dual pow(Dual exponent) {
    double p = StrictMath.pow(value, exponent.value);
    return combine(p, exponent.value * p / value, exponent, p * StrictMath.log(value));
  }
}
