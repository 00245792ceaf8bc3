package fettle.curve;

/**
 * One line of an uncertainty budget.
 *
 * @param source what it is
 * @param part whether it belongs to the curve or to the result on a test piece
 * @param standardUncertainty contribution to the hardness, in the scale's unit
 * @param present false where the campaign or the policy says nothing of it
 */
public record BudgetLine(String source, Part part, double standardUncertainty, boolean present) {
  /** Where a contribution arises. */
  public enum Part {
    /** In the curve. */
    CURVE,
    /** In the result on a test piece. */
    RESULT
  }
}
