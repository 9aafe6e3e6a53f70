// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.Locale;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.TagPlace;

/** Writes {@code layouts.yaml} of a book that has one board. */
public final class LayoutText {
  private LayoutText() {}

  /**
   * Words a layout.
   *
   * @param layout a board, with or without corner markers and a tag
   * @return the file
   */
  public static String of(Layout layout) {
    SiteGrid g = layout.grid();
    String board =
        String.format(
            Locale.ROOT,
            "layouts:%n  %s:%n    board: {width_mm: %.0f, length_mm: %.0f}%n    sites: {rows: %d,"
                + " columns: %d, first_x_mm: %.0f, first_y_mm: %.0f, pitch_x_mm: %.0f, pitch_y_mm:"
                + " %.0f, stagger_x_mm: %.0f}%n",
            layout.name(),
            layout.board().widthMm(),
            layout.board().lengthMm(),
            g.rows(),
            g.columns(),
            g.firstXMm(),
            g.firstYMm(),
            g.pitchXMm(),
            g.pitchYMm(),
            g.staggerXMm());
    return board
        + layout.markers().map(LayoutText::markers).orElse("")
        + layout.tag().map(LayoutText::tag).orElse("");
  }

  private static String markers(CornerMarkers markers) {
    return String.format(
        Locale.ROOT,
        "    markers: {family: tag36h11, side_mm: %.0f, centres_mm: [%s]}%n",
        markers.sideMm(),
        markers.centresMm().stream()
            .map(p -> String.format(Locale.ROOT, "[%.0f, %.0f]", p.xMm(), p.yMm()))
            .collect(Collectors.joining(", ")));
  }

  private static String tag(TagPlace tag) {
    return String.format(
        Locale.ROOT,
        "    tag: {x_mm: %.0f, y_mm: %.0f, side_mm: %.0f}%n",
        tag.xMm(),
        tag.yMm(),
        tag.sideMm());
  }
}
