/**
 * Charts of a calibration curve and its report: one self-contained, printable HTML document.
 *
 * <p>Knows everything but the library and the two faces; computes nothing that decides, reads no
 * clock, and writes to what it is given. Every figure goes through {@code Figures}, every chart
 * through {@code ChartStyle}.
 */
package fettle.report;
