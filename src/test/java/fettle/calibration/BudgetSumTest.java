package fettle.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.block.BlockRole;
import fettle.block.Certificate;
import fettle.block.ReferenceBlock;
import fettle.curve.BudgetLine;
import fettle.curve.CurveEvaluator;
import fettle.curve.CurveIdentity;
import fettle.fit.ModelId;
import fettle.policy.Policy;
import fettle.policy.TypeB;
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
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The lines of a budget, each from its own source by the law of propagation, against the total
 * uncertainty, which comes from the fit's own covariance: they are reached on two ways. The
 * campaign has everything: two reference machines, runs, operators, non-uniformity, Type B values.
 */
class BudgetSumTest {
  private static final HardnessScale SCALE = HardnessScale.parse("HV10", "test");

  @ParameterizedTest
  @CsvSource({"polynomial-2,2", "polynomial-2,5", "power,5", "log-polynomial-2,4"})
  void linesSumToTheTotal(String model, int runs) {
    CurveEvaluator evaluator = campaign(model, runs).chosen().orElseThrow().curve().evaluator();
    for (double response : new double[] {1950, 2300, 2700, 2950}) {
      for (double deviation : new double[] {Double.NaN, 60}) {
        List<BudgetLine> lines = evaluator.budget(response, 5, deviation);
        double all = 0;
        double curve = 0;
        for (BudgetLine line : lines) {
          double square = line.standardUncertainty() * line.standardUncertainty();
          all += square;
          curve += line.part() == BudgetLine.Part.CURVE ? square : 0;
        }
        double total = evaluator.resultAt(response, 5, deviation).standardUncertainty();
        double ofCurve = evaluator.curveAt(response).standardUncertainty();
        assertEquals(total, Math.sqrt(all), 1e-9 * total);
        assertEquals(ofCurve, Math.sqrt(curve), 1e-9 * ofCurve);
        assertTrue(lines.size() >= 13, lines.size() + " lines");
      }
    }
  }

  private static Analysis campaign(String model, int runs) {
    Random random = new Random(runs);
    List<ReferenceBlock> blocks = new ArrayList<>();
    List<Reading> readings = new ArrayList<>();
    double[] shift = random.doubles(runs, -0.004, 0.004).toArray();
    int line = 2;
    for (int i = 0; i < 9; i++) {
      double response = 1900 + 137.5 * i;
      double truth = 200 * StrictMath.pow(response / 2400, -2.1);
      double certified = truth * (1 + 0.008 * random.nextGaussian());
      blocks.add(block("B" + i, certified, i % 2 == 0 ? "machine one" : "machine two"));
      for (int k = 0; k < runs; k++) {
        for (int j = 0; j < 5; j++) {
          double value = response * (1 + shift[k] + 0.01 * random.nextGaussian());
          readings.add(reading(line++, "B" + i, value, "run " + k, k % 2 == 0 ? "anna" : "ben"));
        }
      }
    }
    TypeB typeB =
        new TypeB(
            OptionalDouble.of(0.003),
            OptionalDouble.of(0.002),
            OptionalDouble.of(0.001),
            OptionalDouble.of(0.0015));
    Policy policy =
        new Policy(
            "test",
            false,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            typeB,
            OptionalDouble.of(1),
            OptionalDouble.empty(),
            OptionalInt.empty(),
            OptionalInt.empty(),
            Map.of(),
            Optional.empty());
    CurveIdentity identity =
        new CurveIdentity(
            "budget",
            Optional.empty(),
            "invented",
            Method.UCI,
            SCALE,
            ResponseKind.FREQUENCY_SHIFT,
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty());
    return Calibration.analyse(
        new Campaign(new Dossier(identity, Map.of(), policy), blocks, readings, List.of()),
        Optional.of(new ModelChoice(new ModelId(model), "test", "the budget is wanted")));
  }

  private static ReferenceBlock block(String id, double certified, String machine) {
    Certificate certificate =
        new Certificate(
            SCALE,
            certified,
            0.024 * certified,
            2,
            OptionalDouble.of(0.004 * certified),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(machine),
            OptionalDouble.of(0.007 * certified),
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

  private static Reading reading(
      int line, String block, double response, String run, String operator) {
    return new Reading(
        "test.csv",
        line,
        block,
        response,
        Optional.empty(),
        Optional.of(run),
        Optional.of(operator),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
