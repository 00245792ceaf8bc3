package fettle.table;

/** Decimal mark of a file and the line that settled it; line 0 where the separator did. */
record Marking(DecimalMark mark, int line) {
  static final Marking POINT = new Marking(DecimalMark.POINT, 0);
  static final Marking UNDECIDED = new Marking(DecimalMark.UNDECIDED, 0);
}
