// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.util.List;
import java.util.Locale;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.plane.Rotations;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;

/**
 * A passing station with two cameras side by side, 1600 mm over a board of 600 x 1200 mm: neither
 * quite plumb, the second turned and tilted against the first, each with its own lens.
 *
 * @param focalPx focal length of both, px
 * @param baselineMm distance between both
 */
record PairStation(double focalPx, double baselineMm) {
  static final double HEIGHT_MM = 1600;

  /** Board with room beside it, mm. */
  private static final double WIDE_MM = 860;

  private static final double HIGH_MM = 1360;
  private static final String LENS =
      "lens: {fx_px: %.4f, fy_px: %.4f, cx_px: %.3f, cy_px: %.3f, k1: %.6f, k2: %.6f, p1: %.6f,"
          + " p2: %.6f, k3: %.6f}";

  /** Says whether its first photos are measured by height models too: one lens is enough. */
  boolean asksModels() {
    return focalPx == 1200 && baselineMm == 120;
  }

  int widthPx() {
    return (int) Math.round(WIDE_MM * focalPx / HEIGHT_MM);
  }

  int heightPx() {
    return (int) Math.round(HIGH_MM * focalPx / HEIGHT_MM);
  }

  /** Returns a name for files. */
  String code() {
    return String.format(Locale.ROOT, "f%.0f-b%.0f", focalPx, baselineMm);
  }

  /** Returns the mm of height that a px of disparity makes on the deck. */
  double mmPerDisparityPx() {
    return HEIGHT_MM * HEIGHT_MM / (focalPx * baselineMm);
  }

  Camera first() {
    return camera(-1, new double[] {0.004, -0.006, 0.005}, lens(4, -3, -0.09));
  }

  Camera second() {
    return camera(1, new double[] {0.011, 0.004, -0.007}, lens(-5, 4, -0.084));
  }

  private Camera camera(double side, double[] turnAndTilts, Lens lens) {
    Hold hold =
        new Hold(
            300 + side * baselineMm / 2,
            600 + side * 1.5,
            HEIGHT_MM + side * 1.2,
            turnAndTilts[0],
            turnAndTilts[1],
            turnAndTilts[2]);
    return new Camera(lens, widthPx(), heightPx(), hold);
  }

  private Lens lens(double rightPx, double downPx, double k1) {
    return new Lens(
        focalPx,
        focalPx,
        widthPx() / 2.0 + rightPx,
        heightPx() / 2.0 + downPx,
        k1,
        0.02,
        0.0003,
        -0.0002,
        0);
  }

  /** Returns the station file, with the second camera exactly where it stands. */
  String yaml() {
    double[] r = Rotations.times(rotation(second()), transposed(rotation(first())));
    double[] t = new double[3];
    for (int i = 0; i < 3; i++) {
      t[i] = second().shift(i);
      for (int k = 0; k < 3; k++) {
        t[i] -= r[3 * i + k] * first().shift(k);
      }
    }
    List<String> lines =
        List.of(
            "kind: passing",
            "cameras: 2",
            size(""),
            lens(first().lens()),
            line("camera_height_mm: %.1f", HEIGHT_MM),
            "second_camera:",
            "  file_mark: _right",
            "  first_file_mark: _left",
            size("  "),
            "  " + lens(second().lens()),
            line("  turn_deg: [%.6f, %.6f, %.6f]", vector(r)),
            line("  shift_mm: [%.4f, %.4f, %.4f]", t[0], t[1], t[2]));
    return String.join("\n", lines) + "\n";
  }

  private String size(String indent) {
    return line(
        "%simage_width_px: %d%n%simage_height_px: %d", indent, widthPx(), indent, heightPx());
  }

  private static String lens(Lens l) {
    return line(
        LENS, l.fxPx(), l.fyPx(), l.cxPx(), l.cyPx(), l.k1(), l.k2(), l.p1(), l.p2(), l.k3());
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private static double[] rotation(Camera camera) {
    double[] r = new double[9];
    for (int i = 0; i < 9; i++) {
      r[i] = camera.rotation(Math.floorDiv(i, 3), i % 3);
    }
    return r;
  }

  private static double[] transposed(double[] m) {
    return new double[] {m[0], m[3], m[6], m[1], m[4], m[7], m[2], m[5], m[8]};
  }

  /** Returns a small rotation as a vector, degrees. */
  private static Object[] vector(double[] r) {
    double x = r[7] - r[5];
    double y = r[2] - r[6];
    double z = r[3] - r[1];
    double sine = Math.sqrt(x * x + y * y + z * z) / 2;
    double angle = Math.atan2(sine, (r[0] + r[4] + r[8] - 1) / 2);
    double share = sine < 1e-12 ? 0 : Math.toDegrees(angle) / (2 * sine);
    return new Object[] {x * share, y * share, z * share};
  }
}
