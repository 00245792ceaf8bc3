package fettle.selfcheck;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.statistics.CochranVariance;
import fettle.statistics.GrubbsSingle;
import fettle.statistics.OneWayAnova;
import fettle.statistics.SummaryStatistics;
import fettle.statistics.Tail;

/** Summary statistics, one-way analysis of variance, critical values of tests. */
final class StatisticsRecomputation {
  private StatisticsRecomputation() {}

  static Recomputation summary(CaseFile file) {
    SummaryStatistics summary = SummaryStatistics.of(file.column("y"));
    return expected ->
        switch (quantity(expected)) {
          case "mean" -> summary.mean();
          case "standard deviation" -> summary.standardDeviation();
          case "lag-1 autocorrelation" -> summary.lag1Autocorrelation();
          default -> throw unknown(expected);
        };
  }

  static Recomputation variance(CaseFile file) {
    OneWayAnova anova = OneWayAnova.of(file.allColumns());
    return expected ->
        switch (quantity(expected)) {
          case "between sum of squares" -> anova.betweenSumOfSquares();
          case "within sum of squares" -> anova.withinSumOfSquares();
          case "F" -> anova.f();
          case "within standard deviation" -> anova.withinStandardDeviation();
          default -> throw unknown(expected);
        };
  }

  static double criticalValue(JsonNode expected) {
    double alpha = Double.parseDouble(expected.get("alpha").textValue());
    int n = expected.get("n").intValue();
    return switch (expected.get("test").textValue()) {
      case "grubbs" -> GrubbsSingle.criticalValue(n, alpha, Tail.UPPER);
      case "cochran" -> CochranVariance.criticalValue(expected.get("p").intValue(), n, alpha);
      default -> throw unknown(expected);
    };
  }

  private static String quantity(JsonNode expected) {
    return expected.get("quantity").textValue();
  }

  private static IllegalArgumentException unknown(JsonNode expected) {
    return new IllegalArgumentException("quantity of " + expected + ": unknown");
  }
}
