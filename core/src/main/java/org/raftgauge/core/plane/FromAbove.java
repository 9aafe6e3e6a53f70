// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import org.raftgauge.core.book.Lens;

/**
 * The pose of a camera taken to look straight down: a start for the fit.
 *
 * <p>Source: least-squares similarity of the plane, as in Umeyama 1991, IEEE PAMI 13:376-380.
 */
final class FromAbove {

  private FromAbove() {}

  /** Returns the pose that puts the ties in place as seen straight from above: a start. */
  static CameraPose of(Lens lens, List<Tie> ties) {
    double mx = 0;
    double my = 0;
    double mu = 0;
    double mv = 0;
    double n = ties.size();
    double[][] rays = new double[ties.size()][];
    for (int i = 0; i < ties.size(); i++) {
      rays[i] = Distortion.toRay(lens, ties.get(i).photo());
      mx += ties.get(i).deck().xMm() / n;
      my += ties.get(i).deck().yMm() / n;
      mu += rays[i][0] / n;
      mv += rays[i][1] / n;
    }
    double a = 0;
    double b = 0;
    double norm = 0;
    for (int i = 0; i < ties.size(); i++) {
      double x = ties.get(i).deck().xMm() - mx;
      double y = ties.get(i).deck().yMm() - my;
      a += x * (rays[i][0] - mu) + y * (rays[i][1] - mv);
      b += x * (rays[i][1] - mv) - y * (rays[i][0] - mu);
      norm += x * x + y * y;
    }
    double scale = Math.hypot(a, b) / norm;
    double[] turn = Rotations.about(0, 0, Math.atan2(b, a));
    double z = 1 / scale;
    double[] t = {
      mu * z - (turn[0] * mx + turn[1] * my), mv * z - (turn[3] * mx + turn[4] * my), z
    };
    return CameraPose.of(lens, turn, t);
  }
}
