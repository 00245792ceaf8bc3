package fettle.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/**
 * One call of the command line inside a test.
 *
 * @param status exit status
 * @param out standard output
 * @param err standard error
 */
record CommandCall(int status, String out, String err) {
  static CommandCall in(Path folder, String input, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Session session =
        new Session(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
            folder,
            Clock.fixed(Instant.parse("2026-11-25T09:00:00Z"), ZoneOffset.UTC),
            "tester",
            2);
    int status = CommandRun.execute(session, args);
    return new CommandCall(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
