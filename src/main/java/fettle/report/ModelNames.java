package fettle.report;

import fettle.fit.ModelId;

/** Models as people call them, and their formulas. */
final class ModelNames {
  private ModelNames() {}

  /** The model in words, with its name in files. */
  static String of(ModelId model) {
    return words(model.name()) + " (" + model.name().replace('-', '\u2011') + ")";
  }

  /** The model in words. */
  static String words(String name) {
    return switch (name) {
      case "power" -> "power law";
      case "exponential" -> "exponential";
      case "polynomial-1" -> "straight line";
      case "polynomial-2" -> "quadratic";
      case "polynomial-3" -> "cubic";
      case "rational-1-1", "rational-2-2" ->
          "ratio of polynomials of degree " + name.charAt(name.length() - 1);
      default ->
          (name.startsWith("log-") ? "polynomial in ln r of degree " : "polynomial of degree ")
              + degree(name);
    };
  }

  private static int degree(String name) {
    return Integer.parseInt(name.substring(name.lastIndexOf('-') + 1));
  }

  /** The formula as markup, with the names that the coefficients have in files. */
  static String formula(ModelId model) {
    String name = model.name();
    return switch (name) {
      case "power" -> "<i>h</i> = <i>a</i> <i>r</i><sup><i>b</i></sup>";
      case "exponential" -> "<i>h</i> = <i>a</i> e<sup><i>b r</i></sup>";
      case "rational-1-1", "rational-2-2" ->
          "<i>h</i> = ("
              + series("b", 0, degree(name))
              + ") / (1 + "
              + series("c", 1, degree(name))
              + ")";
      default ->
          name.startsWith("log-")
              ? "ln <i>h</i> = "
                  + series("c", 0, degree(name))
                      .replace("<i>r</i>", "(ln <i>r</i>)")
                      .replace("(ln <i>r</i>) +", "ln <i>r</i> +")
              : "<i>h</i> = " + series("b", 0, degree(name));
    };
  }

  private static String series(String letter, int first, int degree) {
    StringBuilder text = new StringBuilder();
    for (int k = first; k <= degree; k++) {
      text.append(k > first ? " + " : "")
          .append("<i>")
          .append(letter)
          .append("</i><sub>")
          .append(k)
          .append("</sub>");
      if (k > 0) {
        text.append(" <i>r</i>");
      }
      if (k > 1) {
        text.append("<sup>").append(k).append("</sup>");
      }
    }
    return text.toString();
  }

  /** A coefficient's name as markup. */
  static String coefficient(String name) {
    return name.length() == 1
        ? "<i>" + name + "</i>"
        : "<i>" + name.charAt(0) + "</i><sub>" + name.substring(1) + "</sub>";
  }
}
