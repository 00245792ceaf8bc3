package fettle.selfcheck;

import com.fasterxml.jackson.databind.JsonNode;

/** Computes the values of one kind of case. */
interface Recomputation {
  /**
   * Computes one value.
   *
   * @param expected the value's entry in the case file
   * @return what this machine makes of it
   */
  double of(JsonNode expected);
}
