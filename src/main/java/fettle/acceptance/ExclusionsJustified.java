package fettle.acceptance;

import fettle.calibration.Campaign;
import fettle.reading.Exclusion;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A reading is left out for a cause, not because of where it lies. */
final class ExclusionsJustified extends StatedCheck {
  private static final CheckLimit SHARE =
      new CheckLimit(
          "exclusions-justified",
          0.05,
          CheckLimit.Unit.FRACTION,
          "largest share of readings left out");
  private static final CheckLimit PER_CELL =
      new CheckLimit(
          "exclusions-justified-cell",
          1,
          CheckLimit.Unit.NUMBER,
          "most readings left out of one block, run and operator");

  /** Whole reasons that say where a reading lies, or nothing, instead of what went wrong. */
  private static final List<String> NO_CAUSE =
      List.of(
          "outlier",
          "an outlier",
          "statistical outlier",
          "grubbs",
          "off the curve",
          "off curve",
          "does not fit",
          "bad fit",
          "residual",
          "too high",
          "too low",
          "bad",
          "wrong",
          "none",
          "no reason",
          "n/a",
          "unknown",
          "?",
          "-",
          ".");

  ExclusionsJustified() {
    super(
        new Statement(
            "exclusions-justified",
            Severity.STOPS_RELEASE,
            "Is every reading that was left out left out for an assignable cause, and are they few?",
            "Readings dropped because they disagree make any curve look good; more than a few in a"
                + " hundred mean that the measuring itself is not under control.",
            "Include the reading again with `fettle readings include`, or exclude it with the cause"
                + " that was seen: slipped probe, double impact, overlapping indentation.",
            COMMON_PRACTICE + "; ISO 5725-2:2019 likewise asks for an explanation" + FROM_MEMORY),
        SHARE,
        PER_CELL);
  }

  @Override
  public List<Finding> ask(Evidence evidence) {
    Campaign campaign = evidence.analysis().campaign();
    List<Finding> findings = new ArrayList<>();
    Map<String, Reading> firstOfCell = new LinkedHashMap<>();
    Map<String, Integer> cells = new LinkedHashMap<>();
    for (Exclusion exclusion : campaign.exclusions()) {
      Optional<Reading> reading =
          campaign.readings().stream().filter(exclusion::covers).findFirst();
      String place = exclusion.file() + ", line " + exclusion.line();
      if (reading.isEmpty()) {
        findings.add(
            failed()
                .atLine(exclusion.file(), exclusion.line())
                .saying(
                    "The exclusion of "
                        + place
                        + " by "
                        + exclusion.by()
                        + " meets no reading of this campaign; the file may have been changed"
                        + " since."));
        continue;
      }
      if (NO_CAUSE.contains(exclusion.reason().strip().toLowerCase(Locale.ROOT))) {
        findings.add(
            failed()
                .at(reading.get())
                .saying(
                    "The reading in "
                        + place
                        + " on block "
                        + reading.get().block()
                        + " was left out by "
                        + exclusion.by()
                        + " with the reason \""
                        + exclusion.reason().strip()
                        + "\", which names no cause."));
      }
      String cell =
          "block "
              + reading.get().block()
              + ", run "
              + reading.get().run().orElse(KeptReadings.UNNAMED)
              + reading.get().operator().map(name -> ", operator " + name).orElse("");
      cells.merge(cell, 1, Integer::sum);
      firstOfCell.putIfAbsent(cell, reading.get());
    }
    LimitInForce perCell = PER_CELL.under(evidence.policy());
    cells.forEach(
        (cell, n) -> {
          if (n > perCell.value()) {
            findings.add(
                failed(Severity.NEEDS_REASON)
                    .judged(n, perCell)
                    .at(firstOfCell.get(cell))
                    .saying(
                        n
                            + " readings of "
                            + cell
                            + " were left out, above the "
                            + perCell.text()
                            + "."));
          }
        });
    findings.add(share(campaign, SHARE.under(evidence.policy())));
    return findings;
  }

  private Finding share(Campaign campaign, LimitInForce limit) {
    long out = campaign.readings().stream().filter(campaign::isExcluded).count();
    double share = out / (double) campaign.readings().size();
    boolean few = share <= limit.value();
    return (few ? passed() : failed(Severity.NEEDS_REASON))
        .judged(share, limit)
        .saying(
            out
                + " of "
                + Figure.count(campaign.readings().size(), "reading was", "readings were")
                + " left out ("
                + limit.figure(share)
                + "), "
                + (few ? "within the " : "above the ")
                + limit.text()
                + ".");
  }
}
