// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.ArrayList;
import java.util.List;
import org.opencv.calib3d.StereoSGBM;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfFloat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Point;
import org.opencv.imgproc.Imgproc;
import org.opencv.video.Video;
import org.raftgauge.core.pixels.GreyImage;
import org.raftgauge.core.pixels.PointPx;

/**
 * Matches a rectified pair, in which a thing lies in the same row of both pictures.
 *
 * <p>Source: OpenCV 4.9 {@code StereoSGBM} (Hirschmueller 2008, IEEE PAMI 30:328-341, with the
 * pixel cost of Birchfield and Tomasi) with the penalties of its documentation; {@code
 * goodFeaturesToTrack} and {@code calcOpticalFlowPyrLK} (Lucas and Kanade).
 */
public final class MatchRows {
  private static final int BLOCK = 5;
  private static final int SMALL_STEP = 8 * BLOCK * BLOCK;
  private static final int LARGE_STEP = 32 * BLOCK * BLOCK;

  /** Both ways' answers must agree to this, px: where they do not, one camera sees it alone. */
  private static final double AGREE_PX = 1;

  /** The library's own check of both ways, switched off: it lets pass most of what is hidden. */
  private static final int NO_CHECK = -1;

  private static final int CLIP = 31;

  /** The best match must cost this much less than the next, percent. */
  private static final int UNIQUE = 8;

  private static final int SPECKLE_PX = 80;
  private static final int SPECKLE_RANGE = 2;

  /** The library gives disparities in sixteenths. */
  private static final double PARTS = 16;

  private static final int FEATURES = 600;
  private static final double FEATURE_QUALITY = 0.01;
  private static final double FEATURES_APART_PX = 8;

  private MatchRows() {}

  /**
   * The disparities looked for.
   *
   * @param least smallest, px, may be negative
   * @param count how many, a multiple of 16
   */
  public record Range(int least, int count) {

    /** Checks the count. */
    public Range {
      if (count < 16 || count % 16 != 0) {
        throw new IllegalArgumentException("count must be a multiple of 16, got " + count);
      }
    }
  }

  /** A thing seen in both pictures. */
  public record Match(PointPx left, PointPx right) {}

  /**
   * Finds for each pixel of the left picture how far to the left it lies in the right one.
   *
   * @param left the left picture
   * @param right the right one, of the same size
   * @param range where to look; the outermost {@code range.count()} columns get no answer
   * @return px, NaN where nothing matches well and alone
   */
  public static float[] disparities(GreyImage left, GreyImage right, Range range) {
    try (MatScope scope = new MatScope()) {
      StereoSGBM matcher =
          scope.keep(
              StereoSGBM.create(
                  range.least(),
                  range.count(),
                  BLOCK,
                  SMALL_STEP,
                  LARGE_STEP,
                  NO_CHECK,
                  CLIP,
                  UNIQUE,
                  SPECKLE_PX,
                  SPECKLE_RANGE,
                  StereoSGBM.MODE_SGBM));
      Mat first = grey(scope, left);
      Mat second = grey(scope, right);
      Mat sixteenths = scope.mat();
      matcher.compute(first, second, sixteenths);
      float[] there = px(scope, sixteenths, range);
      Core.flip(first, first, 1);
      Core.flip(second, second, 1);
      matcher.compute(second, first, sixteenths);
      return agreed(there, px(scope, sixteenths, range), left.width());
    }
  }

  private static float[] px(MatScope scope, Mat sixteenths, Range range) {
    Mat px = scope.mat();
    sixteenths.convertTo(px, CvType.CV_32F, 1 / PARTS);
    float[] disparities = MatScope.floats(px);
    for (int i = 0; i < disparities.length; i++) {
      disparities[i] = disparities[i] < range.least() ? Float.NaN : disparities[i];
    }
    return disparities;
  }

  /**
   * Keeps the answers that hold both ways.
   *
   * @param there from left to right
   * @param back from right to left, of mirrored pictures
   */
  private static float[] agreed(float[] there, float[] back, int width) {
    for (int i = 0; i < there.length; i++) {
      int x = i % width;
      int right = Float.isNaN(there[i]) ? -1 : Math.round(x - there[i]);
      boolean inside = right >= 0 && right < width;
      float other = inside ? back[i - x + width - 1 - right] : Float.NaN;
      if (!(Math.abs(other - there[i]) <= AGREE_PX)) {
        there[i] = Float.NaN;
      }
    }
    return there;
  }

  /**
   * Follows corners from one picture to the other, in rows and columns alike.
   *
   * @param left the left picture
   * @param right the right one, of the same size
   * @return corners found in both
   */
  public static List<Match> corners(GreyImage left, GreyImage right) {
    try (MatScope scope = new MatScope()) {
      Mat from = grey(scope, left);
      MatOfPoint corners = scope.own(new MatOfPoint());
      Imgproc.goodFeaturesToTrack(from, corners, FEATURES, FEATURE_QUALITY, FEATURES_APART_PX);
      if (corners.empty()) {
        return List.of();
      }
      MatOfPoint2f start = scope.own(new MatOfPoint2f(corners.toArray()));
      MatOfPoint2f end = scope.own(new MatOfPoint2f());
      MatOfByte found = scope.own(new MatOfByte());
      MatOfFloat error = scope.own(new MatOfFloat());
      Video.calcOpticalFlowPyrLK(from, grey(scope, right), start, end, found, error);
      return matches(start.toArray(), end.toArray(), found.toArray());
    }
  }

  private static List<Match> matches(Point[] start, Point[] end, byte[] found) {
    List<Match> matches = new ArrayList<>();
    for (int i = 0; i < found.length; i++) {
      if (found[i] == 1) {
        matches.add(
            new Match(new PointPx(start[i].x, start[i].y), new PointPx(end[i].x, end[i].y)));
      }
    }
    return matches;
  }

  private static Mat grey(MatScope scope, GreyImage image) {
    return scope.of(image.width(), image.height(), image.levels());
  }
}
