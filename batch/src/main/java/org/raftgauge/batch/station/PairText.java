// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.PairFit;

/** Says how two cameras stand to each other: for the person, and as a station file. */
public final class PairText {
  /** Rows farther apart than this spoil the match of both photos, px (root mean square). */
  private static final double GOOD_ROWS_PX = 0.5;

  private static final double LEAST_BASELINE_MM = 10;
  private static final double LEAST_ERRORS = 10;

  private PairText() {}

  /**
   * What a station file says of a pair.
   *
   * @param first the first camera's lens as its photos alone tell it
   * @param second the second camera's lens likewise
   * @param pair how they stand
   * @param marks texts in the names of both cameras' files; the first's may be empty
   * @param lensesGood whether both lenses are good
   */
  public record Both(
      LensFit first, LensFit second, PairFit pair, TargetMoments.Marks marks, boolean lensesGood) {}

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
            "Baseline %.2f mm, standard error %.2f mm with that of both lenses in it, from %d photos"
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
   * Says whether two cameras stand so near each other that they are one, or tell no heights.
   *
   * @param pair how they stand
   * @return whether their baseline is under 10 mm, or under ten of its standard errors
   */
  public static boolean inOnePlace(PairFit pair) {
    return pair.baselineMm() < Math.max(LEAST_BASELINE_MM, LEAST_ERRORS * pair.shiftErrorMm());
  }

  /**
   * Returns notes on marks that no file of a camera has: runs tell the cameras by them.
   *
   * @param both what the station file says
   * @param first what the first camera saw
   * @param second what the second camera saw
   * @return a line for each such mark
   */
  public static List<String> unmarked(
      Both both, TargetMoments.Seen first, TargetMoments.Seen second) {
    List<String> lines = new ArrayList<>();
    unmarked("first", first, both.marks.first()).ifPresent(lines::add);
    unmarked("second", second, both.marks.second()).ifPresent(lines::add);
    return lines;
  }

  private static Optional<String> unmarked(String who, TargetMoments.Seen seen, String mark) {
    return seen.sightings().stream().anyMatch(s -> s.photo().contains(mark))
        ? Optional.empty()
        : Optional.of(
            format(
                "Note     no photo of the %s camera has \"%s\" in its name, by which runs tell it;"
                    + " give --%smark, or mend the station file",
                who, mark, who.equals("first") ? "first-" : ""));
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
    lines.addAll(camera(both.first, both.pair.first()));
    lines.add(
        cameraHeightMm.isPresent()
            ? format("camera_height_mm: %.0f", cameraHeightMm.getAsDouble())
            : "# camera_height_mm:      measure from the first lens to the top of the floating"
                + " board");
    lines.add("second_camera:");
    lines.add("  file_mark: " + quoted(both.marks.second()));
    if (!both.marks.first().isEmpty()) {
      lines.add("  first_file_mark: " + quoted(both.marks.first()));
    }
    camera(both.second, both.pair.second()).forEach(line -> lines.add("  " + line));
    lines.add("  turn_deg: " + three(both.pair.turnDeg(), "%.5f"));
    lines.add("  shift_mm: " + three(both.pair.shiftMm(), "%.3f"));
    return String.join("\n", lines) + "\n";
  }

  private static List<String> camera(LensFit fit, Lens lens) {
    return List.of(
        "image_width_px: " + fit.widthPx(),
        "image_height_px: " + fit.heightPx(),
        LensText.lens(lens));
  }

  private static String three(List<Double> values, String pattern) {
    return "[" + String.join(", ", values.stream().map(v -> format(pattern, v)).toList()) + "]";
  }

  static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
