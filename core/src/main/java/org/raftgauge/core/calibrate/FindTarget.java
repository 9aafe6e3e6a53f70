// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import boofcv.abst.fiducial.calib.ConfigChessboardX;
import boofcv.abst.fiducial.calib.ConfigCircleHexagonalGrid;
import boofcv.abst.fiducial.calib.ConfigCircleRegularGrid;
import boofcv.abst.fiducial.calib.ConfigGridDimen;
import boofcv.abst.fiducial.calib.ConfigSquareGrid;
import boofcv.abst.geo.calibration.DetectSingleFiducialCalibration;
import boofcv.factory.fiducial.FactoryFiducialCalibration;
import boofcv.struct.geo.PointIndex2D_F64;
import boofcv.struct.image.GrayF32;
import georegression.struct.point.Point2D_F64;
import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Finds a calibration target's points in photos.
 *
 * <p>Source: the detectors of BoofCV 1.1.7: X-corners for chessboards (Abeles 2021, Pyramidal
 * blur-aware X-corner chessboard detector, arXiv:2110.13793), polygon fits for squares, ellipse
 * fits for circles. BoofCV puts a pixel's centre at half a pixel; ours are whole numbers.
 */
public final class FindTarget {
  private static final double HALF_PX = 0.5;

  private FindTarget() {}

  private static DetectSingleFiducialCalibration detector(CalibrationTarget target) {
    ConfigGridDimen grid =
        target.shape() == CalibrationTarget.Shape.CHESSBOARD
            ? new ConfigGridDimen(target.rows(), target.columns(), target.sizeMm())
            : new ConfigGridDimen(
                target.rows(), target.columns(), target.sizeMm(), secondLength(target));
    return switch (target.shape()) {
      case CHESSBOARD -> FactoryFiducialCalibration.chessboardX(new ConfigChessboardX(), grid);
      case SQUARES -> FactoryFiducialCalibration.squareGrid(new ConfigSquareGrid(), grid);
      case CIRCLES ->
          FactoryFiducialCalibration.circleRegularGrid(new ConfigCircleRegularGrid(), grid);
      case STAGGERED_CIRCLES ->
          FactoryFiducialCalibration.circleHexagonalGrid(new ConfigCircleHexagonalGrid(), grid);
    };
  }

  /** The library wants the gap between squares, but the distance between circles' centres. */
  private static double secondLength(CalibrationTarget target) {
    return target.shape() == CalibrationTarget.Shape.SQUARES
        ? target.pitchMm() - target.sizeMm()
        : target.pitchMm();
  }

  /**
   * Looks for a target.
   *
   * @param target the target
   * @param photo the photo's name
   * @param image its pixels
   * @return what was seen, without points where the target is not there or not whole
   */
  public static TargetSighting in(CalibrationTarget target, String photo, RgbImage image) {
    GrayF32 grey = grey(image);
    List<TargetPoint> points = look(target, grey);
    if (points.isEmpty()) {
      // Dark targets are sometimes found only with their shadows lifted.
      points = look(target, lifted(grey));
    }
    return new TargetSighting(
        photo, image.width(), image.height(), points, EdgeBlur.of(image, target, points));
  }

  private static List<TargetPoint> look(CalibrationTarget target, GrayF32 grey) {
    DetectSingleFiducialCalibration detector = detector(target);
    return process(detector, grey) ? points(detector) : List.of();
  }

  private static GrayF32 lifted(GrayF32 grey) {
    GrayF32 lifted = new GrayF32(grey.width, grey.height);
    for (int i = 0; i < lifted.data.length; i++) {
      lifted.data[i] = (float) (255 * Math.sqrt(grey.data[i] / 255));
    }
    return lifted;
  }

  /** Runs the detector; a picture that trips it up simply shows no target. */
  private static boolean process(DetectSingleFiducialCalibration detector, GrayF32 grey) {
    try {
      return detector.process(grey);
    } catch (IllegalArgumentException | IllegalStateException | IndexOutOfBoundsException e) {
      return false;
    }
  }

  private static List<TargetPoint> points(DetectSingleFiducialCalibration detector) {
    List<Point2D_F64> layout = detector.getLayout();
    List<TargetPoint> points = new ArrayList<>();
    for (PointIndex2D_F64 seen : detector.getDetectedPoints().points) {
      Point2D_F64 at = layout.get(seen.index);
      // The layout's y runs up; ours runs down, as in photos and on boards.
      points.add(
          new TargetPoint(
              seen.index, at.x, -at.y, new PointPx(seen.p.x - HALF_PX, seen.p.y - HALF_PX)));
    }
    return points;
  }

  private static GrayF32 grey(RgbImage image) {
    GrayF32 grey = new GrayF32(image.width(), image.height());
    byte[] rgb = image.rgb();
    for (int i = 0; i < grey.data.length; i++) {
      grey.data[i] =
          0.299f * (rgb[3 * i] & 0xff)
              + 0.587f * (rgb[3 * i + 1] & 0xff)
              + 0.114f * (rgb[3 * i + 2] & 0xff);
    }
    return grey;
  }
}
