package fettle.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.refusal.InputRefusedException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RowReaderTest {
  private static final TableForm FORM =
      TableForm.of("responses").requiringNumbers("response").allowing("id");

  /** A file of a stated number of rows that exists only while it is read, a few bytes at a time. */
  private static final class Rows extends InputStream {
    private final long rows;
    private long row = -1;
    private byte[] line = "id,response\r\n".getBytes(StandardCharsets.US_ASCII);
    private int at;

    Rows(long rows) {
      this.rows = rows;
    }

    @Override
    public int read() {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0];
    }

    @Override
    public int read(byte[] target, int offset, int length) {
      if (at == line.length) {
        if (++row == rows) {
          row--;
          return -1;
        }
        line = ("\"é" + row + "\"," + row + ".25\r\n").getBytes(StandardCharsets.UTF_8);
        at = 0;
      }
      int count = Math.min(length, line.length - at);
      System.arraycopy(line, at, target, offset, count);
      at += count;
      return count;
    }
  }

  @Test
  void readsAStreamRowByRowWhateverTheBoundariesOfItsBlocks() throws IOException {
    int rows = 300_000;
    try (RowReader reader = RowReader.open(new Rows(rows), "big.csv", FORM)) {
      int column = reader.header().index("response").orElseThrow();
      long count = 0;
      double sum = 0;
      int line = 0;
      for (Optional<Row> row = reader.next(); row.isPresent(); row = reader.next()) {
        sum += row.get().numberOrNaN(column);
        line = row.get().line();
        count++;
      }
      assertEquals(rows, count);
      assertEquals(rows + 1, line);
      assertEquals(rows * (rows - 1.0) / 2 + 0.25 * rows, sum);
    }
  }

  @Test
  void goesOnAfterARowThatDoesNotFit() {
    RowReader reader = open("id,response\na,1\nb\nc,x\nd,4\n");
    assertEquals(1, reader.next().orElseThrow().numberOrNaN(1));
    Row misfit = reader.next().orElseThrow();
    assertTrue(!misfit.isSound());
    assertThrows(InputRefusedException.class, () -> misfit.numberOrNaN(1));
    assertThrows(InputRefusedException.class, misfit::texts);
    assertThrows(InputRefusedException.class, () -> misfit.filled("id"));
    assertThat(reader.next().orElseThrow().numberOrNaN(1)).isNaN();
    assertEquals(4, reader.next().orElseThrow().numberOrNaN(1));
    assertTrue(reader.next().isEmpty());
    assertTrue(reader.next().isEmpty());
  }

  @Test
  void takesNumbersBeyondDoubleForNone() {
    RowReader reader = open("response;id\n1e999;a\n 2,5 ;b\n");
    assertThat(reader.next().orElseThrow().numberOrNaN(0)).isNaN();
    assertEquals(2.5, reader.next().orElseThrow().numberOrNaN(0));
  }

  @Test
  void refusesAFileThatCannotBeReadToItsEnd() {
    InputStream broken =
        new InputStream() {
          @Override
          public int read() throws IOException {
            throw new IOException("medium \u001b gone");
          }
        };
    InputRefusedException refusal =
        assertThrows(InputRefusedException.class, () -> RowReader.open(broken, "t.csv", FORM));
    assertEquals("The file cannot be read: medium <U+001B> gone.", refusal.what());
  }

  private static RowReader open(String text) {
    return RowReader.open(
        new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "t.csv", FORM);
  }
}
