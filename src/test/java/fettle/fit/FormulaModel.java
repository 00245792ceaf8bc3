package fettle.fit;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A model given as a formula, as a user of the solver would supply one.
 *
 * @param id name
 * @param parameterCount p
 * @param formula g(x; b)
 */
record FormulaModel(String id, int parameterCount, Formula formula) implements ResponseModel {
  interface Formula {
    Dual at(Dual x, Dual[] b);
  }

  private Dual evaluate(double r, double[] beta) {
    int count = parameterCount + 1;
    Dual[] b = new Dual[parameterCount];
    for (int k = 0; k < parameterCount; k++) {
      b[k] = Dual.variable(beta[k], 1 + k, count);
    }
    return formula.at(Dual.variable(r, 0, count), b);
  }

  @Override
  public void linearise(double r, double[] beta, double[] out) {
    Dual result = evaluate(r, beta);
    out[0] = result.value;
    System.arraycopy(result.gradient, 0, out, 1, parameterCount + 1);
  }

  @Override
  public double value(double r, double[] beta) {
    return evaluate(r, beta).value;
  }

  @Override
  public double[] start(double[] responses, double[] hardnesses) {
    throw new UnsupportedOperationException("the start is given");
  }

  @Override
  public ReportedCoefficients reported(double[] beta, double[] covariance) {
    List<String> names = IntStream.rangeClosed(1, parameterCount).mapToObj(k -> "b" + k).toList();
    return new ReportedCoefficients(names, beta, covariance);
  }

  @Override
  public Monotonicity monotonicity(double[] beta, double low, double high) {
    return Monotonicity.UNDECIDED;
  }
}
