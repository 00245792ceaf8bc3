package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.calibration.ChosenCurve;
import fettle.curve.CurveIdentity;
import fettle.quantity.Method;
import java.util.ArrayList;
import java.util.List;

/**
 * Scatter of single readings within runs: as hardness through the curve's slope for contact
 * impedance, as coefficient of variation of the response for rebound, in HR units for Rockwell.
 */
final class BlockRepeatability extends CurveCheck {
  private static final String ID = "block-repeatability";
  private static final CheckLimit HEAVY =
      new CheckLimit(ID, 0.05, CheckLimit.Unit.FRACTION, "of hardness, UCI at 49 N and above");
  private static final CheckLimit LIGHT =
      new CheckLimit(ID, 0.08, CheckLimit.Unit.FRACTION, "of hardness, UCI below 49 N");
  private static final CheckLimit REBOUND =
      new CheckLimit(ID, 0.02, CheckLimit.Unit.FRACTION, "of the response, rebound type D");
  private static final CheckLimit ROCKWELL =
      new CheckLimit(ID, 2, CheckLimit.Unit.HR, "Rockwell scales");

  /** 49 N as probes state it. */
  private static final double HEAVY_FROM_NEWTONS = 48.5;

  BlockRepeatability() {
    super(
        new Statement(
            ID,
            Severity.STOPS_RELEASE,
            "Do single readings on every block repeat within the method's limit?",
            "Scatter far above the usual means bad contact, a rough or coarse-grained face, or a"
                + " worn tip; more readings do not cure it.",
            "Look at surface, contact and tip, and repeat the readings on this block.",
            "ASTM A1038-19 and ISO 16859-2:2015, limits on standard blocks"
                + FROM_MEMORY
                + "; their use on an alloy's blocks is common practice, no source"),
        HEAVY,
        LIGHT,
        REBOUND,
        ROCKWELL);
  }

  @Override
  List<Finding> ask(Evidence evidence, ChosenCurve chosen) {
    CurveIdentity identity = chosen.curve().identity();
    CheckLimit standard =
        identity.scale().isOrdinal()
            ? ROCKWELL
            : identity.method() == Method.REBOUND
                ? REBOUND
                : identity.testForceNewtons().orElse(Double.POSITIVE_INFINITY) < HEAVY_FROM_NEWTONS
                    ? LIGHT
                    : HEAVY;
    LimitInForce limit = standard.under(evidence.policy());
    List<Finding> findings = new ArrayList<>();
    for (BlockResponse block : SubjectBlocks.of(evidence)) {
      findings.add(ask(block, chosen, standard, limit));
    }
    return findings;
  }

  private Finding ask(
      BlockResponse block, ChosenCurve chosen, CheckLimit standard, LimitInForce limit) {
    int freedom = block.count() - block.readingsPerRun().size();
    if (freedom < 1) {
      return missing(Severity.NEEDS_REASON)
          .on(block)
          .saying(
              "Block "
                  + block.block().id()
                  + " was read once in every run, which shows no repeatability; read it several"
                  + " times in a run.");
    }
    double s = Math.sqrt(block.withinRunSumOfSquares() / freedom);
    double r = block.mean();
    double scatter;
    if (standard == REBOUND) {
      scatter = s / Math.abs(r);
    } else {
      double[] line = new double[chosen.curve().beta().length + 2];
      chosen.curve().function().linearise(r, chosen.curve().beta(), line);
      double hardness = Math.abs(line[1]) * s;
      scatter = standard == ROCKWELL ? hardness : hardness / Math.abs(line[0]);
    }
    boolean stops = !(scatter <= 2 * limit.value());
    Answer answer =
        stops ? failed() : scatter > limit.value() ? failed(Severity.NEEDS_REASON) : passed();
    return answer
        .judged(scatter, limit)
        .on(block)
        .saying(
            "Block "
                + block.block().id()
                + ": single readings within a run scatter with s = "
                + limit.figure(scatter)
                + (standard == REBOUND
                    ? " of the response"
                    : standard == ROCKWELL ? "" : " of the hardness")
                + ", "
                + (answer.outcome() == Outcome.PASSED ? "within the " : "above the ")
                + limit.text()
                + (stops ? " and above twice of it." : "."));
  }
}
