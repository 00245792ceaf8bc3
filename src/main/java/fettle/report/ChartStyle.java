package fettle.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/**
 * The look of every chart, stated once: colours by role, shapes as a second channel beside colour,
 * thin axes, no background, horizontal text only.
 *
 * <p>Each role has a colour of its own, so that the report's style sheet can exchange it on a dark
 * page. Blue and vermilion stay apart for colour-blind readers (M. Okabe, K. Ito, Color universal
 * design, 2008); shares of a budget run from dark to light (after J. R. Nuñez et al., PLoS ONE 13
 * (2018) e0199239), so that they stay apart in grey.
 */
final class ChartStyle {
  static final Color INK = new Color(0x1f2933);
  static final Color MUTED = new Color(0x5b6875);
  static final Color RULE = new Color(0xdde2e8);
  static final Color PAPER = new Color(0xfffffe);
  static final Color CURVE = new Color(0x0b5394);
  static final Color BAND = new Color(0xb3cfe8);
  static final Color WIDE_BAND = new Color(0xe1ecf6);
  static final Color FIT = new Color(0x101a24);
  static final Color CHECK = new Color(0xc2480a);
  static final Color EXCLUDED = new Color(0x77828d);
  static final Color LIMIT = new Color(0x9b2d5d);

  private static final List<Color> SHARES =
      List.of(
          new Color(0x10305f),
          new Color(0x3a4a6d),
          new Color(0x5a616e),
          new Color(0x7a7a76),
          new Color(0x9a9377),
          new Color(0xbaae6e),
          new Color(0xd8c664),
          new Color(0xf1df8c));

  private static final int LIGHT_TEXT_UP_TO = 4;
  private static final float FONT_SIZE = 12;
  private static final int LEFT_SPACE = 58;

  private ChartStyle() {}

  static Font font() {
    return new Font(Font.SANS_SERIF, Font.PLAIN, (int) FONT_SIZE);
  }

  static Font smallFont() {
    return font().deriveFont(FONT_SIZE - 1.5f);
  }

  /** Colour of one share of a budget, dark first. */
  static Color share(int index, int of) {
    return SHARES.get(shareStep(index, of));
  }

  /** Colour of text on {@link #share}. */
  static Color textOnShare(int index, int of) {
    return shareStep(index, of) < LIGHT_TEXT_UP_TO ? Color.WHITE : Color.BLACK;
  }

  private static int shareStep(int index, int of) {
    return of <= 1 ? 0 : index * (SHARES.size() - 1) / (of - 1);
  }

  static int shares() {
    return SHARES.size();
  }

