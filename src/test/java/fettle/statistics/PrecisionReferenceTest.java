package fettle.statistics;

import static fettle.statistics.Cases.assertNumber;
import static fettle.statistics.Cases.assertRelative;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import fettle.reference.ReferenceCase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Repeatability and reproducibility against ISO 5725-2 and ASTM E691. */
class PrecisionReferenceTest {
  // ISO 5725-2:1994 B.1, sulfur content of coal, unequal replicates; recomputed with 60 digits:
  // 1e-12, and 1e-7 where the file prints 8 digits.
  @Test
  void sulfurInCoal() {
    ReferenceCase file = Cases.load("outliers-precision/iso5725-2-sulfur-coal.json");
    for (int level = 0; level < 4; level++) {
      List<double[]> cells = new ArrayList<>();
      for (JsonNode laboratory : file.at("/data")) {
        JsonNode cell = laboratory.get(level);
        double[] values = new double[cell.size()];
        Arrays.setAll(values, j -> cell.get(j).doubleValue());
        cells.add(values);
      }
      PrecisionExperiment p = PrecisionExperiment.of(cells.toArray(double[][]::new));
      String at = "/expected/levels/" + level + "/";
      assertNumber(file, at + "general_mean", p.generalMean(), 1e-14);
      assertNumber(file, at + "s_r", p.repeatability(), 1e-13);
      assertNumber(file, at + "s_R", p.reproducibility(), 1e-13);
      assertNumber(file, at + "s_L", p.betweenCells(), 1e-11);
      assertNumber(file, at + "n_bar", p.effectiveCount(), 1e-11);
      double[] sd = Arrays.stream(p.cellVariances()).map(Math::sqrt).toArray();
      assertArrayEquals(file.column(at + "cell_means"), p.cellMeans(), 6e-8);
      assertArrayEquals(file.column(at + "cell_sds"), sd, 6e-8);
      assertNumber(
          file, at + "grubbs_max", GrubbsSingle.test(p.cellMeans(), Tail.UPPER).statistic(), 1e-7);
      assertNumber(
          file, at + "grubbs_min", GrubbsSingle.test(p.cellMeans(), Tail.LOWER).statistic(), 1e-7);
    }
  }

  // ASTM E691 glucose example; h and k to the 8 digits of the file.
  @Test
  void glucoseInSerum() {
    ReferenceCase file = Cases.load("outliers-precision/astm-e691-glucose.json");
    for (String material : List.of("A", "B", "C", "D", "E")) {
      PrecisionExperiment p = PrecisionExperiment.of(file.columns("/data/" + material));
      String at = "/expected/material_" + material + "/";
      assertNumber(file, at + "mean", p.generalMean(), 1e-11);
      assertNumber(file, at + "s_xbar", p.standardDeviationOfCellMeans(), 1e-11);
      assertNumber(file, at + "s_r", p.repeatability(), 1e-11);
      assertNumber(file, at + "s_R", p.reproducibility(), 1e-11);
      assertNumber(file, at + "r_2.8", p.repeatabilityLimit(), 1e-11);
      assertNumber(file, at + "R_2.8", p.reproducibilityLimit(), 1e-11);
      assertArrayEquals(file.column(at + "h"), p.mandelH(), 6e-8);
      assertArrayEquals(file.column(at + "k"), p.mandelK(), 6e-8);
    }
    assertNumber(
        file,
        "/expected/h_critical_0.5_percent_p8",
        PrecisionExperiment.criticalH(8, 0.005),
        1e-12);
    assertNumber(
        file,
        "/expected/k_critical_0.5_percent_p8_n3",
        PrecisionExperiment.criticalK(8, 3, 0.005),
        1e-12);
    // laboratory 4 stands out in material C, as the standard says
    PrecisionExperiment c = PrecisionExperiment.of(file.columns("/data/C"));
    assertTrue(c.mandelK()[3] > PrecisionExperiment.criticalK(8, 3, 0.005));
    assertEquals(3, CochranVariance.test(c.cellVariances(), c.cellCounts()).index());
  }

  @Test
  void rootMeanSquareOfKIsOne() {
    double[] k = PrecisionExperiment.of(new double[][] {{1, 2}, {4, 9}, {5, 5}}).mandelK();
    assertRelative(3, k[0] * k[0] + k[1] * k[1] + k[2] * k[2], 1e-14);
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> PrecisionExperiment.of(new double[][] {{1, 2}, {3}}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("cells[1] has 1 values: a precision experiment needs at least 2");
    assertThatThrownBy(() -> PrecisionExperiment.of(new double[][] {{1, 1}, {2, 2}}).mandelK())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("all cell variances are 0: k is not defined");
    assertThatThrownBy(() -> PrecisionExperiment.of(new double[][] {{1, 3}, {2, 2}}).mandelH())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("all cell means are equal: h is not defined");
  }
}
