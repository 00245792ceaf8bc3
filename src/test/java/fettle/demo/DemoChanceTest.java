package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fettle.block.Certificate;
import fettle.reading.Reading;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Chance has the sizes the laboratory states, over many seeds. An observed variance of ν
 * independent normal values has the relative standard deviation √(2/ν); bounds are four of them,
 * for a standard deviation half of that.
 */
class DemoChanceTest {
  private static final List<DemoLaboratory> LABORATORIES =
      IntStream.range(1000, 1150).mapToObj(DemoLaboratory::withoutFaults).toList();
  private static final int SEEDS = LABORATORIES.size();
  private static final String[] UCI = {
    MemberPlan.AS_CAST, MemberPlan.ANNEALED, MemberPlan.TEMPERED
  };

  /** Mean departures of the readings from the expected responses, by run, and their scatter. */
  private record Departures(
      double[] runMeans, double withinSquares, int withinFreedom, int perRun) {
    static Departures of(DemoLaboratory laboratory, String dossier, boolean relative) {
      Map<String, List<Double>> runs = new HashMap<>();
      for (SimulatedReading reading : laboratory.campaign(dossier).runs()) {
        double departure = reading.response() - reading.expected();
        runs.computeIfAbsent(reading.reading().run().orElseThrow(), r -> new ArrayList<>())
            .add(relative ? departure / reading.expected() : departure);
      }
      double[] means = new double[4];
      double squares = 0;
      int freedom = 0;
      int n = 0;
      for (int k = 0; k < 4; k++) {
        List<Double> run = runs.get("run-" + (k + 1));
        n = run.size();
        double mean = run.stream().mapToDouble(d -> d).sum() / n;
        squares += run.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
        freedom += n - 1;
        means[k] = mean;
      }
      return new Departures(means, squares, freedom, n);
    }
  }

  private static void assertDeviation(double sumOfSquares, int freedom, double expected) {
    assertThat(Math.sqrt(sumOfSquares / freedom) / expected)
        .isCloseTo(1, within(4 * Math.sqrt(2.0 / freedom) / 2));
  }

  @Test
  void uciReadingRunAndOperatorScatterAsStated() {
    double within = 0;
    int freedom = 0;
    double run = 0;
    double operator = 0;
    int perRun = 0;
    for (DemoLaboratory laboratory : LABORATORIES) {
      for (String dossier : UCI) {
        Departures seen = Departures.of(laboratory, dossier, true);
        double[] m = seen.runMeans();
        within += seen.withinSquares();
        freedom += seen.withinFreedom();
        // Runs 1 and 3, and 2 and 4, share an operator: half the squared difference is the run's.
        run += (m[0] - m[2]) * (m[0] - m[2]) / 2 + (m[1] - m[3]) * (m[1] - m[3]) / 2;
        if (dossier.equals(MemberPlan.AS_CAST)) {
          double difference = (m[0] + m[2] - m[1] - m[3]) / 2;
          operator += difference * difference / 2;
          perRun = seen.perRun();
        }
      }
    }
    assertDeviation(within, freedom, 0.008);
    double runSquare = 0.0035 * 0.0035 + 0.008 * 0.008 / perRun;
    assertDeviation(run, 6 * SEEDS, Math.sqrt(runSquare));
    assertDeviation(operator, SEEDS, Math.sqrt(0.003 * 0.003 + runSquare / 2));
  }

  @Test
  void reboundReadingRunAndOperatorScatterAsStated() {
    double within = 0;
    int freedom = 0;
    double run = 0;
    double operator = 0;
    int perRun = 0;
    for (DemoLaboratory laboratory : LABORATORIES) {
      Departures seen = Departures.of(laboratory, MemberPlan.AS_CAST_HBW, false);
      double[] m = seen.runMeans();
      within += seen.withinSquares();
      freedom += seen.withinFreedom();
      run += (m[0] - m[2]) * (m[0] - m[2]) / 2 + (m[1] - m[3]) * (m[1] - m[3]) / 2;
      double difference = (m[0] + m[2] - m[1] - m[3]) / 2;
      operator += difference * difference / 2;
      perRun = seen.perRun();
    }
    assertDeviation(within, freedom, 5.5);
    double runSquare = 2.5 * 2.5 + 5.5 * 5.5 / perRun;
    assertDeviation(run, 2 * SEEDS, Math.sqrt(runSquare));
    assertDeviation(operator, SEEDS, Math.sqrt(2.0 * 2.0 + runSquare / 2));
  }

