// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Point;
import org.opencv.core.RotatedRect;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Finds large light or dark areas and the smallest rectangle about each.
 *
 * <p>Source: OpenCV 4.9: Otsu's threshold on the grey picture, opening and closing, outer contours,
 * {@code minAreaRect}.
 */
public final class FindBlobs {
  /** Longest side of the search picture, px. */
  private static final double SEARCH_PX = 600;

  /** Smaller areas than this share of the picture are no board. */
  private static final double LEAST_SHARE = 0.02;

  private FindBlobs() {}

  /**
   * Finds the areas lighter than their surroundings, then those darker.
   *
   * @param image the photo
   * @return the four corners of the smallest rectangle about each area, clockwise, photo px
   */
  public static List<List<PointPx>> rectangles(RgbImage image) {
    double factor = Math.min(1, SEARCH_PX / Math.max(image.width(), image.height()));
    try (MatScope scope = new MatScope()) {
      Mat grey = scope.mat();
      Imgproc.cvtColor(scope.of(image), grey, Imgproc.COLOR_RGB2GRAY);
      Mat small = scope.mat();
      Imgproc.resize(grey, small, new Size(), factor, factor, Imgproc.INTER_AREA);
      List<List<PointPx>> found = new ArrayList<>();
      for (int side : new int[] {Imgproc.THRESH_BINARY, Imgproc.THRESH_BINARY_INV}) {
        Mat on = scope.mat();
        Imgproc.threshold(small, on, 0, 255, side | Imgproc.THRESH_OTSU);
        Mat brush = scope.own(Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(5, 5)));
        Imgproc.morphologyEx(on, on, Imgproc.MORPH_OPEN, brush);
        Imgproc.morphologyEx(on, on, Imgproc.MORPH_CLOSE, brush);
        found.addAll(outlines(scope, on, factor));
      }
      return found;
    }
  }

  private static List<List<PointPx>> outlines(MatScope scope, Mat on, double factor) {
    List<MatOfPoint> contours = new ArrayList<>();
    Imgproc.findContours(
        on, contours, scope.mat(), Imgproc.RETR_EXTERNAL, Imgproc.CHAIN_APPROX_SIMPLE);
    contours.forEach(scope::own);
    List<List<PointPx>> found = new ArrayList<>();
    for (MatOfPoint contour : contours) {
      if (Imgproc.contourArea(contour) > LEAST_SHARE * on.total()) {
        MatOfPoint2f points = scope.own(new MatOfPoint2f(contour.toArray()));
        found.add(corners(Imgproc.minAreaRect(points), factor));
      }
    }
    return found;
  }

  private static List<PointPx> corners(RotatedRect rectangle, double factor) {
    Point[] points = new Point[4];
    rectangle.points(points);
    List<PointPx> corners = new ArrayList<>();
    for (Point p : points) {
      corners.add(new PointPx((p.x + 0.5) / factor - 0.5, (p.y + 0.5) / factor - 0.5));
    }
    return corners;
  }
}
