package fettle.report;

import fettle.acceptance.Check;
import fettle.acceptance.Finding;
import fettle.calibration.Analysis;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * All that a report says. Nothing is looked up and no clock is read while it is written.
 *
 * @param analysis the campaign, its numbers and the curve
 * @param findings answers of the acceptance checks, in the order in which they are to appear
 * @param checks the checks that were asked, for question, origin and remedy of a finding; a finding
 *     of a check that is not among them is shown by its id
 * @param state state of the curve as a word, for example {@code draft} or {@code released}
 * @param version number of the version, empty for a draft
 * @param fingerprint SHA-256 of the curve file, in full
 * @param shortFingerprint the same, short, as it stands on every page
 * @param date date of the report
 * @param programVersion name and version of the program
 * @param laboratory the laboratory's name
 * @param inputs files that the curve rests on
 * @param steps who has answered for what, oldest first
 */
public record ReportContent(
    Analysis analysis,
    List<Finding> findings,
    List<Check> checks,
    String state,
    Optional<Integer> version,
    String fingerprint,
    String shortFingerprint,
    LocalDate date,
    String programVersion,
    Optional<String> laboratory,
    List<ReportInput> inputs,
    List<SignedStep> steps) {
  /** Checks that nothing is missing, and copies. */
  public ReportContent {
    Objects.requireNonNull(analysis);
    Objects.requireNonNull(version);
    Objects.requireNonNull(fingerprint);
    Objects.requireNonNull(shortFingerprint);
    Objects.requireNonNull(date);
    Objects.requireNonNull(programVersion);
    Objects.requireNonNull(laboratory);
    if (state == null || state.isBlank()) {
      throw new IllegalArgumentException("state \"" + state + "\": a word expected");
    }
    findings = List.copyOf(findings);
    checks = List.copyOf(checks);
    inputs = List.copyOf(inputs);
    steps = List.copyOf(steps);
  }
}
