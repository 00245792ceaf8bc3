package fettle.selfcheck;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.fit.FitFailedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Recomputes the published cases that come with the program: NIST's reference datasets, ISO/TS
 * 28037, York, the GUM and its Supplement 1, tables of critical values.
 *
 * <p>The same cases, and many more to more digits, are held by the tests; this shows that they hold
 * on another machine with another Java.
 */
public final class SelfCheck {
  private SelfCheck() {}

  /**
   * Recomputes all cases.
   *
   * @param threads number of threads for Monte Carlo, at least 1; the numbers do not depend on it
   * @return one result a case, in a fixed order
   */
  public static List<CheckedCase> run(int threads) {
    List<CheckedCase> cases = new ArrayList<>();
    for (String name : CaseFile.names()) {
      cases.add(check(CaseFile.named(name), threads));
    }
    return List.copyOf(cases);
  }

  static CheckedCase check(CaseFile file, int threads) {
    List<CheckedValue> values = new ArrayList<>();
    Optional<Recomputation> recomputation = recomputation(file, threads);
    for (JsonNode expected : file.expected()) {
      values.add(
          new CheckedValue(
              expected.get("quantity").textValue(),
              expected.get("printed").textValue(),
              Optional.ofNullable(expected.path("within").textValue()),
              recomputation.map(one -> one.of(expected)).orElse(Double.NaN)));
    }
    return new CheckedCase(file.text("id"), file.text("title"), file.text("source"), values);
  }

  /** Empty where the case has no fit: then all of its values are missed. */
  private static Optional<Recomputation> recomputation(CaseFile file, int threads) {
    String kind = file.text("kind");
    try {
      return Optional.of(
          switch (kind) {
            case "fit" -> new FitRecomputation(file);
            case "monte-carlo" -> new PropagationRecomputation(file, threads);
            case "critical-values" -> StatisticsRecomputation::criticalValue;
            case "summary" -> StatisticsRecomputation.summary(file);
            case "variance" -> StatisticsRecomputation.variance(file);
            default -> throw new IllegalArgumentException("kind \"" + kind + "\": unknown");
          });
    } catch (FitFailedException failure) {
      return Optional.empty();
    }
  }
}
