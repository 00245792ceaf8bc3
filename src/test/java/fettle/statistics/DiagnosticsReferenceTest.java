package fettle.statistics;

import static fettle.statistics.Cases.assertNumber;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.reference.ReferenceCase;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Regression diagnostics against published cases; each file has its citation. */
class DiagnosticsReferenceTest {
  // Brownlee 1965, Cook 1977; vectors printed by R 4.2.2, recomputed with 60 digits: 1e-11.
  @Test
  void stackLoss() {
    ReferenceCase file = Cases.load("diagnostics/stackloss-influence.json");
    double[] loss = file.column("/data/loss");
    double[][] design =
        columns(file.column("/data/x1"), file.column("/data/x2"), file.column("/data/x3"));
    LinearRegression fit = LinearRegression.of(withConstant(design), loss);
    RegressionInfluence influence = RegressionInfluence.of(fit);
    assertNumbers(file, "/expected/coefficients", fit.coefficients());
    assertNumbers(file, "/expected/standard_errors", fit.standardErrors());
    assertNumber(file, "/expected/residual_sd", fit.residualStandardDeviation(), 1e-13);
    assertNumber(file, "/expected/r_squared", fit.rSquared(), 1e-13);
    assertNumbers(file, "/expected/leverage", fit.leverages());
    assertNumbers(file, "/expected/cooks_distance", influence.cooksDistances());
    assertNumbers(file, "/expected/internally_studentized", influence.internallyStudentized());
    assertNumbers(file, "/expected/externally_studentized", influence.externallyStudentized());
    assertNumbers(file, "/expected/dffits", influence.dffits());
    assertNumber(file, "/expected/durbin_watson", DurbinWatson.statistic(fit.residuals()), 1e-12);
    assertNumber(file, "/expected/PRESS", influence.press(), 1e-12);
    assertNumber(file, "/expected/predicted_r_squared", influence.predictedRSquared(), 1e-13);
    assertNumber(file, "/expected/loo_rmse", influence.leftOutRms(), 1e-13);
  }

  // What the leverage formulas promise, by leaving each observation out in fact.
  @Test
  void leftOutErrorsAreThoseOfFitsWithoutTheObservation() {
    ReferenceCase file = Cases.load("diagnostics/stackloss-influence.json");
    double[] loss = file.column("/data/loss");
    double[][] design = withConstant(columns(file.column("/data/x1"), file.column("/data/x2")));
    double[] errors = RegressionInfluence.of(LinearRegression.of(design, loss)).leftOutErrors();
    for (int out = 0; out < loss.length; out++) {
      int left = out;
      int[] kept = IntStream.range(0, loss.length).filter(i -> i != left).toArray();
      double[][] x = IntStream.of(kept).mapToObj(i -> design[i]).toArray(double[][]::new);
      double[] y = IntStream.of(kept).mapToDouble(i -> loss[i]).toArray();
      double[] b = LinearRegression.of(x, y).coefficients();
      double predicted = b[0] + b[1] * design[out][1] + b[2] * design[out][2];
      assertEquals(loss[out] - predicted, errors[out], 1e-11);
    }
  }

  // R package boot, cv.glm; Davison and Hinkley 1997. 1e-13.
  @Test
  void mammals() {
    ReferenceCase file = Cases.load("diagnostics/mammals-loo.json");
    LinearRegression fit =
        LinearRegression.line(
            map(file.column("/data/body"), StrictMath::log),
            map(file.column("/data/brain"), StrictMath::log));
    double rms = RegressionInfluence.of(fit).leftOutRms();
    assertNumber(file, "/expected/loo_mean_squared_error", rms * rms, 1e-13);
    assertNumber(file, "/expected/documented_value", rms * rms, 1e-13);
    assertNumber(file, "/expected/residual_sd", fit.residualStandardDeviation(), 1e-13);
    assertNumber(file, "/expected/intercept", fit.coefficients()[0], 1e-13);
    assertNumber(file, "/expected/slope", fit.coefficients()[1], 1e-13);
  }

