package fettle.cli;

/** The cautions that go with every hardness from a curve; common practice, no source. */
final class Cautions {
  static final String HEADING = "Cautions";

  static final String COMPARATIVE =
      "Portable results are comparative evidence within the stated range and uncertainty; the"
          + " governing code and qualified people decide.";

  static final String NOT_BENCH =
      "A value is an estimate from an empirical relation for the named alloy, product form, surface"
          + " and instrument, not a Vickers, Brinell or Rockwell test.";

  static final String SPOT =
      "It describes the spot tested and its near surface; it proves no bulk hardness, heat treatment"
          + " or absence of cracks or soft zones.";

  static final String LIMIT =
      "Near a limit the uncertainty and the decision rule count, and a referee test by an agreed"
          + " method is needed.";

  private Cautions() {}
}
