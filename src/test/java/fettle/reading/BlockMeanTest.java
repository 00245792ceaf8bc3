package fettle.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * NIST/ITL Statistical Reference Datasets, univariate summary statistics: Mavro, NumAcc1 and
 * NumAcc3 with their certified means and standard deviations. The data stand in this package's test
 * resources in readings form; see the notice there.
 */
class BlockMeanTest {
  private static BlockMean of(String resource) throws IOException {
    try (InputStream in = BlockMeanTest.class.getResourceAsStream(resource)) {
      List<Reading> readings = ReadingsCsv.read(in.readAllBytes(), resource).readings();
      List<BlockReadings> blocks = BlockReadings.group(readings, List.of());
      assertEquals(1, blocks.size());
      return blocks.get(0).mean(OptionalDouble.empty()).orElseThrow();
    }
  }

  @Test
  void reproducesMavro() throws IOException {
    BlockMean mean = of("strd-mavro.csv");
    assertEquals(50, mean.n());
    assertEquals(2.00185600000000, mean.mean(), 5e-15);
    assertEquals(0.000429123454003053, mean.standardDeviation().orElseThrow(), 5e-16);
    assertEquals(2.0013, mean.minimum());
    assertEquals(2.0027, mean.maximum());
  }

  @Test
  void reproducesNumAcc1() {
    BlockMean mean = BlockMean.of("NumAcc1", 10000001, 10000003, 10000002);
    assertEquals(10000002, mean.mean());
    assertEquals(1, mean.standardDeviation().orElseThrow());
  }

  @Test
  void reproducesNumAcc3WhoseDigitsNearlyCancel() throws IOException {
    BlockMean mean = of("strd-numacc3.csv");
    assertEquals(1001, mean.n());
    assertEquals(1000000.2, mean.mean(), 2e-10);
    // The data are 7-digit offsets rounded to double: their own error is 1e-10 of the spread.
    assertEquals(0.1, mean.standardDeviation().orElseThrow(), 1e-10);
  }

  @Test
  void givesNoStandardDeviationForOneReading() {
    assertTrue(BlockMean.of("B1", 5).standardDeviation().isEmpty());
    assertThrows(IllegalArgumentException.class, () -> BlockMean.of("B1"));
    assertThrows(IllegalArgumentException.class, () -> BlockMean.of("B1", 1, Double.NaN));
    assertThrows(
        IllegalArgumentException.class,
        () -> new BlockMean("B1", 2, 1, OptionalDouble.empty(), 1, 1));
  }
}
