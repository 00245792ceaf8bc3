package fettle.selfcheck;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Points;
import fettle.fit.ReportedCoefficients;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A curve through the case's points: coefficients, uncertainties, agreement, predictions. */
final class FitRecomputation implements Recomputation {
  private static final Pattern QUANTITY =
      Pattern.compile("(u|h|cov|r)\\(([a-z0-9.-]+)(?:, ([a-z0-9]+))?\\)");
  private static final Pattern PREDICTION_UNCERTAINTY = Pattern.compile("u\\(h\\(([0-9.-]+)\\)\\)");

  private final Points points;
  private final CurveFit fit;
  private final ReportedCoefficients reported;

  FitRecomputation(CaseFile file) throws FitFailedException {
    double[] x = file.column("x");
    double[] y = file.column("y");
    this.points =
        Points.of(
                x, y, variances(file, "x"), variances(file, "y"), new double[0][], new double[0][])
            .withDecimals(file.decimals("x"), file.decimals("y"));
    this.fit = CurveSolver.fit(new ModelId(file.text("model")), points);
    this.reported = fit.reported();
  }

  /** From standard uncertainties, or from weights as York's case has them, or none. */
  private static double[] variances(CaseFile file, String axis) {
    if (file.has("u" + axis)) {
      return each(file.column("u" + axis), u -> u * u);
    }
    return file.has("w" + axis)
        ? each(file.column("w" + axis), w -> 1 / w)
        : new double[file.column(axis).length];
  }

  private static double[] each(double[] values, DoubleUnaryOperator change) {
    return Arrays.stream(values).map(change).toArray();
  }

  @Override
  public double of(JsonNode expected) {
    String quantity = expected.get("quantity").textValue();
    switch (quantity) {
      case "residual standard deviation":
        return fit.residualStandardDeviation(points);
      case "chi-squared":
        return fit.chiSquared();
      case "chi-squared / degrees of freedom":
        return fit.chiSquared() / fit.degreesOfFreedom();
      default:
        break;
    }
    Matcher prediction = PREDICTION_UNCERTAINTY.matcher(quantity);
    if (prediction.matches()) {
      return Math.sqrt(fit.varianceOfCurveAt(Double.parseDouble(prediction.group(1))));
    }
    Matcher parts = QUANTITY.matcher(quantity);
    if (!parts.matches()) {
      return reported.values()[index(quantity)];
    }
    return switch (parts.group(1)) {
      case "u" -> reported.standardUncertainty(index(parts.group(2)));
      case "h" -> fit.model().value(Double.parseDouble(parts.group(2)), fit.beta());
      default -> related(parts.group(1), index(parts.group(2)), index(parts.group(3)));
    };
  }

  private double related(String how, int j, int k) {
    double covariance = reported.covariance()[j * reported.values().length + k];
    return how.equals("cov")
        ? covariance
        : covariance / reported.standardUncertainty(j) / reported.standardUncertainty(k);
  }

  private int index(String name) {
    int index = reported.names().indexOf(name);
    if (index < 0) {
      throw new IllegalArgumentException("name \"" + name + "\": no coefficient of that name");
    }
    return index;
  }
}
