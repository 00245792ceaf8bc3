package fettle.statistics;

import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Quantiles and tails against mpmath. */
class QuantilesTest {
  // python3, mpmath 1.3 with 40 digits: tails by betainc and gammainc (regularized), quantiles by
  // findroot on them. Tolerance 1e-12.
  @Test
  void agreeWithMultiplePrecision() {
    assertRelative(2.7764451051977944, Quantiles.upperT(0.025, 4), 1e-12);
    assertRelative(34.867969321114773, Quantiles.upperT(0.0001, 2.5), 1e-12);
    assertRelative(4.3468313999078181, Quantiles.upperF(0.05, 3, 7), 1e-12);
    assertRelative(12.609357834823555, Quantiles.upperF(0.001, 1, 40), 1e-12);
    assertRelative(1.1454762260617692, Quantiles.upperChiSquared(0.95, 5), 1e-12);
    assertRelative(2.5758293035489008, Quantiles.upperNormal(0.005), 1e-12);
    assertRelative(8.0137560712866648e-6, Quantiles.tTail(12.5, 6), 1e-12);
    assertRelative(0.16785065605707482, Quantiles.tTwoTails(-1.5, 9), 1e-12);
    assertRelative(0.0064763446480248409, Quantiles.fTail(8.25, 2, 11), 1e-12);
    assertRelative(7.1217508628155771e-6, Quantiles.chiSquaredTail(60, 20), 1e-12);
    assertRelative(3.1908916729108962e-14, Quantiles.normalTail(7.5), 1e-12);
  }

  @Test
  void quantilesInvertTails() {
    for (double alpha : new double[] {1e-8, 0.003, 0.3, 0.9}) {
      assertRelative(alpha, Quantiles.normalTail(Quantiles.upperNormal(alpha)), 1e-11);
      assertRelative(alpha, Quantiles.tTail(Quantiles.upperT(alpha, 3.7), 3.7), 1e-11);
      assertRelative(alpha, Quantiles.fTail(Quantiles.upperF(alpha, 4, 9.5), 4, 9.5), 1e-11);
      assertRelative(
          alpha, Quantiles.chiSquaredTail(Quantiles.upperChiSquared(alpha, 6), 6), 1e-11);
    }
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> Quantiles.upperT(0.05, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("degreesOfFreedom is 0.0: it must be finite and above zero");
    assertThatThrownBy(() -> Quantiles.upperF(Double.NaN, 1, 2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("alpha is NaN: it must lie strictly between 0 and 1");
  }
}
