package fettle.demo;

import fettle.reading.Reading;

/**
 * A reading as it stands in the file and what stood behind it.
 *
 * @param reading as the file has it
 * @param response response at 23 °C with all effects of operator, run and reading, not rounded
 * @param expected response of that place without any of these effects
 */
record SimulatedReading(Reading reading, double response, double expected) {}
