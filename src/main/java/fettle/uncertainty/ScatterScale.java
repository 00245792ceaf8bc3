package fettle.uncertainty;

/** What the between-block standard uncertainty τ is measured against. */
public enum ScatterScale {
  /** τ is a fraction of the hardness (Vickers, Brinell). */
  RELATIVE,
  /** τ is in the scale's unit (Rockwell, which is ordinal). */
  ABSOLUTE;

  /**
   * The size of one unit of τ at a hardness.
   *
   * @param hardness in the scale's unit
   * @return the hardness itself, or 1
   */
  public double at(double hardness) {
    return this == RELATIVE ? hardness : 1;
  }
}
