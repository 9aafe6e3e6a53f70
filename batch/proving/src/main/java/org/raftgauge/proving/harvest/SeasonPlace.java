// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.harvest;

import java.util.Locale;
import org.raftgauge.core.book.HeightModel;

/**
 * Where a season's rafts are photographed, as its book says it.
 *
 * @param layout name of the boards
 * @param layouts {@code layouts.yaml}
 * @param station {@code stations/bench.yaml}
 * @param heights of the crop
 */
record SeasonPlace(String layout, String layouts, String station, HeightModel heights) {
  /** A place without photos: nothing in it is ever measured by. */
  static final SeasonPlace UNSEEN =
      new SeasonPlace(
          "season-18",
          """
          layouts:
            season-18:
              board: {width_mm: 600, length_mm: 1200}
              sites: {rows: 6, columns: 3, first_x_mm: 120, first_y_mm: 150, pitch_x_mm: 180, pitch_y_mm: 180}
              tag: {x_mm: 300, y_mm: 42, side_mm: 60}
          """,
          """
          kind: passing
          cameras: 1
          image_width_px: 2000
          image_height_px: 3000
          lens: {fx_px: 3000, fy_px: 3000, cx_px: 1000, cy_px: 1500}
          camera_height_mm: 1600
          """,
          new HeightModel(5, 0.5, 0.5));

  /** Returns the crop's height model as the book has it. */
  String heightModel() {
    return String.format(
        Locale.ROOT,
        "{scale_mm: %.4f, exponent: %.4f, mean_to_top: %.3f}",
        heights.scaleMm(),
        heights.exponent(),
        heights.meanToTop());
  }
}
