// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PointPx;

class CalibrateFromPhotosTest {
  private static final CalibrationTarget BOARD =
      CalibrationTarget.parse("chessboard:10x7:25").orElseThrow();

  private final List<TargetSighting> photos = new ArrayList<>();

  CalibrateFromPhotosTest() {
    Random random = new Random(8);
    for (TestCamera view : TestCamera.views()) {
      photos.add(view.corners("v" + photos.size() + ".jpg", BOARD, 0.15, random));
    }
  }

  private LensReport calibrate() {
    return CalibrateFromPhotos.from(photos, LensTerm.usual());
  }

  @Test
  void photosFromAllSidesAndCornersAreGood() {
    LensReport report = calibrate();
    assertEquals(List.of(), report.retake());
    assertEquals(List.of(), report.leftOut());
    assertTrue(report.good());
  }

  @Test
  void blurredPhotoIsLeftOutAndSaid() {
    TargetSighting v3 = photos.get(3);
    photos.set(3, new TargetSighting(v3.photo(), 1280, 960, v3.points(), OptionalDouble.of(2.4)));
    assertEquals(
        List.of(
            new LensReport.LeftOut(
                "v3.jpg", "it is blurred: its edges by 2.4 px, the others' by 0.9")),
        calibrate().leftOut());
  }

  @Test
  void photosThatAreAllABitSoftAreKept() {
    photos.replaceAll(
        p -> new TargetSighting(p.photo(), 1280, 960, p.points(), OptionalDouble.of(2.4)));
    assertEquals(List.of(), calibrate().leftOut());
  }

  @Test
  void photoWithoutTheTargetAndPhotoOfAnotherSizeAreLeftOutAndSaid() {
    photos.add(new TargetSighting("empty.jpg", 1280, 960, List.of(), OptionalDouble.empty()));
    photos.add(
        new TargetSighting("small.jpg", 640, 480, photos.get(0).points(), OptionalDouble.empty()));
    assertEquals(
        List.of(
            new LensReport.LeftOut("empty.jpg", "the whole target was not found in it"),
            new LensReport.LeftOut(
                "small.jpg", "it is 640 x 480 px, the others are 1280 x 960 px")),
        calibrate().leftOut());
  }

  @Test
  void photoOfABentTargetIsLeftOut() {
    TargetSighting v6 = photos.get(6);
    List<TargetPoint> bent =
        v6.points().stream()
            .map(
                p ->
                    new TargetPoint(
                        p.number(),
                        p.xMm(),
                        p.yMm(),
                        new PointPx(p.seen().xPx() + 0.0008 * p.xMm() * p.xMm(), p.seen().yPx())))
            .toList();
    photos.set(6, new TargetSighting(v6.photo(), 1280, 960, bent, v6.blurPx()));
    LensReport report = calibrate();
    assertEquals(List.of("v6.jpg"), report.leftOut().stream().map(o -> o.photo()).toList());
    assertTrue(report.leftOut().get(0).why().contains("misread, bent or moving"));
  }

  @Test
  void cornersWithoutPointsAreNamed() {
    photos.removeIf(p -> p.photo().equals("v8.jpg") || p.photo().equals("v11.jpg"));
    LensReport report = calibrate();
    assertFalse(report.good());
    assertEquals(
        List.of(
            "the target was hardly seen near the picture's top left, bottom right corners; take one"
                + " or two there"),
        report.retake());
  }

  @Test
  void tooFewPhotosAreSaid() {
    List<TargetSighting> few = List.copyOf(photos.subList(6, 12));
    List<String> retake = CalibrateFromPhotos.from(few, LensTerm.usual()).retake();
    assertTrue(
        retake.contains("only 6 photos were usable; take at least 2 more"), retake.toString());
  }

  @Test
  void noPhotoOfTheTargetGivesNoLens() {
    LensReport report = CalibrateFromPhotos.from(List.of(), LensTerm.usual());
    assertFalse(report.good());
    assertEquals(
        new NoLens(
            "there are 0 usable photos of the target; take at least 10, from different sides"),
        report.result());
  }
}
