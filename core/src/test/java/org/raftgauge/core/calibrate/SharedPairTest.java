// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.MatOfPoint3f;
import org.opencv.core.Point;
import org.opencv.core.Point3;
import org.opencv.core.Size;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.marker.SharedData;
import org.raftgauge.core.opencv.PictureCodec;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodedPhoto;

/**
 * Calibrates the 13 real pairs of the OpenCV chessboard set, and holds the pair against OpenCV's
 * own stereo calibration of the same corners with the same lenses. No reference of the baseline
 * comes with the photos; OpenCV's solver is independent of this one, the corners and lenses are
 * shared.
 */
class SharedPairTest {
  private static final Set<LensTerm> TERMS =
      EnumSet.of(LensTerm.FY, LensTerm.K1, LensTerm.K2, LensTerm.P1, LensTerm.P2, LensTerm.K3);

  private static List<TargetSighting> sightings(String side) throws IOException {
    CalibrationTarget target = CalibrationTarget.parse("chessboard:10x7:25").orElseThrow();
    List<TargetSighting> sightings = new ArrayList<>();
    try (Stream<Path> files = Files.list(SharedData.folder("data/lens-chessboard"))) {
      for (Path file :
          files
              .filter(f -> f.getFileName().toString().matches(side + "\\d+\\.jpg"))
              .sorted()
              .toList()) {
        DecodedPhoto photo = (DecodedPhoto) DecodePhoto.decode(Files.readAllBytes(file));
        sightings.add(FindTarget.in(target, file.getFileName().toString(), photo.image()));
      }
    }
    return sightings;
  }

  @Test
  void theBaselineIsThatOfOpenCvAndRowsLieWithinHalfAPixel() throws IOException {
    List<TargetSighting> left = sightings("left");
    List<TargetSighting> right = sightings("right");
    Lens first = assertInstanceOf(LensFit.class, CalibrateLens.fit(left, TERMS)).lens();
    Lens second = assertInstanceOf(LensFit.class, CalibrateLens.fit(right, TERMS)).lens();
    List<CalibratePair.Moment> moments = new ArrayList<>();
    for (int i = 0; i < left.size(); i++) {
      moments.add(new CalibratePair.Moment(left.get(i), right.get(i)));
    }

    PairFit fit = CalibratePair.fit(first, second, moments).orElseThrow();

    assertEquals(13, fit.photos().size());
    double[] opencv = openCv(first, second, moments);
    // The same corners and lenses: solver against solver, 0.02 % of the baseline.
    assertEquals(opencv[0], fit.baselineMm(), 2e-4 * opencv[0]);
    assertEquals(opencv[1], fit.shiftMm().get(0), 2e-4 * opencv[0]);
    assertEquals(opencv[2], fit.shiftMm().get(1), 2e-4 * opencv[0]);
    assertEquals(opencv[3], fit.shiftMm().get(2), 5e-4 * opencv[0]);
    // OpenCV's error is root mean square over all points of both cameras, as ours.
    assertEquals(opencv[4], fit.rmsErrorPx(), 1e-3);
    assertTrue(fit.rowErrorPx() <= 0.5, "rows " + fit.rowErrorPx());
  }

