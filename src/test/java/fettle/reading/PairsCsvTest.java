package fettle.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.table.DecimalText;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PairsCsvTest {
  private static Pairs read(String text) {
    return PairsCsv.read(text.getBytes(StandardCharsets.UTF_8), "pairs.csv");
  }

  @Test
  void readsPlainPairs() {
    Pairs pairs = read("hardness,response,remark\n-2,1e-3,x\n3.50,-4,\n");
    assertFalse(pairs.hasHardnessUncertainties());
    assertFalse(pairs.hasResponseUncertainties());
    assertThat(pairs.points()).extracting(p -> p.response().value()).containsExactly(0.001, -4.0);
    assertThat(pairs.points()).extracting(p -> p.hardness().value()).containsExactly(-2.0, 3.5);
    assertEquals("3.50", pairs.points().get(1).hardness().written());
  }

  @Test
  void readsUncertaintiesAndGroups() {
    Pairs pairs =
        read(
            """
            response;hardness;u_response;u_hardness;group;u_shared
            5000,25;240;0;1,5;M1;1,5
            4000;350;2;2,5;M1;
            """);
    assertTrue(pairs.hasHardnessUncertainties());
    assertTrue(pairs.hasResponseUncertainties());
    DecimalText whole = new DecimalText("1,5", 1.5, new BigDecimal("1.5"));
    assertEquals(
        new Pair(
            2,
            new DecimalText("5000,25", 5000.25, new BigDecimal("5000.25")),
            new DecimalText("240", 240, new BigDecimal("240")),
            Optional.of(new DecimalText("0", 0, BigDecimal.ZERO)),
            Optional.of(whole),
            Optional.of("M1"),
            Optional.of(whole)),
        pairs.points().get(0));
    assertEquals(Optional.empty(), pairs.points().get(1).sharedUncertainty());
  }

  @Test
  void keepsMoreDigitsThanADoubleHas() {
    Pairs pairs = read("response,hardness\n1.000000000000000000001,2\n1,3\n");
    assertThat(pairs.points().get(0).response().exact())
        .isGreaterThan(pairs.points().get(1).response().exact());
    assertEquals(1, pairs.points().get(0).response().value());
  }

  @Test
  void takesEmptyUncertaintyColumnsForNone() {
    Pairs pairs =
        read("response,hardness,u_response,u_hardness,group,u_shared\n1,2,,,,\n2,3,,,,\n");
    assertFalse(pairs.hasHardnessUncertainties());
  }

  @Test
  void holdsUncertaintiesForAllPointsOrForNone() {
    Pair with = read("response,hardness,u_hardness\n1,2,1\n2,3,1\n").points().get(0);
    Pair without = read("response,hardness\n1,2\n2,3\n").points().get(0);
    assertThrows(IllegalArgumentException.class, () -> new Pairs("x", List.of(with, without)));
    assertThrows(IllegalArgumentException.class, () -> new Pairs("x", List.of(with)));
  }
}
