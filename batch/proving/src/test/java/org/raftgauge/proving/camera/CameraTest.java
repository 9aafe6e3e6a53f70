// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.camera;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Lens;

final class CameraTest {
  private static final Lens STRAIGHT = new Lens(1000, 1000, 499.5, 399.5, 0, 0, 0, 0, 0);
  private static final Lens BENT =
      new Lens(1000, 1010, 510, 390, -0.12, 0.03, 0.0005, -0.0004, 0.01);

  @Test
  void aPointUnderTheCameraLandsOnThePrincipalPoint() {
    Camera camera = new Camera(STRAIGHT, 1000, 800, new Hold(300, 600, 1600, 0, 0, 0));
    assertArrayEquals(new double[] {499.5, 399.5, 1600}, camera.project(300, 600, 0), 1e-9);
  }

  @Test
  void heightMagnifiesAboutTheFootPoint() {
    Camera camera = new Camera(STRAIGHT, 1000, 800, new Hold(0, 0, 1600, 0, 0, 0));
    // 100 mm off at height 0: 1000 * 100 / 1600 = 62.5 px; at 100 mm: 1000 * 100 / 1500 = 66.667 px
    assertEquals(499.5 + 62.5, camera.project(100, 0, 0)[0], 1e-9);
    assertEquals(499.5 + 66.6667, camera.project(100, 0, 100)[0], 1e-4);
    assertEquals(1500, camera.project(100, 0, 100)[2], 1e-9);
  }

  @Test
  void yRunsDownInThePictureAsOnTheBoard() {
    Camera camera = new Camera(STRAIGHT, 1000, 800, new Hold(0, 0, 1600, 0, 0, 0));
    // 1000 * 160 / 1600 = 100 px
    assertEquals(499.5, camera.project(0, 160, 0)[1], 1e-9);
  }

  @Test
  void barrelDistortionFollowsItsPolynomial() {
    Lens barrel = new Lens(1000, 1000, 0, 0, -0.1, 0.02, 0, 0, 0);
    Camera camera = new Camera(barrel, 10, 10, new Hold(0, 0, 1000, 0, 0, 0));
    // r = 0.5: 0.5 * (1 - 0.1 * 0.25 + 0.02 * 0.0625) = 0.488125, times 1000 px
    assertEquals(488.125, camera.project(500, 0, 0)[0], 1e-9);
  }

  @Test
  void thePlanePointOfAProjectedPointIsThePointItself() {
    Camera camera = new Camera(BENT, 1000, 800, new Hold(40, -30, 1500, 0.8, 0.06, -0.05));
    for (double[] p : new double[][] {{0, 0, 0}, {350, -200, 0}, {-280, 310, 80}}) {
      double[] px = camera.project(p[0], p[1], p[2]);
      double[] back = camera.planePoint(px[0], px[1], p[2]);
      assertEquals(p[0], back[0], 1e-6);
      assertEquals(p[1], back[1], 1e-6);
    }
  }

  @Test
  void theRotationKeepsLengthsAndHandedness() {
    Camera camera = new Camera(BENT, 1000, 800, new Hold(0, 0, 1500, 2, 0.08, 0.03));
    double determinant = 0;
    for (int i = 0; i < 3; i++) {
      int j = (i + 1) % 3;
      int k = (i + 2) % 3;
      double norm = 0;
      for (int c = 0; c < 3; c++) {
        norm += camera.rotation(i, c) * camera.rotation(i, c);
      }
      assertEquals(1, norm, 1e-12);
      determinant +=
          camera.rotation(0, i)
              * (camera.rotation(1, j) * camera.rotation(2, k)
                  - camera.rotation(1, k) * camera.rotation(2, j));
    }
    assertEquals(1, determinant, 1e-12);
  }

  @Test
  void aCameraOnTheDeckIsRefused() {
    assertEquals(
        "heightMm must be > 0, got 0.0",
        assertThrows(IllegalArgumentException.class, () -> new Hold(0, 0, 0, 0, 0, 0))
            .getMessage());
  }
}
