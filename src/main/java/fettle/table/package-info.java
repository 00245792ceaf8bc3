/**
 * Tables as people keep them: CSV read as cells with addresses, typed with exact complaints, and
 * CSV written so that a spreadsheet runs nothing.
 *
 * <p>A complaint names file, line, column and value. Knows nothing of blocks, readings or curves.
 */
package fettle.table;
