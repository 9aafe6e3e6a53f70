// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.raftgauge.batch.plot.Chart.Axis;
import org.raftgauge.batch.plot.Chart.Look;
import org.raftgauge.batch.plot.Chart.Scale;
import org.raftgauge.batch.plot.Chart.Series;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

class PaintChartTest {
  private static final Chart CHART =
      new Chart(
          "Weighed and predicted",
          new Axis("predicted weight, g", Scale.LOG),
          new Axis("weighed, g", Scale.LOG),
          List.of(
              new Series(
                  "Marle", Look.POINTS, List.of(10.0, 50.0, 120.0), List.of(9.0, 55.0, 130.0)),
              new Series("equal", Look.LINE, List.of(10.0, 120.0), List.of(10.0, 120.0)),
              new Series("limit", Look.DASHED, List.of(10.0, 120.0), List.of(12.0, 150.0))));

  @Test
  void chartIsOneWellFormedSvgElementOfFixedSize() throws Exception {
    Element svg = parse(PaintChart.svg(CHART, "a"));
    assertEquals("svg", svg.getTagName());
    assertEquals("0 0 640 420", svg.getAttribute("viewBox"));
    // Three marks of the points, two lines, axes and letters: many paths.
    assertTrue(svg.getElementsByTagName("path").getLength() > 20);
  }

  @Test
  void sameChartGivesTheSameBytes() {
    assertEquals(PaintChart.svg(CHART, "a"), PaintChart.svg(CHART, "a"));
  }

  @Test
  void idsAreKeptApartByTheirPrefix() {
    String svg = PaintChart.svg(CHART, "one-");
    assertTrue(svg.contains(" id=\"one-"), "ids carry the prefix");
    assertFalse(svg.matches("(?s).* id=\"(?!one-).*"), "every id does");
    assertFalse(svg.matches("(?s).*url\\(#(?!one-).*"), "and every use of one");
  }

  @Test
  void dashedLinesAreDashed() {
    assertTrue(PaintChart.svg(CHART, "a").contains("stroke-dasharray:6,4"));
  }

  @Test
  void seriesWithoutValuesOrOfTwoLengthsAreWrongCalls() {
    assertEquals(
        "x and y must be of one length >= 1, got 0 and 0",
        assertThrows(
                IllegalArgumentException.class,
                () -> new Series("none", Look.LINE, List.of(), List.of()))
            .getMessage());
    assertEquals(
        "series must be one or more, got none",
        assertThrows(
                IllegalArgumentException.class,
                () -> new Chart("t", CHART.x(), CHART.y(), List.of()))
            .getMessage());
  }

  private static Element parse(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)))
        .getDocumentElement();
  }
}
