package fettle.reading;

import fettle.table.DecimalText;
import java.util.Objects;
import java.util.Optional;

/**
 * One point of a pairs file: a response and the hardness that belongs to it.
 *
 * @param line line in the file
 * @param response response, any finite number
 * @param hardness hardness, any finite number
 * @param responseUncertainty standard uncertainty of the response, 0 or above
 * @param hardnessUncertainty whole standard uncertainty of the hardness, above 0
 * @param group label of the group of points that share a source of uncertainty
 * @param sharedUncertainty part of the hardness uncertainty common to the group, at most the whole
 */
public record Pair(
    int line,
    DecimalText response,
    DecimalText hardness,
    Optional<DecimalText> responseUncertainty,
    Optional<DecimalText> hardnessUncertainty,
    Optional<String> group,
    Optional<DecimalText> sharedUncertainty) {
  /** Checks that nothing is missing. */
  public Pair {
    Objects.requireNonNull(response);
    Objects.requireNonNull(hardness);
    Objects.requireNonNull(responseUncertainty);
    Objects.requireNonNull(hardnessUncertainty);
    Objects.requireNonNull(group);
    Objects.requireNonNull(sharedUncertainty);
  }
}