  static Stroke line(double width) {
    return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  static Stroke dashed(double width) {
    return new BasicStroke(
        (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {7, 4}, 0);
  }

  static Stroke dotted(double width) {
    return new BasicStroke(
        (float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {0.1f, 4}, 0);
  }

  static Shape circle(double size) {
    return new Ellipse2D.Double(-size / 2, -size / 2, size, size);
  }

  static Shape square(double size) {
    return new Rectangle2D.Double(-size / 2, -size / 2, size, size);
  }

  static Shape diamond(double size) {
    return AffineTransform.getRotateInstance(Math.PI / 4).createTransformedShape(square(size));
  }

  static Shape triangle(double size) {
    Path2D path = new Path2D.Double();
    path.moveTo(0, -0.6 * size);
    path.lineTo(0.55 * size, 0.4 * size);
    path.lineTo(-0.55 * size, 0.4 * size);
    path.closePath();
    return path;
  }

  static Shape cross(double size) {
    double half = size / 2;
    Path2D path = new Path2D.Double();
    path.moveTo(-half, -half);
    path.lineTo(half, half);
    path.moveTo(-half, half);
    path.lineTo(half, -half);
    return path;
  }

  /** A number axis with rounded steps and decimal points wherever the program runs. */
  static NumberAxis axis(double low, double high) {
    NumberAxis axis = new NumberAxis();
    axis.setStandardTickUnits(tickUnits());
    axis.setRange(low, high);
    axis.setTickLabelFont(font());
    axis.setLabelFont(font());
    axis.setTickLabelPaint(INK);
    axis.setLabelPaint(INK);
    axis.setAxisLinePaint(MUTED);
    axis.setAxisLineStroke(line(0.8));
    axis.setTickMarkPaint(MUTED);
    axis.setTickMarkStroke(line(0.8));
    axis.setTickMarkOutsideLength(4);
    axis.setTickLabelInsets(new RectangleInsets(3, 5, 3, 5));
    return axis;
  }

  private static TickUnits tickUnits() {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
    symbols.setMinusSign('\u2212');
    TickUnits units = new TickUnits();
    for (int exponent = -9; exponent <= 12; exponent++) {
      String decimals = "0".repeat(Math.max(0, -exponent));
      DecimalFormat format = new DecimalFormat(decimals.isEmpty() ? "0" : "0." + decimals, symbols);
      for (int step : new int[] {1, 2, 5}) {
        units.add(
            new NumberTickUnit(
                Double.parseDouble(step + "e" + exponent), format, step == 2 ? 4 : 5));
      }
    }
    return units;
  }

  /** An empty plot with both axes. */
  static XYPlot plot(NumberAxis domain, NumberAxis range) {
    XYPlot plot = new XYPlot(null, domain, range, null);
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
    plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setAxisOffset(new RectangleInsets(0, 0, 0, 0));
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinePaint(RULE);
    plot.setRangeGridlineStroke(line(0.6));
    plot.setInsets(new RectangleInsets(4, 4, 2, 10));
    return plot;
  }

  /** Gives a plot the same left edge as its neighbours, so that axes line up below each other. */
  static void alignLeft(XYPlot plot) {
    AxisSpace space = new AxisSpace();
    space.setLeft(LEFT_SPACE);
    plot.setFixedRangeAxisSpace(space);
  }

  /**
   * The finished chart. The name of the vertical axis stands above it, where it can be read without
   * turning the head.
   */
  static JFreeChart chart(XYPlot plot, String verticalName, List<LegendItem> legend) {
    LegendItemCollection items = new LegendItemCollection();
    legend.forEach(items::add);
    plot.setFixedLegendItems(items);
    JFreeChart chart = new JFreeChart(null, font(), plot, false);
    chart.setBackgroundPaint(null);
    chart.setBorderVisible(false);
    chart.setPadding(new RectangleInsets(2, 2, 2, 2));
    if (!legend.isEmpty()) {
      LegendTitle title = new LegendTitle(plot);
      title.setItemFont(font());
      title.setItemPaint(INK);
      title.setBackgroundPaint(null);
      title.setPosition(RectangleEdge.BOTTOM);
      title.setItemLabelPadding(new RectangleInsets(2, 3, 2, 8));
      title.setMargin(4, 0, 0, 0);
      chart.addSubtitle(title);
    }
    if (!verticalName.isEmpty()) {
      TextTitle title = new TextTitle(verticalName, font());
      title.setPaint(INK);
      title.setHorizontalAlignment(HorizontalAlignment.LEFT);
      title.setPosition(RectangleEdge.TOP);
      title.setPadding(2, 8, 6, 0);
      chart.addSubtitle(0, title);
    }
    return chart;
  }

  static LegendItem pointKey(String label, Shape shape, Paint fill, Paint outline) {
    return key(label, shape, fill, outline, null, null);
  }

  static LegendItem areaKey(String label, Paint fill) {
    return key(label, new Rectangle2D.Double(-9, -5, 18, 10), fill, fill, null, null);
  }

  static LegendItem lineKey(String label, Stroke stroke, Paint paint) {
    return key(label, null, null, null, stroke, paint);
  }

  private static LegendItem key(
      String label, Shape shape, Paint fill, Paint outline, Stroke stroke, Paint linePaint) {
    boolean hasShape = shape != null;
    boolean hasLine = stroke != null;
    return new LegendItem(
        label,
        null,
        null,
        null,
        hasShape,
        hasShape ? shape : square(1),
        hasShape,
        hasShape ? fill : INK,
        hasShape,
        hasShape ? outline : INK,
        line(1.2),
        hasLine,
        new Line2D.Double(-12, 0, 12, 0),
        hasLine ? stroke : line(1),
        hasLine ? linePaint : INK);
  }
}
