package fettle.acceptance;

import fettle.block.Certificate;
import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.uncertainty.BetweenBlockScatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Scatter between blocks beyond their certificates, the alloy's own or a hidden mistake. */
final class BetweenBlockLimit extends StatedCheck {
  private static final String ID = "between-block-scatter";
  private static final CheckLimit RELATIVE =
      new CheckLimit(
          ID, 0.03, CheckLimit.Unit.FRACTION, "above it a reason is needed, Vickers and Brinell");
  private static final CheckLimit ONE_FORM =
      new CheckLimit(
          ID, 0.02, CheckLimit.Unit.FRACTION, "the same where all blocks are of one form");
  private static final CheckLimit RELATIVE_STOP =
      new CheckLimit(
          ID + CheckLimit.STOP, 0.05, CheckLimit.Unit.FRACTION, "above it the release stops");
  private static final CheckLimit ROCKWELL =
      new CheckLimit(ID, 1, CheckLimit.Unit.HR, "above it a reason is needed, Rockwell");
  private static final CheckLimit ROCKWELL_STOP =
      new CheckLimit(
          ID + CheckLimit.STOP, 2, CheckLimit.Unit.HR, "above it the release stops, Rockwell");

  BetweenBlockLimit() {
    super(
        new Statement(
            ID,
            Severity.STOPS_RELEASE,
            "Do the blocks scatter about the curve by no more than the alloy family may?",
            "This scatter is part of every result's uncertainty; when large, the family is too wide"
                + " for one curve or a block is wrong.",
            "Look first at the block or pair that is named, then at heat and product form; make"
                + " narrower families where blocks of one kind stand on one side.",
            COMMON_PRACTICE),
        RELATIVE,
        ONE_FORM,
        RELATIVE_STOP,
        ROCKWELL,
        ROCKWELL_STOP);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Optional<JudgedFit> judged = JudgedFit.of(evidence);
    if (judged.isEmpty()) {
      return List.of(missing().saying(JudgedFit.NONE));
    }
    boolean ordinal = HardnessText.of(evidence).scale().isOrdinal();
    CheckLimit reason = ordinal ? ROCKWELL : isOneForm(evidence) ? ONE_FORM : RELATIVE;
    Graded limits = Graded.of(evidence, reason, ordinal ? ROCKWELL_STOP : RELATIVE_STOP);
    BetweenBlockScatter scatter = judged.get().fit().scatter();
    double tau = scatter.restricted();
    LimitInForce limit = limits.crossed(tau);
    String found =
        "The blocks scatter about the curve ("
            + judged.get().words()
            + ") by τ = "
            + limit.figure(tau)
            + " beyond their certificates, 95 % interval "
            + limit.figure(scatter.low())
            + " to "
            + limit.figure(scatter.high());
    List<Finding> findings = new ArrayList<>();
    if (limits.passes(tau)) {
      findings.add(
          passed().judged(tau, limit).saying(found + ", within the " + limit.text() + "."));
    } else {
      findings.add(
          failed(limits.severityOf(tau))
              .judged(tau, limit)
              .saying(
                  found + ", above the " + limit.text() + suspects(evidence, judged.get(), limit)));
    }
    return findings;
  }

  private static String suspects(Evidence evidence, JudgedFit judged, LimitInForce limit) {
    Analysis analysis = evidence.analysis();
    Optional<SwapSearch.Pair> pair = SwapSearch.of(analysis, judged.fit()).bestPair();
    if (pair.isEmpty()) {
      return "; no exchange of two certified values explains it.";
    }
    List<BlockResponse> blocks = analysis.fittingBlocks();
    BlockResponse one = blocks.get(pair.get().first());
    BlockResponse other = blocks.get(pair.get().second());
    return "; exchanging the certified values of blocks "
        + one.block().id()
        + " and "
        + other.block().id()
        + " ("
        + text(one.certificate())
        + " and "
        + text(other.certificate())
        + ") would bring it to "
        + limit.figure(pair.get().tau())
        + ", so the two may be swapped.";
  }

  private static String text(Certificate certificate) {
    return new HardnessText(certificate.scale()).value(certificate.certified());
  }

  private static boolean isOneForm(Evidence evidence) {
    List<Optional<String>> forms =
        evidence.analysis().fittingBlocks().stream()
            .map(block -> block.block().productForm())
            .distinct()
            .toList();
    return forms.size() == 1 && forms.get(0).isPresent();
  }
}
