package fettle.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** The mixture, which uses the JDK alone, against Commons Statistics' normal distribution. */
class NormalMixtureSecondOpinionTest {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  @Test
  void upperTail() {
    for (double z = -8; z <= 37; z += 0.0625) {
      double expected = NORMAL.survivalProbability(z);
      assertEquals(
          expected,
          NormalMixture.upperTail(z),
          Math.max(5e-14, 4e-16 * z * z) * expected,
          "z " + z);
    }
  }

  @Test
  void halfWidthOfOneComponentIsTheNormalQuantile() {
    for (double p : new double[] {0.5, 0.6827, 0.9, 0.95, 0.99, 0.9999}) {
      NormalMixture one = new NormalMixture(1);
      one.add(3, 0, 2.5);
      double expected = 2.5 * NORMAL.inverseCumulativeProbability(0.5 + p / 2);
      assertEquals(expected, one.halfWidth(p), 1e-12 * expected);
    }
  }

  @Test
  void mixturesHoldWhatTheyPromise() {
    Random random = new Random(6);
    for (int n = 0; n < 200; n++) {
      int size = 1 + random.nextInt(30);
      NormalMixture mixture = new NormalMixture(size);
      double[][] parts = new double[size][3];
      double total = 0;
      for (double[] part : parts) {
        part[0] = random.nextDouble() + 1e-6;
        part[1] = random.nextGaussian();
        part[2] = StrictMath.exp(2 * random.nextGaussian());
        total += part[0];
        mixture.add(part[0], part[1], part[2]);
      }
      double half = mixture.halfWidth(0.95);
      double within = 0;
      for (double[] part : parts) {
        NormalDistribution normal = NormalDistribution.of(part[1], part[2]);
        within += part[0] / total * normal.probability(-half, half);
      }
      assertEquals(0.95, within, 1e-12);
      assertEquals(within, mixture.probabilityWithin(half), 1e-13);
    }
  }
}
