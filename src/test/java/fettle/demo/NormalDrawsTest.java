package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class NormalDrawsTest {
  // First outputs of xoshiro256++ from the state 1, 2, 3, 4, as in the reference code of its
  // authors (prng.di.unimi.it); the first follows by hand: rotl(1 + 4, 23) + 1 = 5·2^23 + 1.
  @Test
  void generatorIsTheOneNamed() {
    UniformRandomProvider source = RandomSource.XO_SHI_RO_256_PP.create(new long[] {1, 2, 3, 4});
    assertThat(source.nextLong()).isEqualTo(41943041L);
    assertThat(source.nextLong()).isEqualTo(58720359L);
    assertThat(source.nextLong()).isEqualTo(3588806011781223L);
    assertThat(source.nextLong()).isEqualTo(3591011842654386L);
  }

  @Test
  void normalDrawsHaveTheMomentsOfTheNormalDistribution() {
    int n = 200_000;
    NormalDraws draws = NormalDraws.of(1, "moments");
    double[] x = IntStream.range(0, n).mapToDouble(i -> draws.normal(2)).toArray();
    double mean = 0;
    double second = 0;
    double fourth = 0;
    int outside = 0;
    for (double value : x) {
      mean += value / n;
      second += value * value / n;
      fourth += value * value * value * value / n;
      outside += Math.abs(value) > 2 * 1.959963984540054 ? 1 : 0;
    }
    // Four standard errors: σ/√n, σ²√(2/n), σ⁴√(96/n), √(0.05·0.95/n).
    assertThat(mean).isCloseTo(0, within(4 * 2 / Math.sqrt(n)));
    assertThat(second).isCloseTo(4, within(4 * 4 * Math.sqrt(2.0 / n)));
    assertThat(fourth).isCloseTo(48, within(4 * 16 * Math.sqrt(96.0 / n)));
    assertThat(outside / (double) n).isCloseTo(0.05, within(4 * Math.sqrt(0.0475 / n)));
  }

  @Test
  void purposesHaveTheirOwnSequences() {
    double first = NormalDraws.of(7, "a").normal(1);
    assertThat(NormalDraws.of(7, "a").normal(1)).isEqualTo(first);
    assertThat(NormalDraws.of(7, "b").normal(1)).isNotEqualTo(first);
    assertThat(NormalDraws.of(8, "a").normal(1)).isNotEqualTo(first);
  }

  @Test
  void everyPlaceInAShuffleIsEquallyLikely() {
    NormalDraws draws = NormalDraws.of(3, "shuffle");
    int[][] count = new int[4][4];
    int n = 40_000;
    for (int i = 0; i < n; i++) {
      List<Integer> order = draws.shuffled(List.of(0, 1, 2, 3));
      for (int place = 0; place < 4; place++) {
        count[place][order.get(place)]++;
      }
    }
    for (int[] row : count) {
      for (int cell : row) {
        // 4.5 standard deviations of a binomial count, for 16 cells together.
        assertThat(cell).isCloseTo(n / 4, within((int) (4.5 * Math.sqrt(n * 0.1875))));
      }
    }
  }
}
