package fettle.acceptance;

/**
 * Two limits on one figure: above the first a reason is needed, above the second the release stops.
 * A policy that raises the first above the second raises the second with it.
 */
record Graded(LimitInForce reason, LimitInForce stop) {
  static Graded of(Evidence evidence, CheckLimit reason, CheckLimit stop) {
    return new Graded(reason.under(evidence.policy()), stop.under(evidence.policy()));
  }

  boolean passes(double value) {
    return value <= reason.value();
  }

  /** What a figure that does not pass means. */
  Severity severityOf(double value) {
    return crossed(value) == stop ? Severity.STOPS_RELEASE : Severity.NEEDS_REASON;
  }

  /** The limit that a figure crosses, or the first where it crosses none. */
  LimitInForce crossed(double value) {
    return value <= Math.max(stop.value(), reason.value()) ? reason : stop;
  }
}
