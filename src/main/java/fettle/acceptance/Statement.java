package fettle.acceptance;

import java.util.Objects;

/**
 * What a check says of itself; see {@link Check} for the parts.
 *
 * @param id id
 * @param severity the worst that a failure means
 * @param question question
 * @param why why it matters
 * @param remedy what to do
 * @param citation where it comes from
 */
record Statement(
    String id, Severity severity, String question, String why, String remedy, String citation) {
  Statement {
    Objects.requireNonNull(severity);
    if (!id.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*") || !question.endsWith("?")) {
      throw new IllegalArgumentException(id + ", \"" + question + "\": id and question expected");
    }
    if (why.isBlank() || remedy.isBlank() || citation.isBlank()) {
      throw new IllegalArgumentException(id + ": why, remedy and citation expected");
    }
  }
}
