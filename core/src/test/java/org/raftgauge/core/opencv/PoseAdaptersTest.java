// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

class PoseAdaptersTest {

  @Test
  void everyScopeClosesAlsoWhenTheBodyThrows() {
    long before = MatScope.openScopes();
    RgbImage image = RgbImage.of(40, 30, new byte[3600]);
    for (int i = 0; i < 200; i++) {
      DetectMarkers.in(image, 1, DetectMarkers.Search.CONTOURS);
      FindBlobs.rectangles(image);
      // A factor that leaves no pixel: the native resize refuses.
      assertThrows(
          RuntimeException.class,
          () -> DetectMarkers.in(image, 1e-9, DetectMarkers.Search.CONTOURS));
    }
    assertEquals(before, MatScope.openScopes());
  }

  @Test
  void aLightRectangleIsFoundWithItsCorners() {
    int width = 400;
    int height = 300;
    byte[] rgb = new byte[3 * width * height];
    for (int y = 50; y < 250; y++) {
      for (int x = 100; x < 220; x++) {
        java.util.Arrays.fill(rgb, 3 * (y * width + x), 3 * (y * width + x) + 3, (byte) 200);
      }
    }
    List<List<PointPx>> found = FindBlobs.rectangles(RgbImage.of(width, height, rgb));
    assertEquals(2, found.size(), "the light rectangle, and the dark that is about it");
    PointPx corner = new PointPx(100, 50);
    double near =
        found.get(0).stream().mapToDouble(corner::distancePx).min().orElse(Double.MAX_VALUE);
    // Contours run through pixel middles.
    assertEquals(0, near, 1);
  }
}