  @Test
  void blocksOfEqualHardnessScatterByAboutOnePercent() {
    for (MemberPlan plan : MemberPlan.all()) {
      double squares = 0;
      int n = 0;
      for (DemoLaboratory laboratory : LABORATORIES) {
        DemoTruth truth = laboratory.truth(plan.name());
        for (SimulatedBlock block : laboratory.campaign(plan.name()).bronze()) {
          double response =
              plan.law().response(block.trueHardness(), block.elastic(), block.contactFactor());
          double apparent = truth.trueHardness(response) / block.trueHardness() - 1;
          squares += apparent * apparent;
          n++;
        }
      }
      // UCI: d ln HV = 2 (E_r/E') d ln E = 1.79 · 0.5 %, and 0.5 % from the contact area. Rebound:
      // d ln H = 0.8 (E*/E') d ln E = 0.66 · 0.5 %, and 0.95 % from the rate.
      boolean uci = plan.scale().symbol().equals("HV10");
      double expected = uci ? Math.hypot(1.79 * 0.005, 0.005) : Math.hypot(0.0033, 0.0095);
      // One percent more for the rounded sensitivities.
      assertThat(Math.sqrt(squares / n) / expected)
          .isCloseTo(1, within(4 / Math.sqrt(2.0 * n) + 0.01));
    }
  }

  @Test
  void certifiedValuesCarryASharedAndAnIndividualErrorAsStated() {
    double individual = 0;
    int freedom = 0;
    double shared = 0;
    int n = 0;
    for (DemoLaboratory laboratory : LABORATORIES) {
      List<Double> errors = new ArrayList<>();
      for (String dossier : UCI) {
        for (SimulatedBlock block : laboratory.campaign(dossier).bronze()) {
          Certificate certificate = block.block().certificates().get(0);
          errors.add(certificate.certified() / block.trueHardness() - 1);
          assertThat(certificate.standardUncertainty() / certificate.certified())
              .isCloseTo(0.01, within(0.0001));
          assertThat(certificate.sharedUncertainty().orElseThrow() / certificate.certified())
              .isCloseTo(0.008, within(0.0001));
        }
      }
      n = errors.size();
      double mean = errors.stream().mapToDouble(e -> e).sum() / n;
      individual += errors.stream().mapToDouble(e -> (e - mean) * (e - mean)).sum();
      freedom += n - 1;
      shared += mean * mean;
    }
    assertDeviation(individual, freedom, 0.006);
    assertDeviation(shared, SEEDS, Math.sqrt(0.008 * 0.008 + 0.006 * 0.006 / n));
  }

  @Test
  void hardnessVariesOverAFaceByLessThanHalfAPercent() {
    double squares = 0;
    int n = 0;
    for (DemoLaboratory laboratory : LABORATORIES) {
      for (SimulatedBlock block : laboratory.campaign(MemberPlan.AS_CAST).bronze()) {
        double face = 0;
        List<Place> grid = block.face().grid();
        for (Place place : grid) {
          double departure = block.field().at(place);
          face += departure;
          squares += departure * departure;
          n++;
        }
        assertThat(face / grid.size()).isCloseTo(0, within(1e-12));
      }
    }
    // 0.3 % over an unbounded face; less on this one, since the waves are nearly as long.
    assertThat(Math.sqrt(squares / n)).isBetween(0.002, 0.003);
  }

  @Test
  void readingsOfABlockAreNotBiased() {
    for (DemoDossier dossier : LABORATORIES.get(0).dossiers()) {
      double sum = 0;
      double squares = 0;
      for (DemoLaboratory laboratory : LABORATORIES) {
        DemoTruth truth = laboratory.truth(dossier.name());
        Map<String, List<Double>> responses = new HashMap<>();
        for (Reading reading : laboratory.readings(dossier.name())) {
          if (reading.block().startsWith("N")) {
            responses
                .computeIfAbsent(reading.block(), b -> new ArrayList<>())
                .add(reading.response(dossier.zeroFrequencyHz()));
          }
        }
        double mean = 0;
        for (Map.Entry<String, List<Double>> block : responses.entrySet()) {
          double response = block.getValue().stream().mapToDouble(r -> r).sum() / 12;
          double known = truth.trueHardnessOf(block.getKey());
          mean += Math.log(truth.trueHardness(response) / known) / responses.size();
        }
        sum += mean / SEEDS;
        squares += mean * mean / SEEDS;
      }
      double standardError = Math.sqrt((squares - sum * sum) / SEEDS);
      assertThat(sum).isCloseTo(0, within(4 * standardError));
      // Run and operator effects of either instrument are worth less than 1 % of the hardness.
      assertThat(standardError * Math.sqrt(SEEDS)).isBetween(0.004, 0.012);
    }
  }
}
