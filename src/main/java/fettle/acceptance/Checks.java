package fettle.acceptance;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** All checks, in the order in which a report lists them. */
public final class Checks {
  private static final List<Check> ALL = list();

  private Checks() {}

  /**
   * Every check.
   *
   * @return in report order
   */
  public static List<Check> all() {
    return ALL;
  }

  /**
   * Asks every check.
   *
   * @param evidence the analysis and the day
   * @return all findings, in report order
   */
  public static List<Finding> ask(Evidence evidence) {
    List<Finding> findings = new ArrayList<>();
    for (Check check : ALL) {
      findings.addAll(check.ask(evidence));
    }
    return List.copyOf(findings);
  }

  private static List<Check> list() {
    List<Check> checks =
        new ArrayList<>(
            List.of(
                new CertificateValid(),
                new CertificateChain(),
                new CertificateUncertainty(),
                new CertifiedIndentations(),
                new SharedSourceDeclared(),
                new BlockMaterial(),
                new BlockThickness(),
                new BlockMass(),
                new BlockRoughness(),
                new FitAndCheckDisjoint(),
                new StandardBlockBefore(),
                new StandardBlockChange(),
                new FreeFrequency(),
                new RawResponse(),
                new OneProbe(),
                new ReadingSpacing(),
                new ReadingsPerBlock(),
                new ExclusionsJustified(),
                new BlockRepeatability(),
                new OrderOfBlocks(),
                new EnoughBlocks(),
                new FitConditioning(),
                new BetweenBlockLimit(),
                new BlockResidual(),
                new BlockPredictedByOthers(),
                new LeaveOneOutRatio(),
                new MonotoneRange(),
                new ResponseExponent(),
                new SharedSourceInCurve(),
                new Recomputation(),
                new ValidationBlocks(),
                new CheckBlockEn(),
                new CheckBlockError(),
                new UncertaintyTarget(),
                new NoExtrapolation(),
                new ConditionsStated(),
                new PolicyCited(),
                new DecisionRuleStated()));
    Set<String> limits = new LinkedHashSet<>();
    for (Check check : checks) {
      check.limits().forEach(limit -> limits.add(limit.id()));
    }
    checks.add(new PolicyLimitsKnown(limits));
    return List.copyOf(checks);
  }
}
