package fettle.block;

import fettle.refusal.InputRefusedException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What must hold for every block and certificate, whether it comes from a table, from options or
 * from a file of the laboratory. Questions of suitability are not asked here.
 */
public final class BlockRules {
  private static final int LONGEST_ID = 64;

  /** Relative slack for a shared part equal to U / k, which seldom divides exactly. */
  private static final double DIVISION_SLACK = 1e-12;

  private static final Set<String> RESERVED = Set.of("con", "prn", "aux", "nul");

  private BlockRules() {}

  /**
   * Checks a block's mark, which is also a file's name.
   *
   * @param id 1 to 64 of the letters a to z in either case, digits, full stop, underscore and
   *     hyphen; begins with a letter or digit, does not end with a full stop, and is no name that
   *     an operating system keeps for a device
   * @param where place for the message
   * @return the same mark
   * @throws InputRefusedException if it is not so
   */
  public static String id(String id, String where) {
    String shown = '"' + id.replaceAll("\\p{C}", "?") + '"';
    if (id.isEmpty() || id.length() > LONGEST_ID) {
      throw idRefusal(
          id.isEmpty()
              ? "The block's mark is empty."
              : "The block's mark has " + id.length() + " characters.",
          where);
    }
    for (int i = 0; i < id.length(); i++) {
      if (!isAllowed(id.charAt(i))) {
        throw idRefusal("The block's mark " + shown + " holds a character not allowed.", where);
      }
    }
    if (!isLetterOrDigit(id.charAt(0)) || id.endsWith(".")) {
      throw idRefusal(
          "The block's mark "
              + shown
              + (id.endsWith(".") ? " ends with " : " begins with ")
              + "a character not allowed there.",
          where);
    }
    String stem = id.toLowerCase(Locale.ROOT).split("\\.", 2)[0];
    if (RESERVED.contains(stem) || stem.matches("(com|lpt)[0-9]")) {
      throw idRefusal(
          "The block's mark " + shown + " is a name that some operating systems reserve.", where);
    }
    return id;
  }

  private static InputRefusedException idRefusal(String what, String where) {
    return new InputRefusedException(
        what,
        where,
        "1 to 64 letters (a to z), digits, '.', '_' and '-'; a letter or digit first, no '.' last",
        "give the block another mark, such as B-17");
  }

  private static boolean isAllowed(char character) {
    return isLetterOrDigit(character) || character == '.' || character == '_' || character == '-';
  }

  private static boolean isLetterOrDigit(char character) {
    return character >= 'a' && character <= 'z'
        || character >= 'A' && character <= 'Z'
        || character >= '0' && character <= '9';
  }

  /**
   * Checks a block and all its certificates.
   *
   * @param block the block
   * @param where place for the message
   * @return the same block
   * @throws InputRefusedException if anything about it cannot be
   */
  public static ReferenceBlock check(ReferenceBlock block, String where) {
    id(block.id(), where);
    check(PhysicalQuantity.THICKNESS, block.thicknessMm(), where);
    check(PhysicalQuantity.MASS, block.massKg(), where);
    check(PhysicalQuantity.ROUGHNESS, block.roughnessRaUm(), where);
    check(PhysicalQuantity.MODULUS, block.elasticModulusGpa(), where);
    check(PhysicalQuantity.MODULUS_UNCERTAINTY, block.elasticModulusUncertaintyGpa(), where);
    check(PhysicalQuantity.POISSON_RATIO, block.poissonRatio(), where);
    checkModulus(block.elasticModulusGpa(), block.elasticModulusUncertaintyGpa(), where);
    block.certificates().forEach(certificate -> check(certificate, where));
    return block;
  }

  private static void check(PhysicalQuantity quantity, OptionalDouble value, String where) {
    value.ifPresent(number -> quantity.check(number, where));
  }

  private static void checkModulus(
      OptionalDouble modulus, OptionalDouble uncertainty, String where) {
    if (uncertainty.isEmpty()) {
      return;
    }
    if (modulus.isEmpty()) {
      throw new InputRefusedException(
          "u_elastic_modulus_gpa is given without elastic_modulus_gpa.",
          where,
          "both or neither",
          "add the elastic modulus, or take its uncertainty out");
    }
    if (uncertainty.getAsDouble() >= modulus.getAsDouble()) {
      throw new InputRefusedException(
          "u_elastic_modulus_gpa "
              + PhysicalQuantity.plain(uncertainty.getAsDouble())
              + " is not below elastic_modulus_gpa "
              + PhysicalQuantity.plain(modulus.getAsDouble())
              + ".",
          where,
          "a standard uncertainty below the modulus itself",
          "check whether the two columns are exchanged");
    }
  }

  /**
   * Checks that the statements of a certificate agree with each other.
   *
   * @param certificate the certificate
   * @param where place for the message
   * @return the same certificate
   * @throws InputRefusedException if they do not
   */
  public static Certificate check(Certificate certificate, String where) {
    certificate
        .nonUniformity()
        .ifPresent(value -> requireNotNegative("non_uniformity", value, where));
    certificate
        .sharedUncertainty()
        .ifPresent(
            value -> {
              requireNotNegative("u_shared", value, where);
              checkShared(certificate, value, where);
            });
    if (certificate.indentations().isPresent() && certificate.indentations().getAsInt() < 1) {
      throw new InputRefusedException(
          "indentations " + certificate.indentations().getAsInt() + " is not above 0.",
          where,
          "the number of certified indentations",
          "correct the number, or leave it out");
    }
    if (certificate.certifiedOn().isPresent()
        && certificate.validUntil().isPresent()
        && certificate.validUntil().get().isBefore(certificate.certifiedOn().get())) {
      throw new InputRefusedException(
          "valid_until "
              + certificate.validUntil().get()
              + " lies before certified_on "
              + certificate.certifiedOn().get()
              + ".",
          where,
          "an end of validity on or after the day of certification",
          "check whether the two dates are exchanged");
    }
    return certificate;
  }

  private static void checkShared(Certificate certificate, double shared, String where) {
    if (certificate.referenceMachine().isEmpty()) {
      throw new InputRefusedException(
          "u_shared is given without reference_machine.",
          where,
          "the machine whose uncertainty the blocks share",
          "name the reference machine, or take u_shared out");
    }
    double whole = certificate.standardUncertainty();
    if (shared > whole * (1 + DIVISION_SLACK)) {
      throw new InputRefusedException(
          "u_shared "
              + PhysicalQuantity.plain(shared)
              + " is larger than the whole standard uncertainty U / k = "
              + PhysicalQuantity.plain(certificate.expandedUncertainty())
              + " / "
              + PhysicalQuantity.plain(certificate.coverageFactor())
              + " = "
              + new BigDecimal(whole).round(new MathContext(4)).stripTrailingZeros().toPlainString()
              + ".",
          where,
          "u_shared of at most U / k, as it is a part of it",
          "check u_shared, expanded_uncertainty and coverage_factor");
    }
  }

  private static void requireNotNegative(String name, double value, String where) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new InputRefusedException(
          name + " " + value + " is not a number of 0 or above.",
          where,
          "0 or a number above 0",
          "correct the number");
    }
  }
}
