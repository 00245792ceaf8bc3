package fettle.acceptance;

/**
 * A limit as a finding judges by it and cites it.
 *
 * @param value in the unit
 * @param unit unit
 * @param origin {@code default}, or the policy's citation
 */
record LimitInForce(double value, CheckLimit.Unit unit, String origin) {
  /** The limit with its origin, for example {@code limit 2.5 (default)}. */
  String text() {
    return "limit " + figure() + " (" + origin + ")";
  }

  /** A figure in the limit's unit. */
  String figure(double other) {
    return unit.text(other);
  }

  /** The limit without its origin. */
  String figure() {
    return unit.text(value);
  }
}
