package fettle.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/** One call of the command line inside a test, with its streams kept. */
record Call(int status, String out, String err) {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2024-03-01T08:00:00Z"), ZoneOffset.UTC);

  static Call in(Path directory, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Session session =
        new Session(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            InputStream.nullInputStream(),
            directory,
            CLOCK,
            "tester",
            2);
    int status = CommandRun.execute(session, args);
    return new Call(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** Standard output as one JSON document; the whole text must be it. */
  JsonNode json() throws IOException {
    return new ObjectMapper()
        .enable(com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .enable(com.fasterxml.jackson.databind.DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
        .readTree(out);
  }
}
