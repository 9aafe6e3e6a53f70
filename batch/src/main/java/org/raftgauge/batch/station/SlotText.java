// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.Station;
import org.raftgauge.core.plane.SlotProposal;

/** Says proposed slots in words: for the crop lead, and as a station file. */
public final class SlotText {
  /** Outlines that show less than that should be looked at first. */
  private static final double PLAIN = 0.85;

  /** Boards that seem nearer or farther than the middle one by more are doubtful. */
  private static final double LEVEL_SHARE = 0.008;

  private SlotText() {}

  /**
   * Returns the lines for the crop lead.
   *
   * @param slots the proposals, in the order of their names s1, s2, ...
   * @return one line a slot, and the height that the boards' size tells
   */
  public static List<String> lines(List<SlotProposal> slots) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < slots.size(); i++) {
      SlotProposal s = slots.get(i);
      List<String> doubts = doubts(s, middleHeightMm(slots));
      lines.add(
          String.format(
              Locale.ROOT,
              "s%d  %s  outline %.0f %%%s%s",
              i + 1,
              s.layout().name(),
              100 * s.edgeShare(),
              s.holes()
                  .map(
                      h ->
                          String.format(
                              Locale.ROOT,
                              ", hole grid %.1f %% of its size (+- %.1f), off by (%.0f, %.0f) mm",
                              100 * h.scale(),
                              100 * h.scaleError(),
                              h.shiftXMm(),
                              h.shiftYMm()))
                  .orElse(", hole grid hidden"),
              doubts.isEmpty() ? "" : "; look at: " + String.join(", ", doubts)));
    }
    if (!slots.isEmpty()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Camera height by the boards' size: %.0f mm (middle of %d boards)",
              middleHeightMm(slots),
              slots.size()));
    }
    return lines;
  }

  private static List<String> doubts(SlotProposal s, double heightMm) {
    List<String> doubts = new ArrayList<>();
    if (s.edgeShare() < PLAIN || Math.abs(s.pose().heightMm() / heightMm - 1) > LEVEL_SHARE) {
      doubts.add("its outline");
    }
    if (!s.originKnown()) {
      doubts.add("which end is A1's");
    }
    return doubts;
  }

  private static double middleHeightMm(List<SlotProposal> slots) {
    double[] heights = slots.stream().mapToDouble(s -> s.pose().heightMm()).sorted().toArray();
    return heights[heights.length / 2];
  }

  /**
   * Returns a station file with the slots.
   *
   * @param station the station; lens, size and height are kept
   * @param slots the proposals
   * @param photo name of the reference photo
   * @return the text of the file
   */
  public static String stationFile(Station station, List<SlotProposal> slots, String photo) {
    Lens l = station.lens();
    List<String> lines = new ArrayList<>();
    lines.add("# Slots proposed from " + photo + ": correct corners and names, then use.");
    lines.add("# Corners run clockwise from the board's corner nearest A1, px of that photo.");
    lines.add("kind: fixed");
    lines.add("cameras: " + station.cameras());
    lines.add("image_width_px: " + station.imageWidthPx());
    lines.add("image_height_px: " + station.imageHeightPx());
    lines.add(
        String.format(
            Locale.ROOT,
            "lens: {fx_px: %s, fy_px: %s, cx_px: %s, cy_px: %s,"
                + " k1: %s, k2: %s, p1: %s, p2: %s, k3: %s}",
            plain(l.fxPx()),
            plain(l.fyPx()),
            plain(l.cxPx()),
            plain(l.cyPx()),
            plain(l.k1()),
            plain(l.k2()),
            plain(l.p1()),
            plain(l.p2()),
            plain(l.k3())));
    lines.add("camera_height_mm: " + plain(station.cameraHeightMm()));
    if (!station.clockOffset().isZero()) {
      lines.add("clock_offset_s: " + station.clockOffset().toMillis() / 1000.0);
    }
    lines.add("slots:");
    for (int i = 0; i < slots.size(); i++) {
      lines.add(slot("s" + (i + 1), slots.get(i)));
    }
    return String.join("\n", lines) + "\n";
  }

  /** Returns a number as a person writes it, without an exponent. */
  private static String plain(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  private static String slot(String name, SlotProposal s) {
    String corners =
        s.cornersPx().stream()
            .map(p -> String.format(Locale.ROOT, "[%.1f, %.1f]", p.xPx(), p.yPx()))
            .collect(Collectors.joining(", "));
    return "  - {name: "
        + name
        + ", layout: "
        + s.layout().name()
        + ", corners_px: ["
        + corners
        + "], refine: edges}"
        + (s.originKnown() ? "" : "   # may have to begin at the opposite corner");
  }
}
