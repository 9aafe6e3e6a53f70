// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.PairFit;

/** Says how two cameras stand to each other: for the person, and as a station file. */
public final class PairText {
  /** Rows farther apart than this spoil the match of both photos, px (root mean square). */
  private static final double GOOD_ROWS_PX = 0.5;

  private PairText() {}

  /**
   * What a station file says of a pair.
   *
   * @param first the first camera's lens
   * @param second the second camera's lens
   * @param pair how they stand
   * @param firstMark text in the first camera's file names; may be empty
   * @param mark text in the second camera's file names
   * @param lensesGood whether both lenses are good: the pair's own errors take them as they are
   */
  public record Both(
      LensFit first,
      LensFit second,
      PairFit pair,
      String firstMark,
      String mark,
      boolean lensesGood) {}

  /**
   * Returns the lines for the person who calibrates.
   *
   * @param both how the cameras stand
   * @return baseline, errors and the verdict
   */
  public static List<String> lines(Both both) {
    PairFit pair = both.pair;
    List<String> lines = new ArrayList<>();
    lines.add(
        format(
            "Baseline %.2f mm, standard error %.2f mm with both lenses as they are, from %d photos"
                + " of each camera.",
            pair.baselineMm(), pair.shiftErrorMm(), pair.photos().size()));
    lines.add(
        format("Reprojection error, both cameras: root mean square %.3f px.", pair.rmsErrorPx()));
    lines.add(
        format(
            "Rows of the same point in both pictures: root mean square %.2f px apart, at most"
                + " %.2f.",
            pair.rowErrorPx(), pair.worstRowPx()));
    lines.add(verdict(both));
    return lines;
  }

  private static String verdict(Both both) {
    if (both.pair.rowErrorPx() > GOOD_ROWS_PX) {
      return "Verdict of the pair: not good: a camera moved between the photos, or a lens is far"
          + " off; fasten both cameras and take the photos again";
    }
    return both.lensesGood
        ? "Verdict of the pair: good"
        : "Verdict of the pair: usable with care: a lens is not good yet, and an error in its focal"
            + " length is one of the baseline and of every height";
  }

  /**
   * Returns a station file of both cameras.
   *
   * @param both what it says of them
   * @param cameraHeightMm height of the first camera over the deck, mm, where it was given
   * @return the text of the file
   */
  public static String stationFile(Both both, OptionalDouble cameraHeightMm) {
    List<String> lines = new ArrayList<>();
    lines(both).forEach(line -> lines.add("# " + line));
    lines.add("kind: passing");
    lines.add("cameras: 2");
    lines.addAll(camera(both.first));
    lines.add(
        cameraHeightMm.isPresent()
            ? format("camera_height_mm: %.0f", cameraHeightMm.getAsDouble())
            : "# camera_height_mm:      measure from the first lens to the top of the floating"
                + " board");
    lines.add("second_camera:");
    lines.add("  file_mark: " + quoted(both.mark));
    if (!both.firstMark.isEmpty()) {
      lines.add("  first_file_mark: " + quoted(both.firstMark));
    }
    camera(both.second).forEach(line -> lines.add("  " + line));
    lines.add("  turn_deg: " + three(both.pair.turnDeg(), "%.5f"));
    lines.add("  shift_mm: " + three(both.pair.shiftMm(), "%.3f"));
    return String.join("\n", lines) + "\n";
  }

  private static List<String> camera(LensFit fit) {
    return List.of(
        "image_width_px: " + fit.widthPx(),
        "image_height_px: " + fit.heightPx(),
        LensText.lens(fit.lens()));
  }

  private static String three(List<Double> values, String pattern) {
    return "[" + String.join(", ", values.stream().map(v -> format(pattern, v)).toList()) + "]";
  }

  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
