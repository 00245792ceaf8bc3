package fettle.cli;

import fettle.fit.CurveFit;
import fettle.fit.ReportedCoefficients;
import fettle.uncertainty.BetweenBlockScatter;
import fettle.uncertainty.ScatterScale;
import java.io.IOException;

/** The JSON fields of a fitted curve that pairs and dossiers have in common. */
final class CurveJson {
  private CurveJson() {}

  /** Coefficients in raw units and their covariance. */
  static void coefficients(JsonOut json, CurveFit fit) throws IOException {
    ReportedCoefficients reported = fit.reported();
    double[] values = reported.values();
    double[] covariance = reported.covariance();
    int p = values.length;
    json.putArray(
        "coefficients",
        list -> {
          for (int k = 0; k < p; k++) {
            int index = k;
            list.addObject(
                one ->
                    one.put("name", reported.names().get(index))
                        .put("value", values[index])
                        .put("standardUncertainty", reported.standardUncertainty(index)));
          }
        });
    json.putArray(
        "covariance",
        rows -> {
          for (int j = 0; j < p; j++) {
            int row = j;
            rows.addArray(
                columns -> {
                  for (int k = 0; k < p; k++) {
                    columns.add(covariance[row * p + k]);
                  }
                });
          }
        });
  }

  /** Between-block scatter. */
  static void betweenBlock(JsonOut json, BetweenBlockScatter scatter) throws IOException {
    json.putObject(
        "betweenBlock",
        one ->
            one.put("scale", scatter.scale() == ScatterScale.RELATIVE ? "relative" : "absolute")
                .put("value", scatter.restricted())
                .put("low", scatter.low())
                .put("high", scatter.high()));
  }
}
