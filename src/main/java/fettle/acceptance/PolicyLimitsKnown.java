package fettle.acceptance;

import fettle.policy.Limit;
import fettle.policy.Policy;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** A limit under a name that no check knows is silently not in force. */
final class PolicyLimitsKnown extends StatedCheck {
  private final Set<String> known;

  PolicyLimitsKnown(Set<String> known) {
    super(
        new Statement(
            "policy-limits-known",
            Severity.STOPS_RELEASE,
            "Does every limit of the policy belong to a check?",
            "A misspelt name leaves the default in force while everybody believes in the policy's"
                + " figure.",
            "Correct the name in the policy file; the names are those under \"limit\" in the list"
                + " of checks.",
            COMMON_PRACTICE));
    this.known = Set.copyOf(known);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Policy policy = evidence.policy();
    Map<String, Limit> strangers = new TreeMap<>(policy.limits());
    strangers.keySet().removeAll(known);
    if (strangers.isEmpty()) {
      int n = policy.limits().size();
      return List.of(
          passed()
              .saying(
                  n == 0
                      ? "The policy replaces no limit; all defaults are in force."
                      : Figure.count(
                              n, "limit of the policy belongs", "limits of the policy belong")
                          + " to a check each."));
    }
    return strangers.entrySet().stream()
        .map(
            entry ->
                failed()
                    .saying(
                        "The policy's limit \""
                            + entry.getKey()
                            + "\" ("
                            + entry.getValue().citation()
                            + ", entered by "
                            + entry.getValue().enteredBy()
                            + " on "
                            + entry.getValue().on()
                            + ") belongs to no check and is not in force."))
        .toList();
  }
}
