package fettle.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.fit.CurveFit;
import fettle.fit.CurveSolver;
import fettle.fit.FitFailedException;
import fettle.fit.ModelId;
import fettle.fit.Points;
import fettle.fit.ResponseModel;
import java.util.List;
import java.util.Random;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each block predicted by the others, against the plain definition. */
class LeaveOneOutTest {
  private static final int M = 9;

  private record Data(double[] r, double[] h, double[] vr, double[] vh, double[] c) {}

  private static Data draw(long seed, boolean uncertainResponses) {
    Random random = new Random(seed);
    Data data = new Data(new double[M], new double[M], new double[M], new double[M], new double[M]);
    for (int i = 0; i < M; i++) {
      double xi = 100 + 40 * i;
      double truth = 80 + 1.1 * xi;
      data.vr[i] = uncertainResponses ? 1 : 0;
      data.vh[i] = 1 + 0.2 * i;
      data.c[i] = 1.5 + 0.1 * i;
      data.r[i] = xi + (uncertainResponses ? random.nextGaussian() : 0);
      data.h[i] = truth + 3 * random.nextGaussian();
    }
    return data;
  }

  private static double[] without(double[] values, int left) {
    double[] rest = new double[values.length - 1];
    System.arraycopy(values, 0, rest, 0, left);
    System.arraycopy(values, left + 1, rest, left, rest.length - left);
    return rest;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void againstFittingTheOthersWithTheirOwnScatter(long seed) throws FitFailedException {
    Data data = draw(seed, true);
    Points points = Points.of(data.r, data.h, data.vr, data.vh, new double[0][], new double[0][]);
    ResponseModel line = new ModelId("polynomial-1").bind(data.r);
    List<PredictedBlock> predictions = LeaveOneOut.predict(line, points, ScatterScale.ABSOLUTE);
    double squares = 0;
    for (int i = 0; i < M; i++) {
      Points others =
          Points.of(
              without(data.r, i),
              without(data.h, i),
              without(data.vr, i),
              without(data.vh, i),
              new double[0][],
              new double[0][]);
      BetweenBlockScatter scatter = BetweenBlockScatter.of(line, others, ScatterScale.ABSOLUTE);
      double tau = scatter.restricted();
      CurveFit fit = CurveSolver.fit(line, scatter.pointsAtRestricted(others));
      double[] out = new double[4];
      line.linearise(data.r[i], fit.beta(), out);
      PredictedBlock block = predictions.get(i);
      double error = out[0] - data.h[i];
      double u =
          Math.sqrt(
              fit.varianceOfCurveAt(data.r[i])
                  + out[1] * out[1] * data.vr[i]
                  + data.vh[i]
                  + tau * tau);
      // τ stands to 1e-5 in τ / (τ + unit), and the curve moves with it by less.
      assertEquals(error, block.error(), 1e-4 * u, "block " + i);
      assertEquals(u, block.standardUncertainty(), 1e-3 * u, "block " + i);
      assertEquals(error / u, block.z(), 2e-3, "block " + i);
      assertEquals(i == 0 || i == M - 1, block.extrapolated());
      squares += error * error;
    }
    assertEquals(Math.sqrt(squares / M), LeaveOneOut.rms(predictions), 1e-3);
  }

  @Test
  void errorsSharedByTheBlockAndTheOthersCancel() throws FitFailedException {
    // A line with exact responses is linear: the error is a sum of w_j h_j − h_i, and its variance
    // follows from the whole dense covariance of all blocks.
    Data data = draw(7, false);
    Points points =
        Points.of(data.r, data.h, data.vr, data.vh, new double[0][], new double[][] {data.c});
    ResponseModel line = new ModelId("polynomial-1").bind(data.r);
    List<PredictedBlock> predictions = LeaveOneOut.predict(line, points, null);
    SimpleMatrix whole = SimpleMatrix.diag(data.vh);
    SimpleMatrix shared = new SimpleMatrix(M, 1, true, data.c);
    whole = whole.plus(shared.mult(shared.transpose()));
    for (int i = 0; i < M; i++) {
      SimpleMatrix v = new SimpleMatrix(M - 1, M - 1);
      SimpleMatrix x = new SimpleMatrix(M - 1, 2);
      for (int j = 0; j < M - 1; j++) {
        int a = j < i ? j : j + 1;
        x.set(j, 0, 1);
        x.set(j, 1, data.r[a]);
        for (int k = 0; k < M - 1; k++) {
          v.set(j, k, whole.get(a, k < i ? k : k + 1));
        }
      }
      SimpleMatrix xv = x.transpose().mult(v.invert());
      SimpleMatrix at = new SimpleMatrix(1, 2, true, 1, data.r[i]);
      SimpleMatrix weights = at.mult(xv.mult(x).invert()).mult(xv);
      SimpleMatrix all = new SimpleMatrix(M, 1);
      all.set(i, 0, -1);
      for (int j = 0; j < M - 1; j++) {
        all.set(j < i ? j : j + 1, 0, weights.get(0, j));
      }
      double error = all.transpose().mult(new SimpleMatrix(M, 1, true, data.h)).get(0, 0);
      double variance = all.transpose().mult(whole).mult(all).get(0, 0);
      PredictedBlock block = predictions.get(i);
      assertEquals(error, block.error(), 1e-6, "block " + i);
      assertEquals(Math.sqrt(variance), block.standardUncertainty(), 1e-8, "block " + i);
    }
  }
}
