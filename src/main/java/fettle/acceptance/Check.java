package fettle.acceptance;

import java.util.List;

/** One acceptance check. Implementations are small, immutable and one class each. */
public interface Check {
  /**
   * Its name in files and policies, in lower case with hyphens.
   *
   * @return unique among all checks
   */
  String id();

  /**
   * What it asks, as a question.
   *
   * @return one sentence ending in a question mark
   */
  String question();

  /**
   * Why it matters.
   *
   * @return one or two sentences
   */
  String why();

  /**
   * What to do when it fails.
   *
   * @return one sentence
   */
  String remedy();

  /**
   * Where the requirement comes from.
   *
   * @return standard with edition, or "common practice, no source"
   */
  String citation();

  /**
   * The worst that a failure means.
   *
   * @return severity of a failure, unless a finding says less
   */
  Severity severity();

  /**
   * The limits it judges by, each of which a policy may replace.
   *
   * @return empty where it judges a fact
   */
  default List<CheckLimit> limits() {
    return List.of();
  }

  /**
   * Asks the question.
   *
   * @param evidence the analysis and what surrounds it
   * @return at least one finding: one for the whole, or one for each block or reading concerned
   */
  List<Finding> ask(Evidence evidence);
}
