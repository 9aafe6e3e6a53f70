// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;

/** Lens, homography and parallax against worked numbers. */
@Tag("published")
class CameraPosePublishedCheckTest {
  private static final double[] STRAIGHT = {1, 0, 0, 0, 1, 0, 0, 0, 1};

  /** Lens of the worked example for Brown 1966/1971, formula as in OpenCV 4.6. */
  private static final Lens BROWN =
      new Lens(2400, 2400, 2000, 1500, -0.12, 0.03, 0.0005, -0.0003, 0.002);

  private static final Lens PINHOLE = new Lens(2400, 2400, 2000, 1500, 0, 0, 0, 0, 0);

  @Test
  void brownConradyPutsRaysWhereTheWorkedExampleDoes() {
    // At t = (0, 0, 1) deck mm are rays; numbers computed with the formula as in OpenCV 4.6.
    CameraPose pose = CameraPose.of(BROWN, STRAIGHT, new double[] {0, 0, 1});
    assertPlace(2709.05700368, 1972.92306912, pose.toPhoto(0.3, 0.2, 0));
    assertPlace(636.30096896, 2409.50708736, pose.toPhoto(-0.6, 0.4, 0));
    assertPlace(2000, 1500, pose.toPhoto(0, 0, 0));
    // Z = 1.2: z is up, towards the camera, so 0.2 further away is -0.2.
    assertPlace(2970.27250511, 820.98928809, pose.toPhoto(0.5, -0.35, -0.2));
  }

  @Test
  void raysComeBackThroughTheLens() {
    CameraPose pose = CameraPose.of(BROWN, STRAIGHT, new double[] {0, 0, 1});
    for (double x = -0.6; x <= 0.6; x += 0.1) {
      for (double y = -0.4; y <= 0.4; y += 0.1) {
        PointMm back = pose.toDeck(pose.toPhoto(x, y, 0));
        // 1e-7 is asked for; Newton's method gets to rounding.
        assertEquals(x, back.xMm(), 1e-10);
        assertEquals(y, back.yMm(), 1e-10);
      }
    }
  }

  @Test
  void deckPlacesComeBackFromTiltedPhotos() {
    Random random = new Random(3);
    for (int i = 0; i < 200; i++) {
      double[] turn =
          Rotations.times(
              Rotations.about(random.nextGaussian() * 0.05, random.nextGaussian() * 0.05, 0),
              Rotations.about(0, 0, random.nextDouble() * 6.28));
      CameraPose pose = CameraPose.of(BROWN, turn, new double[] {-300, -600, 1600});
      double z = random.nextDouble() * 150;
      PointMm p = new PointMm(random.nextDouble() * 600, random.nextDouble() * 600);
      PointMm back = pose.toHeight(pose.toPhoto(p.xMm(), p.yMm(), z), z);
      // Pure arithmetic on lengths of 1e3 mm.
      assertEquals(p.xMm(), back.xMm(), 1e-8);
      assertEquals(p.yMm(), back.yMm(), 1e-8);
    }
  }

  @Test
  void parallaxOfAHeightIsThatOfThePinhole() {
    // Worked table for length H / (H - h): H 150 cm, h 5, 10, 20 cm; H 100 cm, h 10; H 200, h 15.
    double[][] rows = {
      {1500, 50, 1.03448276, 1.07015458},
      {1500, 100, 1.07142857, 1.14795918},
      {1500, 200, 1.15384615, 1.33136095},
      {1000, 100, 1.11111111, 1.23456790},
      {2000, 150, 1.08108108, 1.16873630}
    };
    for (double[] row : rows) {
      CameraPose pose = CameraPose.of(PINHOLE, STRAIGHT, new double[] {0, 0, row[0]});
      assertEquals(row[2], pose.magnification(row[1]), 5e-9);
      assertEquals(row[3], Math.pow(pose.magnification(row[1]), 2), 5e-9);
      // Outward shift at ground radius r: r h / (H - h).
      PointMm seen = pose.toDeck(pose.toPhoto(300, 0, row[1]));
      assertEquals(300 * row[1] / (row[0] - row[1]), seen.xMm() - 300, 1e-9);
    }
  }

  @Test
  void aCameraMapsAsTheHomographyOfTheWorkedExample() {
    // 2 ft x 4 ft raft (DLT: Hartley and Zisserman 2004, section 4.1), photo px to deck mm, 13
    // digits printed.
    double[] h = {
      0.4514593703774, 0.02218326255506, -194.6083664668,
      0.01221023167542, 0.4439191125213, -177.2712311085,
      4.388123649181e-5, 4.243709735781e-5, 1
    };
    CameraPose pose = cameraOf(h);
    double[][] corners = {
      {412, 388, 0, 0}, {3575, 301, 1219.2, 0}, {3702, 2011, 1219.2, 609.6}, {338, 1894, 0, 609.6}
    };
    for (double[] c : corners) {
      PointMm deck = pose.toDeck(new PointPx(c[0], c[1]));
      // 13 digits of H on 1e3 mm.
      assertEquals(c[2], deck.xMm(), 1e-8);
      assertEquals(c[3], deck.yMm(), 1e-8);
      assertPlaceTo(1e-7, c[0], c[1], pose.toPhoto(new PointMm(c[2], c[3])));
    }
    assertMm(645.419062419, 333.587869771, pose.toDeck(new PointPx(2000, 1200)));
    assertMm(254.768730690, 176.348894848, pose.toDeck(new PointPx(1000, 800)));
    assertMm(998.113680055, 439.419740568, pose.toDeck(new PointPx(3000, 1500)));
    // Local scale det(H) / w^3, mm2 per px2; ours is the footprint of a whole px, of which the
    // third derivative adds about (1e-4)^2.
    assertScale(0.140239812840, pose, new PointPx(2000, 1200));
    assertScale(0.165360772180, pose, new PointPx(1000, 800));
    assertScale(0.121242349362, pose, new PointPx(3000, 1500));
  }

