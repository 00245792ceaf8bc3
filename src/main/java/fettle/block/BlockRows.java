package fettle.block;

import fettle.quantity.HardnessScale;
import fettle.refusal.InputRefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the rows of one block: its facts, and a certificate from each row. */
final class BlockRows {
  /** A certificate and the line that it came from. */
  private record Stated(Certificate certificate, int line) {}

  private final String id;
  private final int firstLine;
  private final String firstWhere;
  private BlockFacts facts;
  private final List<Stated> certificates = new ArrayList<>();

  BlockRows(String id, int firstLine, String firstWhere, BlockFacts facts) {
    this.id = id;
    this.firstLine = firstLine;
    this.firstWhere = firstWhere;
    this.facts = facts;
  }

  String id() {
    return id;
  }

  int firstLine() {
    return firstLine;
  }

  void add(BlockFacts more, Certificate certificate, int line, String where) {
    facts = facts.and(more, id, firstLine, where);
    for (Stated before : certificates) {
      if (before.certificate.scale().equals(certificate.scale())) {
        requireOrder(before, certificate, where);
      }
    }
    certificates.add(new Stated(certificate, line));
  }

  /** Of two certificates on one scale it must be plain which one is in force. */
  private void requireOrder(Stated before, Certificate certificate, String where) {
    HardnessScale scale = certificate.scale();
    if (before.certificate.number().equals(certificate.number())) {
      throw new InputRefusedException(
          "Block "
              + id
              + " has a certificate on "
              + scale
              + " twice: "
              + certificate.number().map(number -> "number " + number).orElse("no number")
              + " here and on line "
              + before.line
              + ".",
          where,
          "one row for each scale and certificate",
          "take one of the two rows out, or give their certificate numbers");
    }
    if (certificate.certifiedOn().isEmpty()
        || certificate.certifiedOn().equals(before.certificate.certifiedOn())
        || before.certificate.certifiedOn().isEmpty()) {
      throw new InputRefusedException(
          "Block "
              + id
              + " has two certificates on "
              + scale
              + ", here and on line "
              + before.line
              + ", and their dates do not tell which one is newer.",
          where,
          "certified_on in both rows, with different days",
          "fill in the dates of certification");
    }
  }

  ReferenceBlock toBlock() {
    List<Certificate> oldestFirst =
        certificates.stream()
            .map(Stated::certificate)
            .sorted(Comparator.comparing(c -> c.certifiedOn().orElse(LocalDate.MIN)))
            .toList();
    return facts.toBlock(id, oldestFirst, firstWhere);
  }
}
