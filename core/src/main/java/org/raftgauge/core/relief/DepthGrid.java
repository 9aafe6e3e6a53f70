// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.DeepImage;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.Distortion;

/** Depths as a camera beside the first one sees them; the first one's own place included. */
final class DepthGrid {
  private final Lens lens;
  private final double[] r;
  private final double[] t;
  private final int width;
  private final float[] depthsMm;

  private DepthGrid(Lens lens, double[] r, double[] t, int width, float[] depthsMm) {
    this.lens = lens;
    this.r = r;
    this.t = t;
    this.width = width;
    this.depthsMm = depthsMm;
  }

  /** Returns the depths that a rectified pair shows, seen from the first camera's place. */
  static DepthGrid of(RectifiedPair pair, PairGeometry geometry) {
    return new DepthGrid(
        geometry.lens(), geometry.toRectified(), new double[3], geometry.width(), pair.depthsMm());
  }

  /** Returns the depths of a depth camera's picture. */
  static DepthGrid of(SecondPicture picture) {
    DeepImage deep = picture.depth().orElseThrow();
    float[] depths = new float[deep.width() * deep.height()];
    for (int i = 0; i < depths.length; i++) {
      int level = deep.level(i % deep.width(), Math.floorDiv(i, deep.width()));
      depths[i] = level == 0 ? Float.NaN : level;
    }
    return new DepthGrid(
        picture.lens(), picture.rotation(), picture.shiftMm(), deep.width(), depths);
  }

  /** Says whether it is seen from the first camera's own place. */
  boolean fromFirst() {
    return t[0] == 0 && t[1] == 0 && t[2] == 0;
  }

  /**
   * Returns what is seen in the direction of a place.
   *
   * @param at a place in the first camera's axes, mm
   * @return the place that is seen there, in the first camera's axes; empty where nothing is
   */
  double[] seenTowards(double[] at) {
    double[] own = PairGeometry.turned(r, at);
    for (int i = 0; i < 3; i++) {
      own[i] += t[i];
    }
    double depth = own[2] > 0 ? depth(own) : Float.NaN;
    if (Double.isNaN(depth)) {
      return new double[0];
    }
    double far = depth / own[2];
    return PairGeometry.turned(
        PairGeometry.transposed(r),
        new double[] {own[0] * far - t[0], own[1] * far - t[1], own[2] * far - t[2]});
  }

  private double depth(double[] own) {
    PointPx p = Distortion.toPhoto(lens, own[0] / own[2], own[1] / own[2]);
    int x = (int) Math.round(p.xPx());
    int y = (int) Math.round(p.yPx());
    boolean inside = x >= 0 && y >= 0 && x < width && y < depthsMm.length / width;
    return inside ? depthsMm[y * width + x] : Float.NaN;
  }
}
