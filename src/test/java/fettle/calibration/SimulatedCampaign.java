package fettle.calibration;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.curve.CurveIdentity;
import fettle.policy.Policy;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.reading.Reading;
import fettle.reading.ReadingsCsv;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;

/**
 * A small simulated campaign: eight blocks from 150 to 500 HV10, four runs of three readings on
 * each, responses by the power law r = 60000 h^(−1/2) Hz with relative scatter of readings (0.4 %),
 * runs (0.3 %) and blocks (0.5 %). Two of the blocks, B3 and B6, are check blocks.
 *
 * @param seed seed of the noise; the same seed gives the same campaign
 */
public record SimulatedCampaign(long seed) {
  private static final double CONSTANT = 60_000;
  private static final int RUNS = 4;
  private static final int READINGS = 3;
  private static final double[] HARDNESS = {150, 190, 230, 280, 330, 380, 440, 500};

  /** The eight blocks, B1 to B8. */
  public List<ReferenceBlock> blocks() {
    List<ReferenceBlock> blocks = new ArrayList<>();
    for (int i = 0; i < HARDNESS.length; i++) {
      blocks.add(block(i));
    }
    return blocks;
  }

  private ReferenceBlock block(int i) {
    Random noise = new Random(31 * seed + i);
    Certificate certificate =
        certificate(
            Math.rint(10 * HARDNESS[i] * (1 + 0.004 * noise.nextGaussian())) / 10,
            "C-" + (i + 1),
            LocalDate.of(2026, 1, 15));
    return new ReferenceBlock(
        "B" + (i + 1),
        Optional.of("quenched and tempered steel"),
        i == 2 || i == 5 ? BlockRole.CHECK : BlockRole.FIT,
        OptionalDouble.of(16),
        OptionalDouble.of(5.1),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.of(210),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(certificate),
        Optional.empty());
  }

  /** A certificate on HV10 with U = 1.2 % (k = 2), a third of it shared by all blocks. */
  public static Certificate certificate(double certified, String number, LocalDate on) {
    return new Certificate(
        HardnessScale.parse("HV10", "test"),
        certified,
        0.012 * certified,
        2,
        OptionalDouble.of(0.002 * certified),
        Optional.of(number),
        Optional.of("invented laboratory"),
        Optional.of(on),
        Optional.empty(),
        Optional.of("bench 1"),
        OptionalDouble.of(0.002 * certified),
        OptionalInt.of(5));
  }

  /** The readings files of the four runs, {@code run-1.csv} to {@code run-4.csv}. */
  public byte[] run(int run) {
    Random noise = new Random(1_000_003 * seed + run);
    double shift = 0.003 * noise.nextGaussian();
    StringBuilder text = new StringBuilder("block,response,run,operator\n");
    for (int i = 0; i < HARDNESS.length; i++) {
      double scatter = 0.005 * new Random(7_919 * seed + i).nextGaussian();
      for (int j = 0; j < READINGS; j++) {
        double response =
            CONSTANT
                / Math.sqrt(HARDNESS[i])
                * (1 + shift + scatter + 0.004 * noise.nextGaussian());
        text.append(
            String.format(Locale.ROOT, "B%d,%.1f,run %d,Operator A%n", i + 1, response, run));
      }
    }
    return text.toString().replace("\r", "").getBytes(StandardCharsets.UTF_8);
  }

  /** Bytes of all four runs by file name. */
  public Map<String, byte[]> runs() {
    Map<String, byte[]> runs = new java.util.TreeMap<>();
    for (int run = 1; run <= RUNS; run++) {
      runs.put("run-" + run + ".csv", run(run));
    }
    return runs;
  }

  /** What the curve is for. */
  public static CurveIdentity identity(String name) {
    return new CurveIdentity(
        name,
        Optional.of("Simulated: «steel», 49 N"),
        "quenched and tempered steel",
        Method.UCI,
        HardnessScale.parse("HV10", "test"),
        ResponseKind.FREQUENCY_SHIFT,
        OptionalDouble.of(49.03),
        Optional.of("invented instrument"),
        Optional.of("invented probe"),
        OptionalDouble.empty());
  }

  /** The whole campaign without any folder. */
  public Campaign campaign(String name, Policy policy) {
    List<Reading> readings = new ArrayList<>();
    runs().forEach((file, bytes) -> readings.addAll(ReadingsCsv.read(bytes, file).readings()));
    return new Campaign(
        new Dossier(identity(name), Map.of(), policy), blocks(), readings, List.of());
  }
}
