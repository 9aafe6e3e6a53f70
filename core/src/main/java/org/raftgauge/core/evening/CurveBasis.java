// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.List;
import java.util.OptionalDouble;
import org.raftgauge.core.growth.Series;

/** Counts what a plant's curve can rest on: its photos, open and closed. */
final class CurveBasis {
  private CurveBasis() {}

  /** Returns the photos on which it was not closed. */
  static int open(Series series) {
    int open = 0;
    for (int i = 0; i < series.size(); i++) {
      open += series.isClosed(i) ? 0 : 1;
    }
    return open;
  }

  /** Says why so few open photos carry no curve. */
  static String tooFew(Series series) {
    if (series.size() == 0) {
      return "no canopy was measured yet";
    }
    return open(series) == 0
        ? "every photo is a lower bound: the plant is closed"
        : "one open photo is too few";
  }

  /**
   * Tells a row what it rests on.
   *
   * @param series the plant's photos
   * @param discounted days of photos that hardly count
   */
  static CurveRow.Basis of(Series series, List<Double> discounted) {
    int n = series.size();
    OptionalDouble last = n == 0 ? OptionalDouble.empty() : OptionalDouble.of(series.dat(n - 1));
    return new CurveRow.Basis(n, n - open(series), last, discounted);
  }
}
