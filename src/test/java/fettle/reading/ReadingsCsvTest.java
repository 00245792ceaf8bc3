package fettle.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ReadingsCsvTest {
  private static ReadingsFile read(String text) {
    return ReadingsCsv.read(text.getBytes(StandardCharsets.UTF_8), "r.csv");
  }

  @Test
  void readsEveryColumnOfTheTemplate() {
    ReadingsFile file =
        read(
            ReadingsCsv.template()
                + "B1,5123.4,2026-03-31T14:05,2,A. B.,P1,21.5,78000,1.5,-2,down,\"first, good\"\n");
    assertEquals(
        new Reading(
            "r.csv",
            2,
            "B1",
            5123.4,
            Optional.of(LocalDateTime.of(2026, 3, 31, 14, 5)),
            Optional.of("2"),
            Optional.of("A. B."),
            Optional.of("P1"),
            OptionalDouble.of(21.5),
            OptionalDouble.of(78000),
            OptionalDouble.of(1.5),
            OptionalDouble.of(-2),
            Optional.of("down"),
            Optional.of("first, good")),
        file.readings().get(0));
  }

  @Test
  void templateNamesTheDocumentedColumns() {
    assertEquals(
        "block,response,taken_at,run,operator,probe,temperature_c,free_frequency_hz,x_mm,y_mm,"
            + "direction,note\n",
        ReadingsCsv.template());
  }

  @Test
  void tiesTheReadingsToTheirBytes() {
    // printf 'block,response\nB1,5\n' | sha256sum (coreutils 9.1)
    assertEquals(
        "7f54af75016d693f557b4980748a1171e836a2f3881fcd1c2017066f657a8f5f",
        read("block,response\nB1,5\n").sha256());
  }

  @Test
  void sortsReadingsByBlockAndRun() {
    List<Reading> readings =
        read("""
                block,response,run,free_frequency_hz
                B2,10,a,
                B1,20,a,
                B1,22,b,90
                B2,12,,
                B1,21,a,
                """)
            .readings();
    Exclusion exclusion = new Exclusion("r.csv", 5, "A. B.", "slipped", Instant.EPOCH);
    Exclusion other = new Exclusion("other.csv", 3, "A. B.", "slipped", Instant.EPOCH);
    List<BlockReadings> blocks = BlockReadings.group(readings, List.of(exclusion, other));
    assertThat(blocks).extracting(BlockReadings::block).containsExactly("B2", "B1");
    assertThat(blocks.get(0).kept()).extracting(Reading::line).containsExactly(2);
    assertThat(blocks.get(0).excluded()).extracting(Reading::line).containsExactly(5);
    assertThat(blocks.get(1).byRun())
        .extracting(run -> run.run().orElse("") + run.readings().size())
        .containsExactly("a2", "b1");
    // Response 22 at a zero of 100 and a free frequency of 90 becomes 32.
    assertThat(blocks.get(1).responses(OptionalDouble.of(100))).containsExactly(20, 32, 21);
    assertEquals(
        new BlockMean("B1", 3, 21, OptionalDouble.of(1), 20, 22),
        blocks.get(1).mean(OptionalDouble.empty()).orElseThrow());
    assertEquals(
        OptionalDouble.empty(),
        blocks.get(0).mean(OptionalDouble.empty()).orElseThrow().standardDeviation());
    assertEquals(
        Optional.empty(), new BlockReadings("B", List.of(), readings).mean(OptionalDouble.empty()));
  }
}
