package fettle.acceptance;

import java.util.List;

/** A check with its statement and limits; what is left to write is the question itself. */
abstract class StatedCheck implements Check {
  /** What to say of a requirement with no source. */
  static final String COMMON_PRACTICE = "common practice, no source";

  /** What to add where a standard was not at hand. */
  static final String FROM_MEMORY = " (from memory, check against your own copy)";

  private final Statement statement;
  private final List<CheckLimit> limits;

  StatedCheck(Statement statement, CheckLimit... limits) {
    this.statement = statement;
    this.limits = List.of(limits);
  }

  @Override
  public final String id() {
    return statement.id();
  }

  @Override
  public final String question() {
    return statement.question();
  }

  @Override
  public final String why() {
    return statement.why();
  }

  @Override
  public final String remedy() {
    return statement.remedy();
  }

  @Override
  public final String citation() {
    return statement.citation();
  }

  @Override
  public final Severity severity() {
    return statement.severity();
  }

  @Override
  public final List<CheckLimit> limits() {
    return limits;
  }

  final Answer passed() {
    return new Answer(id(), severity(), Outcome.PASSED);
  }

  final Answer failed() {
    return failed(severity());
  }

  final Answer failed(Severity meaning) {
    return new Answer(id(), meaning, Outcome.FAILED);
  }

  final Answer missing() {
    return missing(severity());
  }

  final Answer missing(Severity meaning) {
    return new Answer(id(), meaning, Outcome.DATA_MISSING);
  }
}
