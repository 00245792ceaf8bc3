/**
 * Readings: raw responses as they came, their runs, exclusions and block means.
 *
 * <p>Reads the readings CSV form with the place of every cell. Does not know curves or the folder.
 */
package fettle.reading;
