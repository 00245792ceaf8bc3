package fettle.report;

import fettle.calibration.ChosenCurve;
import fettle.curve.CurveIdentity;
import freemarker.core.XHTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;

/**
 * The report of a calibration curve as one HTML document that stands by itself: charts as SVG, one
 * style sheet, no script, nothing to fetch. It is well-formed XML too, prints on A4 and Letter, and
 * the same content gives the same characters.
 */
public final class CalibrationReport {
  private static final String TEMPLATE = "calibration-report.ftl";

  private CalibrationReport() {}

  /**
   * Writes a report.
   *
   * @param content all that it says
   * @param out receives the document; to be encoded as UTF-8
   * @throws IOException if {@code out} cannot be written to
   */
  public static void write(ReportContent content, Appendable out) throws IOException {
    StringWriter text = new StringWriter();
    try {
      template().process(model(content), text);
    } catch (TemplateException failure) {
      throw new IllegalStateException(failure);
    }
    out.append(withoutForbiddenCharacters(text.getBuffer()));
  }

  private static Template template() throws IOException {
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_35);
    configuration.setClassForTemplateLoading(CalibrationReport.class, "");
    configuration.setDefaultEncoding("UTF-8");
    configuration.setOutputFormat(XHTMLOutputFormat.INSTANCE);
    configuration.setAutoEscapingPolicy(Configuration.ENABLE_IF_SUPPORTED_AUTO_ESCAPING_POLICY);
    configuration.setLocale(Locale.ROOT);
    configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    return configuration.getTemplate(TEMPLATE);
  }

  private static Map<String, Object> model(ReportContent content) {
    CurveIdentity identity = content.analysis().campaign().dossier().identity();
    Units units = Units.of(identity);
    Map<String, Object> model = new HashMap<>();
    model.put("head", HeadSection.of(content));
    model.put("identity", IdentitySection.of(content));
    model.put("blocks", BlocksSection.of(content));
    model.put("readings", ReadingsSection.of(content));
    model.put("scatter", ScatterSection.of(content));
    model.put("candidates", CandidatesSection.of(content));
    model.put("findings", FindingsSection.of(content));
    model.put("cautions", Cautions.of(identity.method(), HeadSection.isSimulated(content)));
    model.put("dossier", identity.dossier());
    model.put("inputs", content.inputs());
    model.put("fingerprint", content.fingerprint());
    model.put("shortFingerprint", content.shortFingerprint());
    model.put("date", content.date().toString());
    model.put("program", content.programVersion());
    model.put("version", content.version().map(Object::toString).orElse(""));
    Optional<ChosenCurve> chosen = content.analysis().chosen();
    if (chosen.isPresent()) {
      model.put("range", RangeSection.of(content, chosen.get()));
      model.put("curve", CurveSection.of(content, chosen.get()));
      model.put("budget", BudgetSection.of(content, chosen.get()));
      model.put("checkBlocks", CheckBlocksSection.of(content, chosen.get()));
    } else {
      model.put("blocksChart", Markup.of(CurveSection.curveChart(content.analysis(), units)));
    }
    return model;
  }

  /** Characters that XML 1.0 (section 2.2) allows in no document are shown as a replacement. */
  private static String withoutForbiddenCharacters(CharSequence text) {
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              boolean allowed =
                  c == '\t'
                      || c == '\n'
                      || c == '\r'
                      || c >= 0x20 && c <= 0xD7FF
                      || c >= 0xE000 && c <= 0xFFFD
                      || c >= 0x10000;
              clean.appendCodePoint(allowed ? c : 0xFFFD);
            });
    return clean.toString();
  }
}
