package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.uncertainty.PredictedBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Each block predicted by the curve through the others. */
final class BlockPredictedByOthers extends StatedCheck {
  private static final String ID = "block-predicted-by-others";
  private static final CheckLimit REASON =
      new CheckLimit(ID, 2.5, CheckLimit.Unit.NUMBER, "|z| above which a reason is needed");
  private static final CheckLimit STOPS =
      new CheckLimit(
          ID + CheckLimit.STOP, 4, CheckLimit.Unit.NUMBER, "|z| above which the release stops");

  BlockPredictedByOthers() {
    super(
        new Statement(
            ID,
            Severity.STOPS_RELEASE,
            "Does every block agree with the curve through the others?",
            "A wrong certificate or a swapped block pulls the curve and inflates the scatter"
                + " estimated with it, and so hides itself; without it, it shows.",
            "Follow the diagnosis: compare marks and certificates, repeat the readings of this"
                + " block, or have it certified again; never drop a block only because it is off.",
            "derived: deletion residual with the between-block scatter estimated without the block"),
        REASON,
        STOPS);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Optional<JudgedFit> judged = JudgedFit.of(evidence);
    if (judged.isEmpty()) {
      return List.of(missing().saying(JudgedFit.NONE));
    }
    Graded limits = Graded.of(evidence, REASON, STOPS);
    List<Finding> findings = new ArrayList<>();
    for (PredictedBlock predicted : judged.get().fit().predicted()) {
      findings.add(ask(evidence, judged.get(), predicted, limits));
    }
    return findings;
  }

  private Finding ask(
      Evidence evidence, JudgedFit judged, PredictedBlock predicted, Graded limits) {
    BlockResponse block = evidence.analysis().fittingBlocks().get(predicted.index());
    HardnessText text = HardnessText.of(evidence);
    double z = Math.abs(predicted.z());
    LimitInForce limit = limits.crossed(z);
    String found =
        text.block(block)
            + ": the others ("
            + judged.words()
            + ") predict "
            + text.number(predicted.predicted())
            + " ± "
            + text.size(2 * predicted.standardUncertainty())
            + " (k = 2, its own certificate included), a difference of "
            + text.difference(predicted.error(), block.certificate().certified())
            + " or z = "
            + Figure.measured(predicted.z(), 2)
            + (predicted.extrapolated() ? " by extrapolation from the other blocks" : "");
    if (limits.passes(z)) {
      return passed()
          .judged(z, limit)
          .on(block)
          .saying(found + ", within the " + limit.text() + ".");
    }
    return failed(limits.severityOf(z))
        .judged(z, limit)
        .on(block)
        .saying(
            found
                + ", above the "
                + limit.text()
                + "; "
                + new BlockDiagnosis(evidence, judged.fit()).of(predicted)
                + ".");
  }
}
