package fettle.coverage;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.calibration.Analysis;
import fettle.calibration.Calibration;
import fettle.calibration.Campaign;
import fettle.calibration.Dossier;
import fettle.calibration.ModelChoice;
import fettle.curve.CurveEvaluator;
import fettle.curve.CurveIdentity;
import fettle.curve.HardnessEstimate;
import fettle.fit.ModelId;
import fettle.policy.Policy;
import fettle.quantity.HardnessScale;
import fettle.quantity.Method;
import fettle.quantity.ResponseKind;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.SharedStateContinuousSampler;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Coverage of the curve's interval, and of a result's interval for a new piece read five times, on
 * whole simulated dossiers: blocks scatter about the family's curve by τ, certificates err, runs
 * shift all blocks together, readings scatter. Nothing of the truth is told to the analysis.
 *
 * @param model model that generates and is fitted
 * @param blocks fitting blocks
 * @param runs runs; each block is read in every run
 * @param readings readings a block and run
 * @param u relative standard uncertainty of each certificate, independent part
 * @param tau relative between-block scatter
 * @param run relative standard deviation of run effects
 */
record DossierCoverage(
    String model, int blocks, int runs, int readings, double u, double tau, double run) {
  private static final double REPEATABILITY = 0.01;
  private static final double LOW = 1900;
  private static final double HIGH = 3000;

  /** Shares of intervals that hold the truth, and the median factors U / u. */
  record Shares(double curve, double newPiece, double medianHalfWidth) {}

  Shares measure(int campaigns, long seed) {
    UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
    SharedStateContinuousSampler normal = ZigguratSampler.NormalizedGaussian.of(random);
    PairsCoverage.Law law = PairsCoverage.lawOf(model);
    int curveHeld = 0;
    int pieceHeld = 0;
    double[] widths = new double[campaigns];
    for (int c = 0; c < campaigns; c++) {
      CurveEvaluator evaluator = campaign(normal, law).chosen().orElseThrow().curve().evaluator();
      for (int k = 0; k < 5; k++) {
        double at = LOW + (0.05 + 0.225 * k) * (HIGH - LOW);
        HardnessEstimate estimate = evaluator.curveAt(at);
        curveHeld +=
            Math.abs(estimate.hardness() - law.at(at)) <= estimate.expandedUncertainty() ? 1 : 0;
        widths[c] += estimate.expandedUncertainty() / estimate.hardness() / 5;
        // A piece whose hardness is off the family's curve by τ, read in a run of its own.
        double truth = law.at(at) * (1 + tau * normal.sample());
        double shift = 1 + run * normal.sample();
        double mean = at * shift + at * REPEATABILITY * normal.sample() / Math.sqrt(5);
        HardnessEstimate result = evaluator.resultAt(mean, 5, Double.NaN);
        pieceHeld += Math.abs(result.hardness() - truth) <= result.expandedUncertainty() ? 1 : 0;
      }
    }
    java.util.Arrays.sort(widths);
    return new Shares(
        curveHeld / (5.0 * campaigns), pieceHeld / (5.0 * campaigns), widths[campaigns / 2]);
  }

  private Analysis campaign(SharedStateContinuousSampler normal, PairsCoverage.Law law) {
    double[] shift = new double[runs];
    for (int k = 0; k < runs; k++) {
      shift[k] = run * normal.sample();
    }
    List<ReferenceBlock> all = new ArrayList<>();
    List<Reading> list = new ArrayList<>();
    int line = 2;
    for (int i = 0; i < blocks; i++) {
      double response = LOW + i * (HIGH - LOW) / (blocks - 1);
      double truth = law.at(response) * (1 + tau * normal.sample());
      double certified = truth * (1 + u * normal.sample());
      String id = "B" + i;
      all.add(block(id, certified, 2 * u * certified));
      for (int k = 0; k < runs; k++) {
        for (int j = 0; j < readings; j++) {
          double value = response * (1 + shift[k] + REPEATABILITY * normal.sample());
          list.add(reading(line++, id, value, "run " + k));
        }
      }
    }
    Dossier dossier = new Dossier(IDENTITY, Map.of(), Policy.EMPTY);
    return Calibration.analyse(
        new Campaign(dossier, all, list, List.of()),
        Optional.of(new ModelChoice(new ModelId(model), "study", "the model that generates")));
  }

  private static final HardnessScale SCALE = HardnessScale.parse("HV10", "study");

  private static final CurveIdentity IDENTITY =
      new CurveIdentity(
          "coverage",
          Optional.empty(),
          "simulated",
          Method.UCI,
          SCALE,
          ResponseKind.FREQUENCY_SHIFT,
          OptionalDouble.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty());

  private static ReferenceBlock block(String id, double certified, double expanded) {
    Certificate certificate =
        new Certificate(
            SCALE,
            certified,
            expanded,
            2,
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalInt.empty());
    return new ReferenceBlock(
        id,
        Optional.empty(),
        BlockRole.FIT,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(certificate),
        Optional.empty());
  }

  private static Reading reading(int line, String block, double response, String run) {
    return new Reading(
        "study.csv",
        line,
        block,
        response,
        Optional.empty(),
        Optional.of(run),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
