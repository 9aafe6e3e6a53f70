// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfInt;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Point;
import org.opencv.imgproc.Imgproc;
import org.raftgauge.core.pixels.PointPx;

/** Traces the outlines of masks and the convex hulls of points. */
public final class TraceOutline {

  private TraceOutline() {}

  /**
   * Traces the outer outlines of a mask's parts, pixel by pixel, 8-connected.
   *
   * @param width px
   * @param height px
   * @param mask not 0 inside; length {@code width * height}
   * @return a closed chain of pixel centres for each part, in no order
   */
  public static List<List<PointPx>> outer(int width, int height, byte[] mask) {
    try (MatScope scope = new MatScope()) {
      Mat padded = scope.mat();
      Core.copyMakeBorder(scope.of(width, height, mask), padded, 1, 1, 1, 1, Core.BORDER_CONSTANT);
      List<MatOfPoint> contours = new ArrayList<>();
      Mat tree = scope.own(new Mat(0, 0, CvType.CV_32SC4));
      Imgproc.findContours(
          padded,
          contours,
          tree,
          Imgproc.RETR_EXTERNAL,
          Imgproc.CHAIN_APPROX_NONE,
          new Point(-1, -1));
      List<List<PointPx>> outlines = new ArrayList<>();
      for (MatOfPoint contour : contours) {
        outlines.add(points(scope.own(contour)));
      }
      return outlines;
    }
  }

  /**
   * Returns the convex hull of points.
   *
   * @param points at least one
   * @return its corners, in order
   */
  public static List<PointPx> hull(List<PointPx> points) {
    try (MatScope scope = new MatScope()) {
      Point[] all = points.stream().map(p -> new Point(p.xPx(), p.yPx())).toArray(Point[]::new);
      MatOfInt corners = scope.own(new MatOfInt());
      Imgproc.convexHull(scope.own(new MatOfPoint(all)), corners);
      List<PointPx> hull = new ArrayList<>();
      for (int i : corners.toArray()) {
        hull.add(points.get(i));
      }
      return hull;
    }
  }

  private static List<PointPx> points(MatOfPoint contour) {
    int[] xy = new int[2 * contour.rows()];
    contour.get(0, 0, xy);
    List<PointPx> points = new ArrayList<>(contour.rows());
    for (int i = 0; i < xy.length; i += 2) {
      points.add(new PointPx(xy[i], xy[i + 1]));
    }
    return points;
  }
}
