package fettle.report;

import java.awt.geom.Rectangle2D;
import org.apache.batik.dom.GenericDOMImplementation;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.Document;

/**
 * A chart as an SVG element for a page: no prolog, ids of its own, text as text, a title and a
 * description for readers who do not see it. The same chart gives the same characters.
 *
 * @param id prefix of all ids in it, unique on the page
 * @param title what it is
 * @param description what it shows
 * @param width in px
 * @param height in px
 */
record ChartSvg(String id, String title, String description, int width, int height) {
  private static final int DECIMALS = 2;

  /** Draws a chart. */
  String of(JFreeChart chart) {
    Document document =
        GenericDOMImplementation.getDOMImplementation()
            .createDocument("http://www.w3.org/2000/svg", "svg", null);
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
    context.setPrecision(DECIMALS);
    context.setIDGenerator(new PrefixedIds(id));
    AnchoredGraphics graphics = new AnchoredGraphics(context);
    chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
    return new SvgText(this).of(graphics.getRoot());
  }

  /** Several charts stand on one page, and ids must differ among all of them. */
  private static final class PrefixedIds extends SVGIDGenerator {
    private final String chart;
    private int count;

    PrefixedIds(String chart) {
      this.chart = chart;
    }

    @Override
    public String generateID(String prefix) {
      count++;
      return chart + "-" + count;
    }
  }
}
