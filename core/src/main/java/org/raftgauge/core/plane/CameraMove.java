// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/**
 * How a fixed camera has moved since its reference photo: a turn about any axis, and a little
 * shift. Old camera coordinates are the world, and the moved camera looks at them.
 *
 * @param view the moved camera's pose in the old camera's coordinates
 */
record CameraMove(CameraPose view) {
  /** A knocked camera turns on its mount; the mount itself gives way by about that, mm. */
  private static final double SHIFT_MM = 20;

  private static final double TURN_DEG = 5;

  /** Error of a board's corner as found on its edges, px; only its ratio to the above matters. */
  private static final double CORNER_PX = 0.5;

  /** Returns the turn that shifts the middle of the picture. */
  static CameraMove ofShift(Lens lens, double dxPx, double dyPx) {
    double[] turn = Rotations.about(-dyPx / lens.fyPx(), dxPx / lens.fxPx(), 0);
    return new CameraMove(CameraPose.of(lens, turn, new double[3]));
  }

  /** A board's pose in the reference photo, and as found. */
  record Pair(CameraPose old, CameraPose found, Board board) {}

  /**
   * Fits the move that boards have in common; a board that has itself moved weighs little.
   *
   * @param start a rough move
   * @param pairs one board or more
   */
  static CameraMove common(CameraMove start, List<Pair> pairs) {
    List<FitPose.Pull> pulls = new ArrayList<>();
    for (Pair pair : pairs) {
      for (PointMm corner : BoardPlaces.corners(pair.board())) {
        double[] at = inCamera(pair.old(), corner);
        pulls.add(pull(at, pair.found().toPhoto(corner)));
      }
    }
    pulls.add(staysPut());
    // The height of the moved camera in the old one's coordinates is its shift along the axis.
    FitPose.Prior prior = new FitPose.Prior(start.view().lens(), 1, SHIFT_MM, TURN_DEG);
    return new CameraMove(FitPose.fit(start.view(), pulls, prior).pose());
  }

  /** Returns what a pose over a board becomes. */
  CameraPose applied(CameraPose old) {
    double[] q = view.rotation();
    double[] t = old.translationMm();
    double[] d = view.translationMm();
    double[] moved = new double[3];
    for (int i = 0; i < 3; i++) {
      moved[i] = q[3 * i] * t[0] + q[3 * i + 1] * t[1] + q[3 * i + 2] * t[2] + d[i];
    }
    return CameraPose.of(view.lens(), Rotations.times(q, old.rotation()), moved);
  }

  /** Returns where a place of the old picture has gone, for things at a depth. */
  PointPx applied(PointPx old, double depthMm) {
    double[] ray = Distortion.toRay(view.lens(), old);
    return view.toPhoto(ray[0] * depthMm, ray[1] * depthMm, -depthMm);
  }

  /** Returns the turn about the camera's axis, degrees. */
  double turnDeg() {
    double[] r = view.rotation();
    return Math.toDegrees(Math.atan2(r[3], r[0]));
  }

  private static double[] inCamera(CameraPose pose, PointMm p) {
    double[] r = pose.rotation();
    double[] t = pose.translationMm();
    return new double[] {
      r[0] * p.xMm() + r[1] * p.yMm() + t[0],
      r[3] * p.xMm() + r[4] * p.yMm() + t[1],
      r[6] * p.xMm() + r[7] * p.yMm() + t[2]
    };
  }

  private static FitPose.Pull pull(double[] at, PointPx seen) {
    return new FitPose.Pull() {
      @Override
      public int size() {
        return 2;
      }

      @Override
      public void residuals(CameraPose pose, double[] out, int i) {
        PointPx p = pose.toPhoto(at[0], at[1], -at[2]);
        out[i] = (p.xPx() - seen.xPx()) / CORNER_PX;
        out[i + 1] = (p.yPx() - seen.yPx()) / CORNER_PX;
      }
    };
  }

  private static FitPose.Pull staysPut() {
    return new FitPose.Pull() {
      @Override
      public int size() {
        return 2;
      }

      @Override
      public void residuals(CameraPose pose, double[] out, int i) {
        double[] t = pose.translationMm();
        out[i] = t[0] / SHIFT_MM;
        out[i + 1] = t[1] / SHIFT_MM;
      }
    };
  }
}