  // Krämer and Sonnberger 1986, Tables 6.11 and 6.12; R package lmtest. 1e-11.
  @Test
  void unemployment() {
    ReferenceCase file = Cases.load("diagnostics/breusch-pagan-unemployment.json");
    double[] m = file.column("/data/m");
    double[] p = file.column("/data/p");
    int n = m.length;
    double[] realMoney = new double[n];
    double[] time = new double[n];
    for (int i = 0; i < n; i++) {
      realMoney[i] = StrictMath.log(m[i] / p[i]);
      time[i] = 6 + i;
    }
    double[][] variables =
        columns(
            realMoney,
            map(file.column("/data/G"), StrictMath::log),
            map(file.column("/data/x"), StrictMath::log),
            time);
    LinearRegression fit = LinearRegression.of(withConstant(variables), file.column("/data/UN"));
    assertNumbers(file, "/expected/coefficients", fit.coefficients());
    BreuschPagan test = BreuschPagan.of(fit.residuals(), variables);
    assertNumber(file, "/expected/breusch_pagan", test.original(), 1e-11);
    assertNumber(file, "/expected/p_breusch_pagan", test.originalPValue(), 1e-11);
    assertNumber(file, "/expected/studentized", test.studentized(), 1e-11);
    assertNumber(file, "/expected/p_studentized", test.studentizedPValue(), 1e-11);
    assertEquals(file.number("/expected/df"), test.degreesOfFreedom());
  }

  // Krämer and Sonnberger 1986, Table 6.7; R package lmtest. p recomputed by Imhof's integral in
  // double precision: 1e-9.
  @Test
  void moneyGrowth() {
    ReferenceCase file = Cases.load("diagnostics/durbin-watson-money-growth.json");
    double[] y = file.column("/data/TG1.TG0");
    double[] x = file.column("/data/AG0.TG0");
    checkMoneyGrowth(file, "/expected/all_19", x, y);
    int[] kept = IntStream.range(0, 19).filter(i -> i != 4 && i != 5).toArray();
    checkMoneyGrowth(
        file,
        "/expected/without_points_5_and_6",
        IntStream.of(kept).mapToDouble(i -> x[i]).toArray(),
        IntStream.of(kept).mapToDouble(i -> y[i]).toArray());
  }

  private static void checkMoneyGrowth(ReferenceCase file, String at, double[] x, double[] y) {
    LinearRegression fit = LinearRegression.line(x, y);
    DurbinWatson test = DurbinWatson.of(fit);
    assertNumber(file, at + "/intercept", fit.coefficients()[0], 1e-11);
    assertNumber(file, at + "/slope", fit.coefficients()[1], 1e-13);
    assertNumber(file, at + "/DW", test.statistic(), 1e-13);
    assertNumber(file, at + "/p_value_positive_autocorrelation", test.positivePValue(), 1e-9);
    assertEquals(1, test.positivePValue() + test.negativePValue(), 1e-15);
  }

  // Durbin and Watson 1951, Table 4; recomputed to 8 digits: 1e-7.
  @Test
  void durbinWatsonBounds() {
    ReferenceCase file = Cases.load("diagnostics/durbin-watson-bounds.json");
    for (int i = 0; i < file.size("/expected/five_percent"); i++) {
      String row = "/expected/five_percent/" + i;
      DurbinWatsonBounds bounds =
          DurbinWatsonBounds.of(
              (int) file.number(row + "/n"), (int) file.number(row + "/regressors"), 0.05);
      assertNumber(file, row + "/dL", bounds.lower(), 1e-7);
      assertNumber(file, row + "/dU", bounds.upper(), 1e-7);
      assertEquals(
          DurbinWatsonBounds.Verdict.POSITIVE_CORRELATION, bounds.judge(bounds.lower() - 1e-9));
      assertEquals(
          DurbinWatsonBounds.Verdict.UNDECIDED,
          bounds.judge(0.5 * (bounds.lower() + bounds.upper())));
      assertEquals(DurbinWatsonBounds.Verdict.NOT_SHOWN, bounds.judge(bounds.upper() + 1e-9));
    }
  }

