package fettle.reading;

import java.time.LocalDateTime;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One reading: a single indication of the instrument on one block.
 *
 * @param file name of the readings file it came from
 * @param line line in that file, counted from 1 with the header as line 1
 * @param block block read
 * @param displayed response as displayed, in the dossier's response unit
 * @param takenAt local time of the reading
 * @param run run (session) in which it was taken
 * @param operator who held the probe
 * @param probe probe or impact device
 * @param temperatureC temperature in °C
 * @param freeFrequencyHz free-rod frequency in Hz measured with this reading (UCI)
 * @param xMm place on the block, mm
 * @param yMm place on the block, mm
 * @param direction direction of test
 * @param note free text
 */
public record Reading(
    String file,
    int line,
    String block,
    double displayed,
    Optional<LocalDateTime> takenAt,
    Optional<String> run,
    Optional<String> operator,
    Optional<String> probe,
    OptionalDouble temperatureC,
    OptionalDouble freeFrequencyHz,
    OptionalDouble xMm,
    OptionalDouble yMm,
    Optional<String> direction,
    Optional<String> note) {

  /** Checks values. */
  public Reading {
    Objects.requireNonNull(file);
    Objects.requireNonNull(block);
    if (!Double.isFinite(displayed)) {
      throw new IllegalArgumentException("displayed " + displayed + ": finite expected");
    }
  }

  /**
   * The response corrected for a free-rod frequency that has moved since the zero was taken: {@code
   * displayed + zeroFrequency − freeFrequency}. Without a free-rod frequency or without a zero the
   * displayed response stands.
   *
   * @param zeroFrequencyHz the dossier's zero frequency in Hz, where it has one
   * @return response in the dossier's response unit
   */
  public double response(OptionalDouble zeroFrequencyHz) {
    return zeroFrequencyHz.isPresent() && freeFrequencyHz.isPresent()
        ? displayed + zeroFrequencyHz.getAsDouble() - freeFrequencyHz.getAsDouble()
        : displayed;
  }
}