  private static void assertScale(double mm2PerPx2, CameraPose pose, PointPx p) {
    double mm = pose.mmPerPxAt(pose.toDeck(p));
    assertEquals(mm2PerPx2, mm * mm, 1e-8);
  }

  /**
   * Returns a camera with square pixels that maps the deck as a homography from photo to deck does.
   *
   * <p>With {@code a, b, c} the columns of its inverse, deck to photo, {@code v = a / a3} and
   * {@code w = b / b3} are the vanishing points of the deck's axes. A principal point {@code v + s
   * (w - v)} and {@code f^2 = s (1 - s) |w - v|^2} makes the axes stand square, and {@code s = b3^2
   * / (a3^2 + b3^2)} makes their scales equal (Hartley and Zisserman 2004, section 8.8). The
   * example's camera so looks at the deck far aslant; the arithmetic does not mind.
   */
  private static CameraPose cameraOf(double[] h) {
    double[] m = inverse(h);
    double vx = m[0] / m[6];
    double vy = m[3] / m[6];
    double dx = m[1] / m[7] - vx;
    double dy = m[4] / m[7] - vy;
    double s = m[7] * m[7] / (m[6] * m[6] + m[7] * m[7]);
    double f = Math.sqrt(s * (1 - s)) * Math.hypot(dx, dy);
    Lens lens = new Lens(f, f, vx + s * dx, vy + s * dy, 0, 0, 0, 0, 0);
    double[] k = new double[9];
    for (int j = 0; j < 3; j++) {
      k[j] = (m[j] - lens.cxPx() * m[6 + j]) / f;
      k[3 + j] = (m[3 + j] - lens.cyPx() * m[6 + j]) / f;
      k[6 + j] = m[6 + j];
    }
    double size = Math.signum(k[8]) * Math.sqrt(k[0] * k[0] + k[3] * k[3] + k[6] * k[6]);
    for (int i = 0; i < 9; i++) {
      k[i] /= size;
    }
    double[] r = {
      k[0], k[1], k[3] * k[7] - k[6] * k[4],
      k[3], k[4], k[6] * k[1] - k[0] * k[7],
      k[6], k[7], k[0] * k[4] - k[3] * k[1]
    };
    return CameraPose.of(lens, r, new double[] {k[2], k[5], k[8]});
  }

  /** Inverts a 3 x 3 matrix by its cofactors, up to a factor. */
  private static double[] inverse(double[] h) {
    double[] m = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        int a = (j + 1) % 3;
        int b = (j + 2) % 3;
        int c = (i + 1) % 3;
        int d = (i + 2) % 3;
        m[3 * i + j] = h[3 * a + c] * h[3 * b + d] - h[3 * a + d] * h[3 * b + c];
      }
    }
    return m;
  }

  @Test
  void scaleOfAPinholeStraightAboveIsHeightOverFocalLength() {
    CameraPose pose = CameraPose.of(PINHOLE, STRAIGHT, new double[] {0, 0, 1600});
    // H / f = 1600 / 2400.
    assertEquals(2 / 3.0, pose.mmPerPxAt(new PointMm(100, -50)), 1e-9);
    assertEquals(1600, pose.heightMm(), 1e-12);
    assertEquals(0, pose.foot().xMm(), 1e-12);
  }

  @Test
  void aMatrixThatIsNoRotationIsRefused() {
    double[] mirror = {-1, 0, 0, 0, 1, 0, 0, 0, 1};
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> CameraPose.of(PINHOLE, mirror, new double[] {0, 0, 1}));
    assertTrue(e.getMessage().contains("a matrix that is no rotation"), e.getMessage());
  }

  private static void assertPlaceTo(double tolerance, double x, double y, PointPx p) {
    assertEquals(x, p.xPx(), tolerance);
    assertEquals(y, p.yPx(), tolerance);
  }

  private static void assertPlace(double x, double y, PointPx p) {
    // Eight decimals are printed.
    assertEquals(x, p.xPx(), 1e-8);
    assertEquals(y, p.yPx(), 1e-8);
  }

  private static void assertMm(double x, double y, PointMm p) {
    // Nine decimals are printed, from 13 digits of H.
    assertEquals(x, p.xMm(), 1e-8);
    assertEquals(y, p.yMm(), 1e-8);
  }
}