  // NIST/SEMATECH e-Handbook 1.3.5.7 and 1.3.5.10: 1e-12 on the recomputed values.
  @Test
  void gearDiameters() {
    ReferenceCase file = Cases.load("diagnostics/ehb-gear-levene-bartlett.json");
    double[][] batches = file.columns("/data");
    FTest median = LeveneTest.aboutMedians(batches);
    BartlettTest bartlett = BartlettTest.of(batches);
    double f = Quantiles.upperF(0.05, 9, 90);
    double chiSquared = Quantiles.upperChiSquared(0.05, 9);
    assertNumber(file, "/expected/levene_median", median.statistic(), 1e-12);
    assertNumber(file, "/expected/levene_mean", LeveneTest.aboutMeans(batches).statistic(), 1e-12);
    assertNumber(file, "/expected/bartlett_T", bartlett.statistic(), 1e-12);
    assertNumber(file, "/expected/f_critical_0.05_9_90", f, 1e-12);
    assertNumber(file, "/expected/chi2_critical_0.05_9", chiSquared, 1e-12);
    // the handbook's conclusion
    assertTrue(median.pValue() > 0.05 && median.statistic() < f);
    assertTrue(bartlett.pValue() < 0.05 && bartlett.statistic() > chiSquared);
  }

  // R 4.2.2 stats::isoreg: exact; weighted variant recomputed, 14 digits.
  @Test
  void isotonicFit() {
    ReferenceCase file = Cases.load("diagnostics/isotonic-r-example.json");
    double[] y = file.column("/data/y");
    assertArrayEquals(file.column("/expected/fit"), IsotonicRegression.fit(y), 1e-15);
    assertArrayEquals(
        file.column("/expected/weighted/fit"),
        IsotonicRegression.fit(y, file.column("/expected/weighted/weights")),
        1e-13);
  }

  // Shapiro and Wilk 1965, example 3; W and p of R 4.2.2 and SciPy (two implementations of AS R94).
  @Test
  void weightsOfElevenMen() {
    ReferenceCase file = Cases.load("diagnostics/shapiro-wilk-weights.json");
    ShapiroWilk test = ShapiroWilk.test(file.column("/data/weight"));
    // the recomputed value is SciPy's, whose normal quantile is good to ten digits; R prints ours
    assertNumber(file, "/expected/W", test.statistic(), 5e-11);
    assertEquals(
        Double.parseDouble(file.expected("/expected/W_r_4.2.2").printed()),
        test.statistic(),
        file.expected("/expected/W_r_4.2.2").halfPrintedUnit());
    assertNumber(file, "/expected/p_r_4.2.2", test.pValue(), 1e-9);
    assertTrue(test.pValue() < 0.01);
  }

  private static void assertNumbers(ReferenceCase file, String pointer, double[] actual) {
    assertEquals(file.size(pointer), actual.length);
    for (int i = 0; i < actual.length; i++) {
      assertNumber(file, pointer + "/" + i, actual[i], 1e-11);
    }
  }

  private static double[] map(double[] values, DoubleUnaryOperator f) {
    return Arrays.stream(values).map(f).toArray();
  }

  private static double[][] columns(double[]... columns) {
    double[][] rows = new double[columns[0].length][columns.length];
    for (int i = 0; i < rows.length; i++) {
      for (int j = 0; j < columns.length; j++) {
        rows[i][j] = columns[j][i];
      }
    }
    return rows;
  }

  private static double[][] withConstant(double[][] rows) {
    double[][] design = new double[rows.length][];
    for (int i = 0; i < rows.length; i++) {
      design[i] = new double[rows[i].length + 1];
      design[i][0] = 1;
      System.arraycopy(rows[i], 0, design[i], 1, rows[i].length);
    }
    return design;
  }
}
