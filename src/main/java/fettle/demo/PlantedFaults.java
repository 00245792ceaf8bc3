package fettle.demo;

import java.time.LocalDate;

/**
 * The three faults planted in the demo laboratory, or none of them.
 *
 * <p>A gross reading on a fitting block as cast, a certificate that ended before the readings on a
 * fitting block annealed, and a wrongly certified check block quenched and tempered. The rebound
 * dossier has none.
 */
enum PlantedFaults {
  /** As the demo is shown. */
  PLANTED,
  /** For studies of coverage, where nothing but chance is wanted. */
  NONE;

  private static final String GROSS_BLOCK = "NC-04";
  private static final String GROSS_RUN = "run-3";
  private static final int GROSS_READING = 1;
  private static final double GROSS_FACTOR = 1.18;
  private static final String EXPIRED_BLOCK = "NA-06";
  private static final LocalDate EXPIRED_CERTIFIED_ON = LocalDate.of(2023, 9, 4);
  private static final String WRONG_BLOCK = "NQ-92";
  private static final double WRONG_FACTOR = 1.07;

  /** What a response is multiplied by; readings are counted from 0 within run and block. */
  double responseFactor(String run, String block, int reading) {
    return isGross(run, block, reading) ? GROSS_FACTOR : 1;
  }

  /** What the operator wrote at a reading, empty for nothing. */
  String note(String run, String block, int reading) {
    return isGross(run, block, reading) ? "probe tilted on contact" : "";
  }

  private boolean isGross(String run, String block, int reading) {
    return this == PLANTED
        && run.equals(GROSS_RUN)
        && block.equals(GROSS_BLOCK)
        && reading == GROSS_READING;
  }

  /** What a certified value is multiplied by. */
  double certifiedFactor(String block) {
    return this == PLANTED && block.equals(WRONG_BLOCK) ? WRONG_FACTOR : 1;
  }

  /** The day a block was certified, given the day it would be without faults. */
  LocalDate certifiedOn(String block, LocalDate otherwise) {
    return this == PLANTED && block.equals(EXPIRED_BLOCK) ? EXPIRED_CERTIFIED_ON : otherwise;
  }
}
