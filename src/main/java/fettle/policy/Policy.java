package fettle.policy;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A laboratory's policy for one dossier.
 *
 * @param title what it is called
 * @param example whether it is an example that still has to be checked against the laboratory's own
 *     copies of the standards
 * @param targetUncertainty largest expanded uncertainty of the curve that serves the purpose
 * @param permissibleError largest permissible error of the curve
 * @param decisionRule how errors are judged
 * @param typeB Type B components of the response
 * @param responseResolution smallest step of the displayed response
 * @param largestHardnessStep largest change of hardness that one step of the response may make
 * @param reverificationDays interval in days
 * @param reverificationUses interval in uses
 * @param limits limits by check id that replace the checks' own defaults
 * @param origin citation and person behind targets and rule, as free text
 */
public record Policy(
    String title,
    boolean example,
    Optional<ErrorLimits> targetUncertainty,
    Optional<ErrorLimits> permissibleError,
    Optional<DecisionRule> decisionRule,
    TypeB typeB,
    OptionalDouble responseResolution,
    OptionalDouble largestHardnessStep,
    OptionalInt reverificationDays,
    OptionalInt reverificationUses,
    Map<String, Limit> limits,
    Optional<String> origin) {
  /** A policy that states nothing: every check keeps its default, every target is missing. */
  public static final Policy EMPTY =
      new Policy(
          "no policy",
          false,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          TypeB.NONE,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalInt.empty(),
          OptionalInt.empty(),
          Map.of(),
          Optional.empty());

  /** Copies. */
  public Policy {
    limits = Map.copyOf(limits);
  }

  /**
   * The limit for a check.
   *
   * @param checkId id of the check
   * @param standard the check's own default
   * @return the policy's limit where it has one, else the default
   */
  public double limitFor(String checkId, double standard) {
    Limit limit = limits.get(checkId);
    return limit == null ? standard : limit.value();
  }
}
