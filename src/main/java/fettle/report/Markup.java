package fettle.report;

import freemarker.core.XHTMLOutputFormat;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.util.regex.Pattern;

/** Text that is markup of our own making already and is not escaped again. */
final class Markup {
  private static final Pattern SYMBOL =
      Pattern.compile("\\b(E|σ)_(n|ab|a)\\b", Pattern.UNICODE_CHARACTER_CLASS);

  private Markup() {}

  /**
   * A sentence of figures and words, escaped, with the indices of the trade's symbols set low:
   * {@code E_n}, {@code σ_a}, {@code σ_ab}.
   */
  static TemplateModel sentence(String text) {
    String escaped = XHTMLOutputFormat.INSTANCE.escapePlainText(text);
    return of(SYMBOL.matcher(escaped).replaceAll("$1<sub>$2</sub>"));
  }

  static TemplateModel of(String xhtml) {
    try {
      return XHTMLOutputFormat.INSTANCE.fromMarkup(xhtml);
    } catch (TemplateModelException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
