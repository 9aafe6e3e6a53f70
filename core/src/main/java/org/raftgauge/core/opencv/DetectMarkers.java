// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.opencv.objdetect.ArucoDetector;
import org.opencv.objdetect.DetectorParameters;
import org.opencv.objdetect.Dictionary;
import org.opencv.objdetect.Objdetect;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Finds AprilTag 36h11 squares.
 *
 * <p>Source: OpenCV 4.9 {@code ArucoDetector}; family: Wang and Olson 2016, AprilTag 2, IROS.
 */
public final class DetectMarkers {

  /** How squares are looked for. */
  public enum Search {
    /** Contours of locally thresholded pictures: fast. */
    CONTOURS,
    /** Segments of the edge gradient: slower, also finds markers in a narrow white border. */
    GRADIENTS
  }

  private DetectMarkers() {}

  /**
   * Finds markers in a photo that is first scaled.
   *
   * @param image the photo
   * @param factor scale of the search picture, above 0; under 1 shrinks by averaging
   * @param search how squares are looked for
   * @return every marker seen, corners in px of the given photo, good to about a pixel of the
   *     search picture
   */
  public static List<MarkerQuad> in(RgbImage image, double factor, Search search) {
    if (!(factor > 0)) {
      throw new IllegalArgumentException("factor must be > 0, got " + factor);
    }
    try (MatScope scope = new MatScope()) {
      Mat grey = scope.mat();
      Imgproc.cvtColor(scope.of(image), grey, Imgproc.COLOR_RGB2GRAY);
      Mat scaled = grey;
      if (factor != 1) {
        scaled = scope.mat();
        int how = factor < 1 ? Imgproc.INTER_AREA : Imgproc.INTER_CUBIC;
        Imgproc.resize(grey, scaled, new Size(), factor, factor, how);
      }
      return detect(scope, scaled, search).stream().map(q -> unscaled(q, factor)).toList();
    }
  }

  /**
   * Finds markers in a grey picture by their contours.
   *
   * @param width px
   * @param height px
   * @param grey one level a pixel, row by row
   * @return the markers, in the order of the detector
   */
  public static List<MarkerQuad> in(int width, int height, byte[] grey) {
    try (MatScope scope = new MatScope()) {
      return detect(scope, scope.of(width, height, grey), Search.CONTOURS);
    }
  }

  private static List<MarkerQuad> detect(MatScope scope, Mat grey, Search search) {
    Dictionary family =
        scope.keep(Objdetect.getPredefinedDictionary(Objdetect.DICT_APRILTAG_36h11));
    ArucoDetector detector = scope.keep(new ArucoDetector(family, parameters(scope, search)));
    List<Mat> corners = new ArrayList<>();
    Mat ids = scope.mat();
    detector.detectMarkers(grey, corners, ids);
    corners.forEach(scope::own);
    List<MarkerQuad> found = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      float[] xy = MatScope.floats(corners.get(i));
      List<PointPx> points = new ArrayList<>();
      for (int c = 0; c < 4; c++) {
        points.add(new PointPx(xy[2 * c], xy[2 * c + 1]));
      }
      found.add(new MarkerQuad((int) ids.get(i, 0)[0], points));
    }
    return found;
  }

  private static DetectorParameters parameters(MatScope scope, Search search) {
    DetectorParameters parameters = scope.keep(new DetectorParameters());
    // Two wrong bits of 36 at most: the family's codes differ by 11, and false finds cost more here
    // than misses (0.4 of the 5 bits that the code could correct).
    parameters.set_errorCorrectionRate(0.4);
    parameters.set_minMarkerPerimeterRate(0.01);
    parameters.set_perspectiveRemovePixelPerCell(6);
    if (search == Search.GRADIENTS) {
      parameters.set_cornerRefinementMethod(Objdetect.CORNER_REFINE_APRILTAG);
    }
    return parameters;
  }

  private static MarkerQuad unscaled(MarkerQuad quad, double factor) {
    List<PointPx> points = new ArrayList<>();
    for (PointPx p : quad.cornersPx()) {
      points.add(new PointPx((p.xPx() + 0.5) / factor - 0.5, (p.yPx() + 0.5) / factor - 0.5));
    }
    return new MarkerQuad(quad.id(), points);
  }
}
