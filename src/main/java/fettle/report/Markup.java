package fettle.report;

import freemarker.core.XHTMLOutputFormat;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;

/** Text that is markup of our own making already and is not escaped again. */
final class Markup {
  private Markup() {}

  static TemplateModel of(String xhtml) {
    try {
      return XHTMLOutputFormat.INSTANCE.fromMarkup(xhtml);
    } catch (TemplateModelException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
