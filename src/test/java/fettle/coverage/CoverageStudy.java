package fettle.coverage;

import fettle.fit.FitFailedException;
import java.util.Locale;

/**
 * Prints the tables of docs/coverage.md. Run from the command line, for about an hour on two cores:
 *
 * <pre>
 *   mvn -q test-compile
 *   java -cp target/classes:target/test-classes:target/lib/* fettle.coverage.CoverageStudy 20000 2000
 * </pre>
 */
final class CoverageStudy {
  private static final String[] MODELS = {
    "polynomial-1", "polynomial-2", "power", "log-polynomial-2"
  };
  private static final double U = 0.007;
  private static final double RUN = 0.006;

  private CoverageStudy() {}

  /**
   * Measures and prints.
   *
   * @param args campaigns for pairs, campaigns for dossiers
   * @throws FitFailedException if a simulated campaign has no fit, which would be a finding
   */
  public static void main(String[] args) throws FitFailedException {
    pairs(Integer.parseInt(args[0]));
    dossiers(Integer.parseInt(args[1]));
  }

  private static void pairs(int campaigns) throws FitFailedException {
    System.out.println("| model | independent certificates | shared certificates |");
    System.out.println("|---|---|---|");
    for (String model : MODELS) {
      System.out.printf(
          Locale.ROOT,
          "| %s | %.2f %% | %.2f %% |%n",
          model,
          100 * PairsCoverage.coverage(model, 7, false, campaigns, 42),
          100 * PairsCoverage.coverage(model, 7, true, campaigns, 43));
    }
    System.out.println();
  }

  private static void dossiers(int campaigns) {
    System.out.println("| model | runs | τ/u | curve | new piece | median U of the curve |");
    System.out.println("|---|---|---|---|---|---|");
    for (String model : MODELS) {
      for (int runs : new int[] {1, 4, 8}) {
        for (double ratio : new double[] {0, 0.5, 1, 2, 4}) {
          int readings = runs == 1 ? 8 : runs == 4 ? 3 : 2;
          var shares =
              new DossierCoverage(model, 7, runs, readings, U, ratio * U, runs == 1 ? 0 : RUN)
                  .measure(campaigns, 11);
          System.out.printf(
              Locale.ROOT,
              "| %s | %d | %.1f | %.1f %% | %.1f %% | %.2f %% |%n",
              model,
              runs,
              ratio,
              100 * shares.curve(),
              100 * shares.newPiece(),
              100 * shares.medianHalfWidth());
        }
      }
    }
  }
}
