package fettle.table;

/** Decimal mark of the numbers of one file. */
public enum DecimalMark {
  /** Numbers are written 12.5. */
  POINT,
  /** Numbers are written 12,5. */
  COMMA,
  /** No number seen so far has a decimal mark, and either is possible. */
  UNDECIDED;

  boolean allowsPoint() {
    return this != COMMA;
  }

  boolean allowsComma() {
    return this != POINT;
  }
}
