/**
 * What the laboratory has decided beforehand: limits with their citations, target uncertainty,
 * permissible errors, decision rule, intervals, Type B components.
 *
 * <p>Knows quantities only. Reading and writing the file belongs to the library.
 */
package fettle.policy;
