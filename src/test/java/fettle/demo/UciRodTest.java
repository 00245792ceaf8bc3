package fettle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UciRodTest {
  /** Steel rod 65 mm, diameter 3 mm, second mode. */
  private static final UciRod ROD = new UciRod(65, 3, 2, 210, 7850);

  private static final ElasticConstants TITANIUM = new ElasticConstants(114, 0.34);

  // Independent solution of the same equation in Python, steel specimen, β = 1.012:
  // scipy.optimize.brentq(lambda d: (2*pi+d)*sin(d) - K*cos(d), 0, pi/2, xtol=1e-15),
  // K = k L / (E A); shifts rounded to 1 Hz.
  @ParameterizedTest
  @CsvSource({
    "9.8, 100, 1810", "9.8, 200, 1292", "9.8, 300, 1059", "9.8, 500, 824", "9.8, 800, 653",
    "49, 100, 3852", "49, 200, 2800", "49, 300, 2312", "49, 500, 1810", "49, 800, 1441",
    "98, 100, 5215", "98, 200, 3852", "98, 300, 3201", "98, 500, 2521", "98, 800, 2015"
  })
  void shiftAgreesWithAnIndependentRootFinder(double force, double hardness, double expected) {
    assertThat(ROD.shiftHz(hardness, force, ElasticConstants.STEEL, 1))
        .isCloseTo(expected, within(0.5));
  }

  // 79572.21773899772 = 2*sqrt(210e9/7850)/(2*0.065) in Python.
  @Test
  void freeFrequencyIsThatOfABarFreeAtBothEnds() {
    assertThat(ROD.freeFrequencyHz()).isCloseTo(79572.21773899772, within(1e-9));
  }

  @Test
  void smallShiftFollowsTheMassOfTheRod() {
    // First order: Δf = k / (4π² f₀ m), with k = β 2 E_r √(A_p/π) and m the mass of the rod. The
    // next order is 1/(2π) of δ, here below 2e-4.
    double hardness = 800;
    double force = 1e-3;
    double area = 0.1891 * force / hardness / 2 * 1e-6;
    double reduced = 1e9 / ((1 - 0.3 * 0.3) / 210 + (1 - 0.07 * 0.07) / 1141);
    double stiffness = 1.012 * 2 * reduced * Math.sqrt(area / Math.PI);
    double mass = 7850 * Math.PI * 0.0015 * 0.0015 * 0.065;
    double first = stiffness / (4 * Math.PI * Math.PI * ROD.freeFrequencyHz() * mass);
    assertThat(ROD.shiftHz(hardness, force, ElasticConstants.STEEL, 1) / first)
        .isCloseTo(1, within(2e-4));
  }

  @ParameterizedTest
  @CsvSource({"120", "250", "350", "440", "700"})
  void hardnessScalesWithTheSquareOfTheReducedModulus(double hardness) {
    double ratio =
        TITANIUM.reducedModulusGpa(ElasticConstants.DIAMOND)
            / ElasticConstants.STEEL.reducedModulusGpa(ElasticConstants.DIAMOND);
    double shift = ROD.shiftHz(hardness, 49, TITANIUM, 1);
    double onSteel = ROD.hardness(shift, 49, ElasticConstants.STEEL, 1);
    assertThat(onSteel * ratio * ratio / hardness).isCloseTo(1, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1e-3, 900", "9.8, 100", "98, 140", "98, 320", "98, 1", "5000, 20"})
  void hardnessIsTheInverseOfTheShift(double force, double hardness) {
    double shift = ROD.shiftHz(hardness, force, TITANIUM, 1.03);
    assertThat(ROD.hardness(shift, force, TITANIUM, 1.03) / hardness).isCloseTo(1, within(1e-11));
  }

  @Test
  void exponentStaysWhereUciProbesHaveIt() {
    // HV ∝ Δf^(−q) with q between 1.8 and 2.6: common practice, no source.
    for (double hardness = 120; hardness < 340; hardness += 20) {
      double x = ROD.shiftHz(hardness, 98, ElasticConstants.STEEL, 1);
      double y = ROD.shiftHz(hardness * 1.001, 98, ElasticConstants.STEEL, 1);
      assertThat(-Math.log(1.001) / Math.log(y / x)).isBetween(1.8, 2.6);
    }
  }

  @Test
  void shiftBeyondARigidContactIsRefused() {
    assertThatThrownBy(() -> ROD.hardness(20000, 98, TITANIUM, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("shiftHz 20000.0: above 0 and below 19893.05");
  }
}
