// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.Arrays;
import org.opencv.core.Mat;
import org.opencv.imgproc.Imgproc;

/**
 * Measures how far each pixel is from the nearest one of a mask.
 *
 * <p>Source: OpenCV 4.9 {@code distanceTransform}, Euclidean, 3 x 3 mask: within 5 % of the true
 * distance.
 */
public final class DistanceTo {

  private DistanceTo() {}

  /**
   * Measures the distance to a mask.
   *
   * @param on the mask, {@code width * height}
   * @param width px
   * @param height px
   * @return px, 0 on the mask; {@code Float.MAX_VALUE} everywhere where the mask is empty
   */
  public static float[] nearest(boolean[] on, int width, int height) {
    byte[] off = new byte[on.length];
    boolean any = false;
    for (int i = 0; i < on.length; i++) {
      off[i] = (byte) (on[i] ? 0 : 1);
      any |= on[i];
    }
    if (!any) {
      float[] far = new float[on.length];
      Arrays.fill(far, Float.MAX_VALUE);
      return far;
    }
    try (MatScope scope = new MatScope()) {
      Mat distance = scope.mat();
      Imgproc.distanceTransform(
          scope.of(width, height, off), distance, Imgproc.DIST_L2, Imgproc.DIST_MASK_3);
      return MatScope.floats(distance);
    }
  }
}
