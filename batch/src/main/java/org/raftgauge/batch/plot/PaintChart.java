// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.w3c.dom.DOMImplementation;
import org.w3c.dom.Document;

/** Paints charts as SVG. */
public final class PaintChart {
  private static final int WIDTH_PX = 640;
  private static final int HEIGHT_PX = 420;
  private static final String SVG = "http://www.w3.org/2000/svg";

  /** Made once: to look for it takes a twentieth of a chart's time. */
  private static final DOMImplementation DOCUMENTS = documents();

  private static final List<Color> COLOURS =
      List.of(
          new Color(0, 114, 178),
          new Color(213, 94, 0),
          new Color(0, 158, 115),
          new Color(204, 121, 167),
          new Color(230, 159, 0),
          new Color(86, 180, 233),
          new Color(0, 0, 0));

  private static final Color PALE = new Color(214, 230, 240);

  /** Letters that a row of the legend takes, and that a series' key is as wide as. */
  private static final int LEGEND_ROW = 60;

  private static final int KEY = 9;

  /** Readable on a phone, where a plot is half as wide, and on paper. */
  private static final Font LETTERS = new Font(Font.SANS_SERIF, Font.PLAIN, 15);

  private static final Font HEADS = new Font(Font.SANS_SERIF, Font.BOLD, 15);
  private static final BasicStroke GRID = new BasicStroke(0.5f);
  private static final Color GRID_COLOUR = new Color(205, 205, 205);
  private static final BasicStroke THIN = new BasicStroke(1.2f);
  private static final BasicStroke FAINT = new BasicStroke(0.6f);
  private static final Color COMPANY = new Color(140, 140, 140);
  private static final List<Marker> MARKS =
      List.of(
          SeriesMarkers.CIRCLE,
          SeriesMarkers.SQUARE,
          SeriesMarkers.TRIANGLE_UP,
          SeriesMarkers.DIAMOND,
          SeriesMarkers.TRIANGLE_DOWN,
          SeriesMarkers.CROSS);

  private PaintChart() {}

