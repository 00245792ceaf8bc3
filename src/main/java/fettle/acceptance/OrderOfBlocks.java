package fettle.acceptance;

import fettle.calibration.Analysis;
import fettle.calibration.BlockResponse;
import fettle.fit.Points;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Responses of the fitting blocks must stand in the order of their certified hardness.
 *
 * <p>A pair in the wrong order is off by d = ΔH + |dH/dr|·|Δr| from any monotone curve that is as
 * steep as the blocks as a whole; it is judged against the standard uncertainty of d. The steepness
 * is that of a power law through all blocks, on Rockwell scales of a straight line.
 */
final class OrderOfBlocks extends StatedCheck {
  private static final CheckLimit FACTOR =
      new CheckLimit(
          "order-of-blocks",
          2,
          CheckLimit.Unit.NUMBER,
          "standard uncertainties beyond which a wrong order stops the release");

  OrderOfBlocks() {
    super(
        new Statement(
            "order-of-blocks",
            Severity.STOPS_RELEASE,
            "Do the responses follow the order of the certified hardnesses?",
            "Two blocks in the wrong order are the plainest sign of swapped blocks or certificates,"
                + " and no monotone curve passes through them.",
            "Compare the marks on the two blocks with certificates and readings files, and read both"
                + " again.",
            COMMON_PRACTICE),
        FACTOR);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Analysis analysis = evidence.analysis();
    List<BlockResponse> blocks = analysis.fittingBlocks();
    boolean falls =
        analysis.campaign().dossier().identity().method() == Method.UCI
            && analysis.campaign().dossier().identity().responseKind()
                == ResponseKind.FREQUENCY_SHIFT;
    double sign = falls ? -1 : 1;
    LimitInForce limit = FACTOR.under(evidence.policy());
    HardnessText text = HardnessText.of(evidence);
    List<Finding> findings = new ArrayList<>();
    for (int i = 1; i < blocks.size(); i++) {
      BlockResponse soft = blocks.get(i - 1);
      BlockResponse hard = blocks.get(i);
      if (soft.certificate().certified() < hard.certificate().certified()
          && sign * (hard.mean() - soft.mean()) < 0) {
        findings.add(judge(analysis.points(), i - 1, blocks, limit, text));
      }
    }
    if (findings.isEmpty()) {
      findings.add(
          passed()
              .saying(
                  "The mean responses of all "
                      + blocks.size()
                      + " fitting blocks "
                      + (falls ? "fall" : "rise")
                      + " in the order of their certified hardness."));
    }
    return findings;
  }

  private Finding judge(
      Points points,
      int softer,
      List<BlockResponse> blocks,
      LimitInForce limit,
      HardnessText text) {
    BlockResponse soft = blocks.get(softer);
    BlockResponse hard = blocks.get(softer + 1);
    double slope = slope(blocks, soft, hard, text.scale().isOrdinal());
    double apart =
        hard.certificate().certified()
            - soft.certificate().certified()
            + slope * Math.abs(hard.mean() - soft.mean());
    double variance = 0;
    for (int i = softer; i <= softer + 1; i++) {
      variance += points.hardnessVariances()[i] + slope * slope * points.responseVariances()[i];
    }
    double factor = apart / Math.sqrt(variance);
    boolean stops = factor > limit.value();
    return failed(stops ? Severity.STOPS_RELEASE : Severity.NEEDS_REASON)
        .judged(factor, limit)
        .on(hard)
        .saying(
            text.block(soft)
                + " and block "
                + hard.block().id()
                + " (certified "
                + text.value(hard.certificate().certified())
                + ") respond in the wrong order, "
                + Figure.measured(soft.mean(), 5)
                + " and "
                + Figure.measured(hard.mean(), 5)
                + "; they are "
                + text.size(apart)
                + " or "
                + Figure.measured(factor, 2)
                + " standard uncertainties from agreement, "
                + (stops ? "above the " : "within the ")
                + limit.text()
                + (stops ? "; the two may be swapped." : ", but a curve needs an order."));
  }

  private static double slope(
      List<BlockResponse> blocks, BlockResponse soft, BlockResponse hard, boolean ordinal) {
    int n = blocks.size();
    double meanH = 0;
    double meanR = 0;
    for (BlockResponse block : blocks) {
      meanH += hardness(block, ordinal) / n;
      meanR += response(block, ordinal) / n;
    }
    double rr = 0;
    double hr = 0;
    for (BlockResponse block : blocks) {
      double r = response(block, ordinal) - meanR;
      rr += r * r;
      hr += r * (hardness(block, ordinal) - meanH);
    }
    double slope = rr == 0 ? 0 : Math.abs(hr / rr);
    return ordinal
        ? slope
        : slope
            * (soft.certificate().certified() + hard.certificate().certified())
            / Math.abs(soft.mean() + hard.mean());
  }

  private static double hardness(BlockResponse block, boolean ordinal) {
    double h = block.certificate().certified();
    return ordinal ? h : Math.log(h);
  }

  private static double response(BlockResponse block, boolean ordinal) {
    double r = block.mean();
    return ordinal ? r : Math.log(Math.max(Math.abs(r), Double.MIN_NORMAL));
  }
}
