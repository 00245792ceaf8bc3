package fettle.reading;

import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.block.BlocksCsv;
import fettle.refusal.InputRefusedException;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Good files damaged at random: each is read, or refused, and nothing else ever happens. */
class CsvFuzzTest {
  private record Good(String text, Consumer<byte[]> reader) {}

  private static final List<Good> FILES =
      List.of(
          new Good(
              """
              response,hardness,u_response,u_hardness,group,u_shared
              5012.5,241.3,2.5,1.6,M1,0.9
              4013.25,352.1,2.5,1.9,M1,0.9
              3500,420,0,2.2,"M,2",
              """,
              bytes -> PairsCsv.read(bytes, "f.csv")),
          new Good(
              """
              block;response;taken_at;run;operator;temperature_c;note
              B1;5012,5;2026-03-31T10:05;1;"A; B";21,5;
              B1;5013,5;2026-03-31 10:06:30;1;;21,5;"two
              lines"

              B-2;4013;;2;Ä;;"a ""quoted"" word"
              """,
              bytes -> ReadingsCsv.read(bytes, "f.csv")),
          new Good(
              BlocksCsv.template()
                  + "B1,HV10,241.5,3.2,2,0.6,K-1,Lab,2025-02-01,2030-02-01,M1,1.1,steel,check,"
                  + "16,0.9,0.3,H7,bar,210,2,0.29,5\r\n"
                  + "B1,HRC,21.5,0.5,2,,R-1,,,,,,,,,,,,,,,,\r\n"
                  + "B2,HBW 10/3000,230,4,2,,,,,,,,,,,,,,,,,,\r\n",
              bytes -> BlocksCsv.read(bytes, "f.csv")));

  private static final String[] PIECES = {
    ",",
    ";",
    "\t",
    "\"",
    "\"\"",
    "\n",
    "\r",
    "\r\n",
    " ",
    "-",
    "+",
    ".",
    "e",
    "1e999",
    "1e-999",
    "0",
    "NaN",
    "../",
    "CON",
    "\ufeff",
    "é",
    "😀",
    "\u202e",
    "\u001b[2J",
    "=",
    "2026-02-30",
    "HV10",
    "9".repeat(400),
    "response",
    "block"
  };

  @Test
  void readsOrRefusesWhateverComes() {
    Random random = new Random(20260331);
    int[] outcomes = new int[2];
    assertTimeout(
        Duration.ofSeconds(60),
        () -> {
          for (int i = 0; i < 12_000; i++) {
            Good good = FILES.get(i % FILES.size());
            byte[] bytes = mutated(good.text().getBytes(StandardCharsets.UTF_8), random);
            outcomes[isRead(good, bytes, i) ? 0 : 1]++;
          }
        });
    // Both ways are taken often, so that the damage is neither too light nor too heavy.
    assertTrue(outcomes[0] > 500, outcomes[0] + " read");
    assertTrue(outcomes[1] > 5_000, outcomes[1] + " refused");
  }

  private static boolean isRead(Good good, byte[] bytes, int number) {
    try {
      good.reader().accept(bytes);
      return true;
    } catch (InputRefusedException refused) {
      boolean harmless =
          refused.getMessage().codePoints().noneMatch(c -> c != '\n' && Character.isISOControl(c));
      assertTrue(harmless, "control characters in the message of mutation " + number);
      return false;
    } catch (RuntimeException | Error other) {
      throw new AssertionError(
          "mutation " + number + ": " + new String(bytes, StandardCharsets.ISO_8859_1), other);
    }
  }

  private static byte[] mutated(byte[] good, Random random) {
    byte[] bytes = good;
    for (int i = 1 + random.nextInt(3); i > 0; i--) {
      bytes = mutatedOnce(bytes, random);
    }
    return bytes;
  }

  private static byte[] mutatedOnce(byte[] bytes, Random random) {
    int at = random.nextInt(bytes.length + 1);
    int until = Math.min(bytes.length, at + random.nextInt(20));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, at);
    switch (random.nextInt(6)) {
      case 0 -> out.write(bytes, until, bytes.length - until);
      case 1 -> {
        out.write(bytes, at, until - at);
        out.write(bytes, at, bytes.length - at);
      }
      case 2 -> {
        out.write(random.nextInt(256));
        int rest = Math.min(bytes.length, at + 1);
        out.write(bytes, rest, bytes.length - rest);
      }
      case 3 -> {
        // A file cut off.
      }
      default -> {
        out.writeBytes(PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8));
        out.write(bytes, at, bytes.length - at);
      }
    }
    return out.toByteArray();
  }
}
