// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.plot;

import java.util.List;

/**
 * A plot of y on x.
 *
 * @param title over it
 * @param x the axis to the right
 * @param y the axis upward
 * @param series what is drawn, at least one; the first is drawn first
 */
public record Chart(String title, Axis x, Axis y, List<Series> series) {

  /** Copies the list. */
  public Chart {
    series = List.copyOf(series);
    if (series.isEmpty()) {
      throw new IllegalArgumentException("series must be one or more, got none");
    }
  }

  /**
   * An axis.
   *
   * @param title with the unit
   * @param scale linear or logarithmic
   */
  public record Axis(String title, Scale scale) {}

  /** How an axis counts. */
  public enum Scale {
    /** By equal steps. */
    LINEAR,
    /** By equal factors; values must be above 0. */
    LOG
  }

  /** How a series is drawn. */
  public enum Look {
    /** A mark for each value. */
    POINTS,
    /** A line through the values. */
    LINE,
    /** A dashed line through the values. */
    DASHED,
    /** A line with a mark for each value, whose shape is the series' own. */
    MARKED,
    /** A thin grey line through the values: what is only company. */
    FAINT,
    /** A pale area inside the closed line through the values. */
    BAND
  }

  /**
   * Values that belong together.
   *
   * @param name in the legend, unique in the chart
   * @param look how it is drawn
   * @param x values, at least one
   * @param y as many; not a number where a line breaks off to begin anew
   */
  public record Series(String name, Look look, List<Double> x, List<Double> y) {

    /** Copies the lists. */
    public Series {
      x = List.copyOf(x);
      y = List.copyOf(y);
      if (x.isEmpty() || x.size() != y.size()) {
        throw new IllegalArgumentException(
            "x and y must be of one length >= 1, got " + x.size() + " and " + y.size());
      }
    }
  }
}
