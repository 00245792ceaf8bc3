package fettle.statistics;

/** What every method of this package asks of its arguments, with one wording for each complaint. */
final class Arguments {
  private Arguments() {}

  static void finite(String name, double[] values) {
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException(
            name + "[" + i + "] is " + values[i] + ": every value must be finite");
      }
    }
  }

  static void finite(String name, double[][] rows) {
    for (int i = 0; i < rows.length; i++) {
      finite(name + "[" + i + "]", rows[i]);
    }
  }

  static void finite(String name, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " is " + value + ": it must be finite");
    }
  }

  static void atLeast(String name, int length, int least, String forWhat) {
    if (length < least) {
      throw new IllegalArgumentException(
          name + " has " + length + " values: " + forWhat + " needs at least " + least);
    }
  }

  static void countAtLeast(String name, int value, int least) {
    if (value < least) {
      throw new IllegalArgumentException(name + " is " + value + ": it must be at least " + least);
    }
  }

  static void sameLength(String name, int length, String other, int otherLength) {
    if (length != otherLength) {
      throw new IllegalArgumentException(
          name
              + " has "
              + length
              + " values and "
              + other
              + " has "
              + otherLength
              + ": they must have the same length");
    }
  }

  /** Strictly between 0 and 1. */
  static void probability(String name, double p) {
    if (!(p > 0 && p < 1)) {
      throw new IllegalArgumentException(
          name + " is " + p + ": it must lie strictly between 0 and 1");
    }
  }

  static void positive(String name, double value) {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          name + " is " + value + ": it must be finite and above zero");
    }
  }

  static void positive(String name, double[] values) {
    for (int i = 0; i < values.length; i++) {
      positive(name + "[" + i + "]", values[i]);
    }
  }

  static void notNegative(String name, double value) {
    if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          name + " is " + value + ": it must be finite and not negative");
    }
  }

  /** The refusal of values that do not differ. */
  static IllegalArgumentException noSpread(String name, int length, double value, String forWhat) {
    return new IllegalArgumentException(
        "all "
            + length
            + " "
            + name
            + " are "
            + value
            + ": "
            + forWhat
            + " needs values that differ");
  }
}
