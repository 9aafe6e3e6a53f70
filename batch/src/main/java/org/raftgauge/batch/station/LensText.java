// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.station;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.calibrate.CalibrationTarget;
import org.raftgauge.core.calibrate.LensErrors;
import org.raftgauge.core.calibrate.LensFit;
import org.raftgauge.core.calibrate.LensReport;
import org.raftgauge.core.calibrate.NoLens;
import org.raftgauge.core.calibrate.ViewFit;

/** Says a calibration in words: for the person, and as a station file. */
public final class LensText {

  private LensText() {}

  /**
   * Returns the lines for the person who calibrates.
   *
   * @param report the calibration
   * @return one line a photo, the lens with its errors, the verdict
   */
  public static List<String> lines(LensReport report) {
    List<String> lines = new ArrayList<>();
    if (report.result() instanceof LensFit fit) {
      lines.add("Reprojection error of each photo, px (mean, root mean square), target's tilt:");
      for (ViewFit view : fit.views()) {
        lines.add(
            format(
                "  %-24s %6.3f %6.3f  %3.0f degrees",
                view.photo(), view.meanErrorPx(), view.rmsErrorPx(), view.tiltDeg()));
      }
    }
    report.leftOut().forEach(out -> lines.add("Left out " + out.photo() + ": " + out.why()));
    if (report.result() instanceof LensFit fit) {
      lines.add(overall(fit));
      lines.add(errors(fit.errors()));
      lines.add(lens(fit.lens()));
      lines.addAll(verdict(report));
    }
    return lines;
  }

  /** Returns the verdict's lines. */
  private static List<String> verdict(LensReport report) {
    if (report.good()) {
      return List.of("Verdict: good");
    }
    List<String> lines = new ArrayList<>();
    lines.add("Verdict: usable with care, not good yet");
    report.retake().forEach(what -> lines.add("  " + what));
    return lines;
  }

  /**
   * Says why there is no lens.
   *
   * @param report what came of calibrating
   * @return one line; empty where there is a lens
   */
  public static String noLens(LensReport report) {
    return report.result() instanceof NoLens none ? "No lens: " + none.reason() : "";
  }

  /**
   * Returns a station file with the lens.
   *
   * @param report a calibration that gave a lens
   * @param fit its lens
   * @param target what was photographed
   * @param cameraHeightMm height of the camera over the deck, mm, where it was given
   * @return the text of the file
   */
  public static String stationFile(
      LensReport report, LensFit fit, CalibrationTarget target, OptionalDouble cameraHeightMm) {
    List<String> lines = new ArrayList<>();
    lines.add("# Lens calibrated from " + fit.views().size() + " photos of " + target + ".");
    lines.add("# " + overall(fit));
    lines.add("# " + errors(fit.errors()));
    verdict(report).forEach(line -> lines.add("# " + line));
    lines.add("kind: passing");
    lines.add("cameras: 1");
    lines.add("image_width_px: " + fit.widthPx());
    lines.add("image_height_px: " + fit.heightPx());
    lines.add(lens(fit.lens()));
    lines.add(
        cameraHeightMm.isPresent()
            ? format("camera_height_mm: %.0f", cameraHeightMm.getAsDouble())
            : "# camera_height_mm:      measure from the lens to the top of the floating board");
    return String.join("\n", lines) + "\n";
  }

  private static String overall(LensFit fit) {
    return format(
        "Reprojection error: mean %.3f px, root mean square %.3f px, %d photos of %d x %d px.",
        fit.meanErrorPx(), fit.rmsErrorPx(), fit.views().size(), fit.widthPx(), fit.heightPx());
  }

  private static String errors(LensErrors e) {
    String terms =
        format("k1 %.4f, k2 %.4f, p1 %.5f, p2 %.5f", e.k1(), e.k2(), e.p1(), e.p2())
            + (e.k3() > 0 ? format(", k3 %.4f", e.k3()) : "; k3 not fitted");
    return format(
            "Standard errors: fx %.2f, fy %.2f, cx %.2f, cy %.2f px; ",
            e.fxPx(), e.fyPx(), e.cxPx(), e.cyPx())
        + terms
        + ".";
  }

  /** Returns a lens as the station file's line. */
  static String lens(Lens l) {
    return format(
        "lens: {fx_px: %.2f, fy_px: %.2f, cx_px: %.2f, cy_px: %.2f,"
            + " k1: %.5f, k2: %.5f, p1: %.6f, p2: %.6f, k3: %.5f}",
        l.fxPx(), l.fyPx(), l.cxPx(), l.cyPx(), l.k1(), l.k2(), l.p1(), l.p2(), l.k3());
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