  @Test
  void lensesAndPairFittedTogetherAreThoseOfOpenCv() throws IOException {
    Set<LensTerm> usual = LensTerm.usual();
    List<TargetSighting> left = sightings("left");
    List<TargetSighting> right = sightings("right");
    Lens first = assertInstanceOf(LensFit.class, CalibrateLens.fit(left, usual)).lens();
    Lens second = assertInstanceOf(LensFit.class, CalibrateLens.fit(right, usual)).lens();
    List<CalibratePair.Moment> moments = new ArrayList<>();
    for (int i = 0; i < left.size(); i++) {
      moments.add(new CalibratePair.Moment(left.get(i), right.get(i)));
    }

    PairFit fit =
        CalibrateTogether.fit(
                new CalibrateTogether.Camera(first, left),
                new CalibrateTogether.Camera(second, right),
                moments,
                usual)
            .orElseThrow();

    // OpenCV's stereo calibration with all intrinsics free but k3, from the same corners and start.
    Mat one = matrix(first);
    Mat two = matrix(second);
    double[] opencv = openCv(one, two, new Given(first, second, moments));
    assertEquals(83.16, opencv[0], 0.005);
    assertEquals(opencv[0], fit.baselineMm(), 2e-4 * opencv[0]);
    assertEquals(opencv[4], fit.rmsErrorPx(), 1e-3);
    assertEquals(one.get(0, 0)[0], fit.first().fxPx(), 2e-4 * one.get(0, 0)[0]);
    assertEquals(one.get(1, 2)[0], fit.first().cyPx(), 0.1);
    assertEquals(two.get(0, 0)[0], fit.second().fxPx(), 2e-4 * two.get(0, 0)[0]);
    assertEquals(two.get(0, 2)[0], fit.second().cxPx(), 0.1);
    assertTrue(fit.rowErrorPx() <= 0.5, "rows " + fit.rowErrorPx());
    // With the lenses held the baseline differs by no more than a few of its standard errors, which
    // here are larger, for the lenses' are in them.
    PairFit held = CalibratePair.fit(first, second, moments).orElseThrow();
    assertEquals(held.baselineMm(), fit.baselineMm(), 3 * fit.shiftErrorMm());
    assertTrue(fit.shiftErrorMm() > held.shiftErrorMm(), "" + fit.shiftErrorMm());
    assertTrue(fit.rmsErrorPx() <= held.rmsErrorPx());
  }

  private record Given(Lens first, Lens second, List<CalibratePair.Moment> moments) {}

  /** Returns baseline, t and error of OpenCV's stereo calibration, lenses held. */
  private static double[] openCv(Lens first, Lens second, List<CalibratePair.Moment> moments) {
    return openCv(null, null, new Given(first, second, moments));
  }

  /** The same; with two matrices to fill both lenses are fitted too. */
  private static double[] openCv(Mat one, Mat two, Given given) {
    Lens first = given.first;
    Lens second = given.second;
    List<CalibratePair.Moment> moments = given.moments;
    PictureCodec.decode(new byte[1]); // loads the library
    List<Mat> places = new ArrayList<>();
    List<Mat> inLeft = new ArrayList<>();
    List<Mat> inRight = new ArrayList<>();
    for (CalibratePair.Moment moment : moments) {
      List<Point3> place = new ArrayList<>();
      List<Point> a = new ArrayList<>();
      List<Point> b = new ArrayList<>();
      for (int i = 0; i < moment.first().points().size(); i++) {
        TargetPoint p = moment.first().points().get(i);
        TargetPoint q = moment.second().points().get(i);
        assertEquals(p.number(), q.number());
        place.add(new Point3(p.xMm(), p.yMm(), 0));
        a.add(new Point(p.seen().xPx(), p.seen().yPx()));
        b.add(new Point(q.seen().xPx(), q.seen().yPx()));
      }
      places.add(new MatOfPoint3f(place.toArray(new Point3[0])));
      inLeft.add(new MatOfPoint2f(a.toArray(new Point[0])));
      inRight.add(new MatOfPoint2f(b.toArray(new Point[0])));
    }
    Mat r = new Mat();
    Mat t = new Mat();
    double error =
        Calib3d.stereoCalibrate(
            places,
            inLeft,
            inRight,
            one == null ? matrix(first) : one,
            distortion(first),
            two == null ? matrix(second) : two,
            distortion(second),
            new Size(640, 480),
            r,
            t,
            new Mat(),
            new Mat(),
            one == null
                ? Calib3d.CALIB_FIX_INTRINSIC
                : Calib3d.CALIB_USE_INTRINSIC_GUESS + Calib3d.CALIB_FIX_K3);
    double x = t.get(0, 0)[0];
    double y = t.get(1, 0)[0];
    double z = t.get(2, 0)[0];
    return new double[] {Math.sqrt(x * x + y * y + z * z), x, y, z, error};
  }

  private static Mat matrix(Lens lens) {
    Mat m = Mat.eye(3, 3, CvType.CV_64F);
    m.put(0, 0, lens.fxPx(), 0, lens.cxPx(), 0, lens.fyPx(), lens.cyPx(), 0, 0, 1);
    return m;
  }

  private static Mat distortion(Lens l) {
    Mat d = new Mat(1, 5, CvType.CV_64F);
    d.put(0, 0, l.k1(), l.k2(), l.p1(), l.p2(), l.k3());
    return d;
  }
}
