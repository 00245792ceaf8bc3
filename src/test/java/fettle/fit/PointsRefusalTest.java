package fettle.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import fettle.fit.FitFailedException.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What can not come from a file: values that only a program can hand over. */
class PointsRefusalTest {
  private static final double[] X = {1, 2, 3};
  private static final double[] Y = {1, 2, 4};
  private static final double[] NONE = {0, 0, 0};
  private static final double[] ONE = {1, 1, 1};
  private static final double[][] FREE = {};

  private static void assertFails(Reason reason, String message, Executable action) {
    FitFailedException failure = assertThrows(FitFailedException.class, action);
    assertEquals(message, failure.getMessage());
    assertEquals(reason, failure.reason());
  }

  @Test
  void valuesThatAreNoNumbers() {
    assertFails(
        Reason.NOT_FINITE,
        "response of point 2 is NaN, not a number to fit",
        () -> Points.plain(new double[] {1, Double.NaN, 3}, Y));
    assertFails(
        Reason.NOT_FINITE,
        "hardness of point 3 is Infinity, not a number to fit",
        () -> Points.plain(X, new double[] {1, 2, Double.POSITIVE_INFINITY}));
    assertFails(
        Reason.NOT_FINITE,
        "shared effect of point 1 is NaN, not a number to fit",
        () -> Points.of(X, Y, NONE, ONE, FREE, new double[][] {{Double.NaN, 1, 1}}));
  }

  @Test
  void variancesThatAreNone() {
    assertFails(
        Reason.BAD_UNCERTAINTY,
        "the response variance of point 3 is -1.0; a finite value of 0 or above is needed",
        () -> Points.of(X, Y, new double[] {0, 0, -1}, ONE, FREE, FREE));
    assertFails(
        Reason.BAD_UNCERTAINTY,
        "point 2 (hardness 2.0) has no hardness uncertainty while others have one; it would be"
            + " taken as exact",
        () -> Points.of(X, Y, NONE, new double[] {1, 0, 1}, FREE, FREE));
  }

  @Test
  void modelThatIsNotFiniteAtItsStart() throws FitFailedException {
    FormulaModel explosive = new FormulaModel("explosive", 1, (x, b) -> b[0].times(x).exp());
    Points points = Points.plain(X, Y);
    assertFails(
        Reason.NOT_FINITE,
        "model explosive is not finite at its start",
        () -> CurveSolver.fit(explosive, points, new double[] {1e4}));
  }

  @Test
  void lengthsThatDiffer() {
    IllegalArgumentException failure =
        assertThrows(
            IllegalArgumentException.class, () -> Points.of(X, Y, NONE, new double[2], FREE, FREE));
    assertEquals("lengths 3, 3, 3, 2: equal lengths expected", failure.getMessage());
  }
}
