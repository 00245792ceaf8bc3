package fettle.fit;

import java.util.Objects;

/** Data that give no fit: never a number, always a reason with its figures. */
public final class FitFailedException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Why there is no fit. */
  public enum Reason {
    /** Fewer points than the model needs. */
    TOO_FEW_POINTS,
    /** All responses are equal, or too few of them differ for the model. */
    RESPONSES_NOT_DISTINCT,
    /** A value, uncertainty or result is not finite. */
    NOT_FINITE,
    /** An uncertainty is negative, or leaves no independent part. */
    BAD_UNCERTAINTY,
    /** A value lies outside the model's domain, such as a logarithm of a negative number. */
    OUTSIDE_DOMAIN,
    /** The parameters cannot be told apart by these points. */
    ILL_CONDITIONED,
    /** The iteration did not settle. */
    NOT_CONVERGED
  }

  private final Reason reason;

  /**
   * A failure.
   *
   * @param reason the kind
   * @param message one sentence with figures
   */
  public FitFailedException(Reason reason, String message) {
    super(message);
    this.reason = Objects.requireNonNull(reason);
  }

  /**
   * The kind of failure.
   *
   * @return never null
   */
  public Reason reason() {
    return reason;
  }
}