  /**
   * Paints a chart.
   *
   * @param chart the chart
   * @param prefix letters put before each id in it, so that several charts can stand in one page
   * @return an {@code svg} element, 640 by 420 px, without XML prolog
   */
  public static String svg(Chart chart, String prefix) {
    SVGGraphics2D canvas = canvas();
    canvas.setSVGCanvasSize(new Dimension(WIDTH_PX, HEIGHT_PX));
    paintable(chart).paint(canvas, WIDTH_PX, HEIGHT_PX);
    StringWriter out = new StringWriter();
    try {
      canvas.stream(out, true);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String text = out.toString();
    return text.substring(text.indexOf("<svg"))
        .replaceFirst("<svg", "<svg viewBox=\"0 0 " + WIDTH_PX + " " + HEIGHT_PX + "\"")
        .replaceAll("<!--.*?-->", "")
        .replace(" id=\"", " id=\"" + prefix)
        .replace("url(#", "url(#" + prefix)
        .replace("href=\"#", "href=\"#" + prefix);
  }

  private static SVGGraphics2D canvas() {
    Document document = DOCUMENTS.createDocument(SVG, "svg", null);
    return new SVGGraphics2D(new OneDecimal(document), false);
  }

  private static DOMImplementation documents() {
    try {
      return DocumentBuilderFactory.newInstance().newDocumentBuilder().getDOMImplementation();
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }

  private static XYChart paintable(Chart chart) {
    XYChart painted =
        new XYChartBuilder()
            .width(WIDTH_PX)
            .height(HEIGHT_PX)
            .title(chart.title())
            .xAxisTitle(chart.x().title())
            .yAxisTitle(chart.y().title())
            .build();
    // Dashes would be drawn one by one, most of a file.
    painted.getStyler().setPlotGridLinesStroke(GRID);
    painted.getStyler().setPlotGridLinesColor(GRID_COLOUR);
    int letters = chart.series().stream().mapToInt(each -> each.name().length() + KEY).sum();
    boolean beside = letters > LEGEND_ROW;
    painted
        .getStyler()
        .setXAxisLogarithmic(chart.x().scale() == Chart.Scale.LOG)
        .setYAxisLogarithmic(chart.y().scale() == Chart.Scale.LOG)
        .setLocale(Locale.ROOT)
        .setChartBackgroundColor(Color.WHITE)
        .setPlotBorderVisible(false)
        .setLegendPosition(beside ? Styler.LegendPosition.OutsideE : Styler.LegendPosition.OutsideS)
        .setLegendLayout(beside ? Styler.LegendLayout.Vertical : Styler.LegendLayout.Horizontal)
        .setLegendBorderColor(Color.WHITE)
        .setLegendFont(LETTERS)
        .setChartTitleFont(HEADS);
    painted.getStyler().setAxisTickLabelsFont(LETTERS).setAxisTitleFont(HEADS);
    axes(chart, painted.getStyler());
    for (int i = 0; i < chart.series().size(); i++) {
      add(painted, chart.series().get(i), i);
    }
    return painted;
  }

  /** Gives the axes round ends and marks with numbers at them. */
  private static void axes(Chart chart, XYStyler styler) {
    RoundTicks x = RoundTicks.of(chart.x().scale(), all(chart, Chart.Series::x));
    RoundTicks y = RoundTicks.of(chart.y().scale(), all(chart, Chart.Series::y));
    styler
        .setXAxisMin(x.min())
        .setXAxisMax(x.max())
        .setYAxisMin(y.min())
        .setYAxisMax(y.max())
        .setXAxisLogarithmicDecadeOnly(false)
        .setYAxisLogarithmicDecadeOnly(false)
        .setXAxisTickLabelsFormattingFunction(words(chart.x().scale()))
        .setYAxisTickLabelsFormattingFunction(words(chart.y().scale()));
  }

  private static List<Double> all(Chart chart, Function<Chart.Series, List<Double>> values) {
    return chart.series().stream().flatMap(series -> values.apply(series).stream()).toList();
  }

  private static Function<Double, String> words(Chart.Scale scale) {
    return scale == Chart.Scale.LOG ? RoundTicks::ofLog : RoundTicks::plain;
  }

  /** Says whether no two values of a series are joined, so that a line alone would show none. */
  private static boolean isLonely(Chart.Series series) {
    for (int i = 1; i < series.y().size(); i++) {
      if (Double.isFinite(series.y().get(i)) && Double.isFinite(series.y().get(i - 1))) {
        return false;
      }
    }
    return true;
  }

  private static void add(XYChart painted, Chart.Series series, int number) {
    Color colour = COLOURS.get(number % COLOURS.size());
    XYSeries added = painted.addSeries(series.name(), series.x(), series.y());
    added.setMarkerColor(colour).setLineColor(colour);
    switch (series.look()) {
      case POINTS ->
          added
              .setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter)
              .setMarker(SeriesMarkers.CIRCLE);
      case LINE -> added.setMarker(SeriesMarkers.NONE).setLineStyle(new BasicStroke(2));
      case DASHED ->
          added
              .setMarker(SeriesMarkers.NONE)
              .setLineStyle(
                  new BasicStroke(
                      1.5f,
                      BasicStroke.CAP_BUTT,
                      BasicStroke.JOIN_ROUND,
                      1,
                      new float[] {6, 4},
                      0));
      case MARKED -> added.setMarker(MARKS.get(number % MARKS.size())).setLineStyle(THIN);
      case FAINT ->
          added
              .setMarker(isLonely(series) ? SeriesMarkers.CIRCLE : SeriesMarkers.NONE)
              .setMarkerColor(COMPANY)
              .setLineStyle(FAINT)
              .setLineColor(COMPANY);
      case BAND ->
          added
              .setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.PolygonArea)
              .setMarker(SeriesMarkers.NONE)
              .setLineStyle(SeriesLines.NONE)
              .setFillColor(PALE);
    }
  }
}
