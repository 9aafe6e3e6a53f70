// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import org.raftgauge.core.plane.CameraPose;

/** Places over a board in a camera's axes, and back. */
final class OverBoard {
  private final double[] r;
  private final double[] t;

  OverBoard(CameraPose pose) {
    this.r = pose.rotation();
    this.t = pose.translationMm();
  }

  /** Returns a place over the board in the camera's axes, mm. */
  static double[] inCamera(CameraPose pose, double xMm, double yMm, double zMm) {
    return new OverBoard(pose).inCamera(xMm, yMm, zMm);
  }

  double[] inCamera(double xMm, double yMm, double zMm) {
    double[] at = PairGeometry.turned(r, new double[] {xMm, yMm, -zMm});
    return new double[] {at[0] + t[0], at[1] + t[1], at[2] + t[2]};
  }

  /** Returns the height over the deck of a place in the camera's axes, mm. */
  double heightMm(double[] at) {
    return -(r[2] * (at[0] - t[0]) + r[5] * (at[1] - t[1]) + r[8] * (at[2] - t[2]));
  }
}
