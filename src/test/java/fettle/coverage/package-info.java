/** Coverage of the stated intervals, measured on simulated campaigns whose truth is known. */
package fettle.coverage;
