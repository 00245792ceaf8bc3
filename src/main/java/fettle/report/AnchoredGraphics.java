package fettle.report;

import java.awt.Graphics;
import org.apache.batik.svggen.DOMGroupManager;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Element;

/**
 * Draws SVG whose figures stay where they belong in another font than the one they were measured
 * with: a tick's number is anchored at its middle, other text at its start.
 */
final class AnchoredGraphics extends SVGGraphics2D {
  private static final String SVG = "http://www.w3.org/2000/svg";

  AnchoredGraphics(SVGGeneratorContext context) {
    super(context, false);
  }

  private AnchoredGraphics(AnchoredGraphics other) {
    super(other);
  }

  @Override
  public Graphics create() {
    return new AnchoredGraphics(this);
  }

  @Override
  public void drawString(String text, float x, float y) {
    boolean figure = text.chars().allMatch(c -> c >= '0' && c <= '9' || c == '.' || c == '\u2212');
    double at = figure ? x + getFontMetrics().stringWidth(text) / 2.0 : x;
    Element element = getDOMFactory().createElementNS(SVG, "text");
    element.setAttributeNS(null, "x", generatorCtx.doubleString(at));
    element.setAttributeNS(null, "y", generatorCtx.doubleString(y));
    if (figure) {
      element.setAttributeNS(null, "text-anchor", "middle");
    }
    element.appendChild(getDOMFactory().createTextNode(text));
    domGroupManager.addElement(element, DOMGroupManager.FILL);
  }
}
