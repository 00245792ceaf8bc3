package fettle.library;

import static fettle.library.TestLaboratory.NAME;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.refusal.InputRefusedException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HistoryTest {
  @TempDir Path directory;
  private Path home;
  private Path file;
  private LaboratoryFolder laboratory;
  private List<String> lines;

  @BeforeEach
  void fill() throws IOException {
    home = directory.toRealPath();
    laboratory = TestLaboratory.filled(home);
    for (int line = 2; line < 5; line++) {
      laboratory.exclude(NAME, "run-1.csv", line, "A. Person", "slipped");
    }
    file = home.resolve("curves").resolve(NAME).resolve("history.jsonl");
    lines = Files.readAllLines(file);
  }

  private void write(List<String> changed) throws IOException {
    Files.writeString(file, String.join("\n", changed) + "\n");
  }

  @Test
  void aSoundChainSaysSo() {
    ChainState state = laboratory.verifyChain(NAME);
    assertEquals(new ChainState(5, state.head(), Optional.empty(), false), state);
    assertEquals(Json.sha256(lines.get(4).getBytes(StandardCharsets.UTF_8)), laboratory.head(NAME));
    assertTrue(laboratory.verifyBlockChain().isSound());
  }

  @Test
  void anyChangedBitIsFound() throws IOException {
    byte[] sound = Files.readAllBytes(file);
    String head = laboratory.head(NAME);
    for (int i = 0; i < sound.length; i++) {
      byte[] changed = sound.clone();
      changed[i] ^= 1;
      Files.write(file, changed);
      ChainState state = laboratory.verifyChain(NAME);
      // The last line is covered by the head alone, which a report or a signature keeps elsewhere.
      assertFalse(state.isSound() && state.head().equals(head) && !state.unfinished(), "byte " + i);
    }
  }

  @Test
  void aLineTakenOutExchangedOrRewrittenIsNamed() throws IOException {
    List<String> without = new ArrayList<>(lines);
    without.remove(2);
    write(without);
    assertEquals("line 3 holds event 4.", laboratory.verifyChain(NAME).damage().orElseThrow());
    List<String> exchanged = new ArrayList<>(lines);
    Collections.swap(exchanged, 2, 3);
    write(exchanged);
    assertEquals("line 3 holds event 4.", laboratory.verifyChain(NAME).damage().orElseThrow());
    List<String> rewritten = new ArrayList<>(lines);
    rewritten.set(2, lines.get(2).replace("slipped", "stopped"));
    write(rewritten);
    assertEquals(
        "line 3 is not the one that line 4 followed.",
        laboratory.verifyChain(NAME).damage().orElseThrow());
    List<String> spaced = new ArrayList<>(lines);
    spaced.set(2, lines.get(2).replace("\"seq\":", "\"seq\": "));
    write(spaced);
    assertEquals(
        "line 3 is not in the form in which events are written.",
        laboratory.verifyChain(NAME).damage().orElseThrow());
    write(lines.subList(1, 5));
    assertEquals("line 1 holds event 2.", laboratory.verifyChain(NAME).damage().orElseThrow());
    List<String> newer = new ArrayList<>(lines);
    newer.set(4, lines.get(4).replace("\"formatVersion\":1", "\"formatVersion\":2"));
    write(newer);
    assertEquals(
        "line 5: The file is of format number 2, which is too new.",
        laboratory.verifyChain(NAME).damage().orElseThrow());
  }

  @Test
  void nothingIsReadFromOrAddedToABrokenChain() throws IOException {
    List<String> rewritten = new ArrayList<>(lines);
    rewritten.set(2, lines.get(2).replace("slipped", "stopped"));
    write(rewritten);
    byte[] before = Files.readAllBytes(file);
    String expected =
        """
        The history has been altered or damaged: line 3 is not the one that line 4 followed.
          where     %s
          expected  events numbered from 1, each with the hash of the line before
          do        put the history back from a backup"""
            .formatted(file);
    assertEquals(
        expected,
        assertThrows(InputRefusedException.class, () -> laboratory.campaign(NAME)).getMessage());
    assertEquals(
        expected,
        assertThrows(
                InputRefusedException.class,
                () -> laboratory.exclude(NAME, "run-1.csv", 9, "A. Person", "slipped"))
            .getMessage());
    assertThat(file).hasBinaryContent(before);
    assertEquals(List.of(NAME), laboratory.dossiers());
  }

  @Test
  void aLineCutOffByACrashIsForgottenAndReplaced() throws IOException {
    String last = lines.get(4);
    Files.writeString(file, String.join("\n", lines.subList(0, 4)) + "\n" + last.substring(0, 100));
    ChainState state = laboratory.verifyChain(NAME);
    assertTrue(state.isSound());
    assertTrue(state.unfinished());
    assertEquals(2, laboratory.campaign(NAME).exclusions().size());
    laboratory.exclude(NAME, "run-1.csv", 4, "A. Person", "slipped");
    assertThat(Files.readAllLines(file)).isEqualTo(lines);
  }
}
