// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.book.Station;

/** Writes a station as its file says it, but for its slots. */
final class StationText {

  private StationText() {}

  /** Returns the lines of a fixed station's file, numbers as exact as they were read. */
  static List<String> lines(Station station) {
    List<String> lines = new ArrayList<>();
    lines.add("kind: fixed");
    lines.add("cameras: " + station.cameras());
    lines.add("image_width_px: " + station.imageWidthPx());
    lines.add("image_height_px: " + station.imageHeightPx());
    lines.add(lens(station.lens()));
    lines.add("camera_height_mm: " + plain(station.cameraHeightMm()));
    if (!station.clockOffset().isZero()) {
      lines.add("clock_offset_s: " + station.clockOffset().toMillis() / 1000.0);
    }
    if (!station.changedOn().isEmpty()) {
      lines.add("changed_on: " + station.changedOn());
    }
    station.second().ifPresent(second -> lines.addAll(second(second)));
    return lines;
  }

  private static List<String> second(SecondCamera camera) {
    List<String> lines = new ArrayList<>();
    lines.add("second_camera:");
    lines.add("  sees: " + camera.sees().name().toLowerCase(Locale.ROOT));
    lines.add("  file_mark: " + PairText.quoted(camera.fileMark()));
    if (!camera.firstFileMark().isEmpty()) {
      lines.add("  first_file_mark: " + PairText.quoted(camera.firstFileMark()));
    }
    lines.add("  image_width_px: " + camera.imageWidthPx());
    lines.add("  image_height_px: " + camera.imageHeightPx());
    lines.add("  " + lens(camera.lens()));
    lines.add("  turn_deg: " + three(camera.turnDeg()));
    lines.add("  shift_mm: " + three(camera.shiftMm()));
    return lines;
  }

  private static String lens(Lens l) {
    return String.format(
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
        plain(l.k3()));
  }

  private static String three(List<Double> values) {
    return values.stream().map(StationText::plain).collect(Collectors.joining(", ", "[", "]"));
  }

  /** Returns a number as a person writes it, without an exponent. */
  private static String plain(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }
}
