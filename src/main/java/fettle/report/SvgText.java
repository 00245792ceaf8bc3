package fettle.report;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/**
 * Writes an SVG tree as characters: attributes in order of name, colours as {@code #rrggbb}, so
 * that a style sheet can address them, and nothing that repeats a default.
 */
final class SvgText {
  private static final Pattern RGB = Pattern.compile("rgb\\((\\d+),(\\d+),(\\d+)\\)");
  private static final String FONTS =
      "'Source Sans 3','Segoe UI','Helvetica Neue',Arial,'Liberation Sans',sans-serif";
  private static final Set<String> LEFT_OUT =
      Set.of(
          "xml:space",
          "color-interpolation",
          "color-rendering",
          "image-rendering",
          "shape-rendering",
          "text-rendering",
          "font-family");

  private final ChartSvg chart;
  private final StringBuilder out = new StringBuilder();

  SvgText(ChartSvg chart) {
    this.chart = chart;
  }

  String of(Element root) {
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" viewBox=\"0 0 ")
        .append(chart.width())
        .append(' ')
        .append(chart.height())
        .append("\" width=\"")
        .append(chart.width())
        .append("\" height=\"")
        .append(chart.height())
        .append("\" role=\"img\" aria-labelledby=\"")
        .append(chart.id())
        .append("-title ")
        .append(chart.id())
        .append("-desc\" font-family=\"")
        .append(FONTS)
        .append("\" font-size=\"12\" stroke-miterlimit=\"10\" stroke-linecap=\"square\">");
    described("title", chart.title());
    described("desc", chart.description());
    for (Node child = root.getFirstChild(); child != null; child = child.getNextSibling()) {
      node(child);
    }
    return out.append("</svg>").toString();
  }

  private void described(String name, String text) {
    out.append('<').append(name).append(" id=\"").append(chart.id()).append('-').append(name);
    out.append("\">");
    escape(text);
    out.append("</").append(name).append('>');
  }

  private void node(Node node) {
    if (node.getNodeType() == Node.TEXT_NODE) {
      escape(node.getNodeValue());
    } else if (node instanceof Element element && !isEmptyGroup(element)) {
      out.append('<').append(element.getTagName());
      attributes(element);
      if (element.getFirstChild() == null) {
        out.append("/>");
        return;
      }
      out.append('>');
      for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
        node(child);
      }
      out.append("</").append(element.getTagName()).append('>');
    }
  }

  private static boolean isEmptyGroup(Element element) {
    String name = element.getTagName();
    return (name.equals("g") || name.equals("defs")) && element.getFirstChild() == null;
  }

  private void attributes(Element element) {
    NamedNodeMap map = element.getAttributes();
    Map<String, String> sorted = new TreeMap<>();
    for (int i = 0; i < map.getLength(); i++) {
      Attr attribute = (Attr) map.item(i);
      boolean shared = attribute.getName().equals("id") && attribute.getValue().startsWith("gen");
      if (!LEFT_OUT.contains(attribute.getName()) && !shared) {
        sorted.put(attribute.getName(), attribute.getValue());
      }
    }
    sorted.forEach(
        (name, value) -> {
          out.append(' ').append(name).append("=\"");
          escape(colour(value));
          out.append('"');
        });
  }

  private static String colour(String value) {
    Matcher rgb = RGB.matcher(value);
    if (!rgb.matches()) {
      return value;
    }
    return String.format(
        Locale.ROOT,
        "#%02x%02x%02x",
        Integer.parseInt(rgb.group(1)),
        Integer.parseInt(rgb.group(2)),
        Integer.parseInt(rgb.group(3)));
  }

  private void escape(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '&' -> out.append("&amp;");
        case '"' -> out.append("&quot;");
        default -> {
          if (c >= ' ') {
            out.append(c);
          }
        }
      }
    }
  }
}
