package fettle.calibration;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.reading.Reading;
import fettle.refusal.InputRefusedException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Groups a campaign's kept readings by block. */
final class BlockResponses {
  /** Run name of readings that name none. */
  static final String ONE_RUN = "(one run)";

  private BlockResponses() {}

  /**
   * All blocks read, in order of certified hardness.
   *
   * @throws InputRefusedException if a block has no certificate on the dossier's scale, or a
   *     reading names an unknown block
   */
  static List<BlockResponse> of(Campaign campaign) {
    Dossier dossier = campaign.dossier();
    Map<String, ReferenceBlock> known = new LinkedHashMap<>();
    for (ReferenceBlock block : campaign.blocks()) {
      known.put(block.id(), block);
    }
    Map<String, List<Reading>> kept = new LinkedHashMap<>();
    for (Reading reading : campaign.readings()) {
      if (!known.containsKey(reading.block())) {
        throw new InputRefusedException(
            "Block \"" + reading.block() + "\" is not in the laboratory's reference blocks.",
            reading.file() + ", line " + reading.line(),
            "a block that was added before its readings",
            "add the block with its certificate, or correct its name in the readings file");
      }
      if (!campaign.isExcluded(reading)) {
        kept.computeIfAbsent(reading.block(), id -> new ArrayList<>()).add(reading);
      }
    }
    List<BlockResponse> responses = new ArrayList<>();
    kept.forEach((id, readings) -> responses.add(of(dossier, known.get(id), readings)));
    responses.sort(
        java.util.Comparator.comparingDouble(
                (BlockResponse response) -> response.certificate().certified())
            .thenComparing(response -> response.block().id()));
    return List.copyOf(responses);
  }

  private static BlockResponse of(Dossier dossier, ReferenceBlock block, List<Reading> readings) {
    Certificate certificate = certificate(dossier, block);
    List<Double> values = new ArrayList<>();
    Map<String, List<Double>> byRun = new TreeMap<>();
    Map<String, Integer> byOperator = new TreeMap<>();
    for (Reading reading : readings) {
      double response = reading.response(dossier.identity().zeroFrequencyHz());
      values.add(response);
      byRun.computeIfAbsent(reading.run().orElse(ONE_RUN), run -> new ArrayList<>()).add(response);
      reading.operator().ifPresent(name -> byOperator.merge(name, 1, Integer::sum));
    }
    double mean = mean(values);
    Map<String, Integer> counts = new TreeMap<>();
    Map<String, Double> means = new TreeMap<>();
    double within = 0;
    for (Map.Entry<String, List<Double>> run : byRun.entrySet()) {
      double runMean = mean(run.getValue());
      counts.put(run.getKey(), run.getValue().size());
      means.put(run.getKey(), runMean);
      within += sumOfSquares(run.getValue(), runMean);
    }
    int n = values.size();
    double deviation = n > 1 ? Math.sqrt(sumOfSquares(values, mean) / (n - 1)) : 0;
    return new BlockResponse(
        block,
        dossier.roleOf(block),
        certificate,
        List.copyOf(values),
        mean,
        deviation,
        java.util.Collections.unmodifiableMap(counts),
        java.util.Collections.unmodifiableMap(byOperator),
        java.util.Collections.unmodifiableMap(means),
        within);
  }

  /** For a standard or drift block any scale will do: only its response is used. */
  private static Certificate certificate(Dossier dossier, ReferenceBlock block) {
    BlockRole role = dossier.roleOf(block);
    var onScale = block.certificateFor(dossier.identity().scale());
    if (onScale.isEmpty() && (role == BlockRole.STANDARD || role == BlockRole.DRIFT)) {
      return block.certificates().get(block.certificates().size() - 1);
    }
    return onScale.orElseThrow(
        () ->
            new InputRefusedException(
                "Block "
                    + block.id()
                    + " has no certificate on scale "
                    + dossier.identity().scale()
                    + ", but its readings are to "
                    + (role == BlockRole.FIT ? "shape" : "check")
                    + " the curve.",
                "dossier " + dossier.identity().dossier(),
                "a certificate on the dossier's scale for every block that was read",
                "add the certificate with `fettle block add`"));
  }

  private static double mean(List<Double> values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    double mean = sum / values.size();
    double rest = 0;
    for (double value : values) {
      rest += value - mean;
    }
    return mean + rest / values.size();
  }

  private static double sumOfSquares(List<Double> values, double mean) {
    double sum = 0;
    for (double value : values) {
      sum += (value - mean) * (value - mean);
    }
    return sum;
  }
}
