package fettle.acceptance;

import fettle.calibration.BlockResponse;
import fettle.reading.Reading;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A finding in the making: everything but its sentence. */
record Answer(
    String checkId,
    Severity severity,
    Outcome outcome,
    OptionalDouble value,
    OptionalDouble limit,
    Optional<String> block,
    Optional<String> file,
    OptionalInt line) {
  Answer(String checkId, Severity severity, Outcome outcome) {
    this(
        checkId,
        severity,
        outcome,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalInt.empty());
  }

  Answer judged(double judged, double against) {
    return new Answer(
        checkId,
        severity,
        outcome,
        OptionalDouble.of(judged),
        OptionalDouble.of(against),
        block,
        file,
        line);
  }

  Answer judged(double judged, LimitInForce against) {
    return judged(judged, against.value());
  }

  Answer on(BlockResponse blockRead) {
    return onBlock(blockRead.block().id());
  }

  Answer onBlock(String id) {
    return new Answer(checkId, severity, outcome, value, limit, Optional.of(id), file, line);
  }

  Answer at(Reading reading) {
    return atLine(reading.file(), reading.line()).onBlock(reading.block());
  }

  Answer atLine(String name, int number) {
    return new Answer(
        checkId, severity, outcome, value, limit, block, Optional.of(name), OptionalInt.of(number));
  }

  Answer inFile(String name) {
    return new Answer(checkId, severity, outcome, value, limit, block, Optional.of(name), line);
  }

  Finding saying(String message) {
    return new Finding(checkId, severity, outcome, value, limit, block, file, line, message);
  }
}
