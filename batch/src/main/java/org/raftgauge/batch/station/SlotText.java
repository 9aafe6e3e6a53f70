// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
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
   * The photo that slots were proposed from.
   *
   * @param name its name
   * @param widthPx its width, px
   */
  public record Reference(String name, int widthPx) {}

  /**
   * Returns a station file with the slots.
   *
   * @param station the station; all of it but its slots is kept
   * @param slots the proposals
   * @param photo the reference photo; corners are written for photos of the station's size
   * @return the text of the file
   */
  public static String stationFile(Station station, List<SlotProposal> slots, Reference photo) {
    List<String> lines = new ArrayList<>();
    lines.add("# Slots proposed from " + photo.name + ": correct corners and names, then use.");
    lines.add(
        "# Corners run clockwise from the board's corner nearest A1, px of photos "
            + station.imageWidthPx()
            + " px wide.");
    lines.addAll(StationText.lines(station));
    lines.add("slots:");
    double factor = (double) station.imageWidthPx() / photo.widthPx;
    for (int i = 0; i < slots.size(); i++) {
      lines.add(slot("s" + (i + 1), slots.get(i), factor));
    }
    return String.join("\n", lines) + "\n";
  }

  private static String slot(String name, SlotProposal s, double factor) {
    String corners =
        s.cornersPx().stream()
            // Whole coordinates are pixel centres: a scaled picture's lie half a px off.
            .map(p -> new double[] {scaled(p.xPx(), factor), scaled(p.yPx(), factor)})
            .map(p -> String.format(Locale.ROOT, "[%.1f, %.1f]", p[0], p[1]))
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

  private static double scaled(double px, double factor) {
    return (px + 0.5) * factor - 0.5;
  }
}
