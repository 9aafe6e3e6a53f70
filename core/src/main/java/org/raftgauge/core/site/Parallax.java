// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import org.raftgauge.core.book.HeightModel;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.plane.CameraPose;

/**
 * Takes out what standing above the deck does to a plant's looks.
 *
 * <p>A point at height h under a camera at height H is seen on the deck plane at {@code foot +
 * (place - foot) * H / (H - h)}: lengths grow by {@code H / (H - h)}, areas by its square.
 */
final class Parallax {
  /**
   * The fixed point is contracted by under a half a round for any plant that a station can
   * photograph.
   */
  private static final int ROUNDS = 30;

  /** A plant reaching past this share of the camera's height is not believed. */
  private static final double MOST_HEIGHT = 0.6;

  private Parallax() {}

  /** Returns where a place at a height is seen on the deck plane. */
  static PointMm seenAt(PointMm place, double heightMm, CameraPose pose) {
    PointMm foot = pose.foot();
    double grow = pose.magnification(Math.min(heightMm, MOST_HEIGHT * pose.heightMm()));
    return new PointMm(
        foot.xMm() + (place.xMm() - foot.xMm()) * grow,
        foot.yMm() + (place.yMm() - foot.yMm()) * grow);
  }

  /**
   * Solves area and height together: {@code A = seen * (1 - h(A) / H)^2}.
   *
   * @param seenCm2 area on the deck plane, cm2
   * @param model height from area
   * @param cameraHeightMm H, mm
   * @return mean canopy height, mm
   */
  static double heightMm(double seenCm2, HeightModel model, double cameraHeightMm) {
    double height = 0;
    for (int i = 0; i < ROUNDS; i++) {
      double factor = factor(height, cameraHeightMm);
      height = Math.min(model.meanHeightMm(seenCm2 * factor), MOST_HEIGHT * cameraHeightMm);
    }
    return height;
  }

  /** Returns {@code (1 - h / H)^2}. */
  static double factor(double heightMm, double cameraHeightMm) {
    double share = 1 - heightMm / cameraHeightMm;
    return share * share;
  }
}
