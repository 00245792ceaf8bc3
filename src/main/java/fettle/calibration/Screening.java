package fettle.calibration;

import fettle.reading.Reading;
import fettle.statistics.CochranVariance;
import fettle.statistics.GeneralizedEsd;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Looks for readings that stand out, within blocks only: distance from the fitted curve is no
 * ground.
 *
 * <p>Generalized ESD (B. Rosner, Technometrics 25 (1983) 165) on the kept readings of each block,
 * for up to a quarter of them, at 1 % (outlier) and 5 % (straggler) as ISO 5725-2 uses the levels;
 * Cochran's test for a block whose readings scatter more than the others, in units of the response.
 */
public final class Screening {
  private static final double OUTLIER = 0.01;
  private static final double STRAGGLER = 0.05;
  private static final int FEWEST_READINGS = 5;

  private Screening() {}

  /**
   * Screens the kept readings of a campaign.
   *
   * @param campaign blocks and readings
   * @return flags in file order, those of blocks last; empty when nothing stands out
   */
  public static List<ScreeningFlag> flags(Campaign campaign) {
    Map<String, List<Reading>> byBlock = new LinkedHashMap<>();
    for (Reading reading : campaign.readings()) {
      if (!campaign.isExcluded(reading)) {
        byBlock.computeIfAbsent(reading.block(), block -> new ArrayList<>()).add(reading);
      }
    }
    List<ScreeningFlag> flags = new ArrayList<>();
    byBlock.forEach((block, readings) -> outliers(campaign, block, readings, flags));
    variance(campaign, byBlock, flags);
    return List.copyOf(flags);
  }

  private static double[] responses(Campaign campaign, List<Reading> readings) {
    var zero = campaign.dossier().identity().zeroFrequencyHz();
    double[] values = new double[readings.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = readings.get(i).response(zero);
    }
    return values;
  }

  private static boolean differ(double[] values) {
    for (double value : values) {
      if (value != values[0]) {
        return true;
      }
    }
    return false;
  }

  private static void outliers(
      Campaign campaign, String block, List<Reading> readings, List<ScreeningFlag> flags) {
    double[] values = responses(campaign, readings);
    if (values.length < FEWEST_READINGS || !differ(values)) {
      return;
    }
    int most = Math.max(1, values.length / 4);
    GeneralizedEsd strict = GeneralizedEsd.test(values, most, OUTLIER);
    GeneralizedEsd lenient = GeneralizedEsd.test(values, most, STRAGGLER);
    int found = Math.max(strict.outliers(), lenient.outliers());
    for (int k = 0; k < found; k++) {
      boolean outlier = k < strict.outliers();
      GeneralizedEsd test = outlier ? strict : lenient;
      GeneralizedEsd.Step step = test.steps().get(k);
      // ESD counts outliers up to the last step that exceeds its limit: that step decides for all.
      GeneralizedEsd.Step deciding = test.steps().get(test.outliers() - 1);
      Reading reading = readings.get(step.index());
      double mean = 0;
      for (double value : values) {
        mean += value / values.length;
      }
      flags.add(
          new ScreeningFlag(
              ScreeningFlag.Kind.OUTLIER,
              block,
              Optional.of(reading.file()),
              OptionalInt.of(reading.line()),
              deciding.statistic(),
              deciding.critical(),
              outlier ? OUTLIER : STRAGGLER,
              String.format(
                  Locale.ROOT,
                  "Block %s, %s line %d: response %.1f against a block mean of %.1f from %d readings"
                      + " is %s (%sESD %.2f, critical %.2f at %.0f %%).%s",
                  block,
                  reading.file(),
                  reading.line(),
                  values[step.index()],
                  mean,
                  values.length,
                  outlier ? "an outlier" : "a straggler",
                  test.outliers() > 1 ? "one of " + test.outliers() + " together, " : "",
                  deciding.statistic(),
                  deciding.critical(),
                  100 * (outlier ? OUTLIER : STRAGGLER),
                  reading.note().map(note -> " Note: " + note + ".").orElse(""))));
    }
  }

  private static void variance(
      Campaign campaign, Map<String, List<Reading>> byBlock, List<ScreeningFlag> flags) {
    List<String> names = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    List<Integer> counts = new ArrayList<>();
    byBlock.forEach(
        (block, readings) -> {
          double[] values = responses(campaign, readings);
          if (values.length >= FEWEST_READINGS) {
            double mean = 0;
            for (double value : values) {
              mean += value / values.length;
            }
            double squares = 0;
            for (double value : values) {
              squares += (value - mean) * (value - mean);
            }
            names.add(block);
            // Relative to the block's mean: scatter in proportion to the response is no outlier.
            variances.add(squares / (values.length - 1) / (mean * mean));
            counts.add(values.length);
          }
        });
    if (names.size() < 3 || variances.stream().allMatch(v -> v == 0)) {
      return;
    }
    CochranVariance test =
        CochranVariance.test(
            variances.stream().mapToDouble(Double::doubleValue).toArray(),
            counts.stream().mapToInt(Integer::intValue).toArray());
    int typical = (int) Math.round(counts.stream().mapToInt(Integer::intValue).average().orElse(0));
    double critical = CochranVariance.criticalValue(names.size(), typical, OUTLIER);
    if (test.statistic() > critical) {
      String block = names.get(test.index());
      flags.add(
          new ScreeningFlag(
              ScreeningFlag.Kind.VARIANCE,
              block,
              Optional.empty(),
              OptionalInt.empty(),
              test.statistic(),
              critical,
              OUTLIER,
              String.format(
                  Locale.ROOT,
                  "Block %s: its %d readings scatter by %.2f %%, more than the other blocks' (Cochran"
                      + " %.3f, critical %.3f at 1 %%).",
                  block,
                  counts.get(test.index()),
                  100 * Math.sqrt(variances.get(test.index())),
                  test.statistic(),
                  critical)));
    }
  }
}
