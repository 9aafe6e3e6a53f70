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
      Warp.remap(image, Warp.Sources.of(2, 2, new float[4], new float[4]), 2);
      // 2 / 3 = 0 pixels: the native resize refuses.
      assertThrows(
          RuntimeException.class,
          () -> Warp.remap(image, Warp.Sources.of(2, 2, new float[4], new float[4]), 3));
    }
    assertEquals(before, MatScope.openScopes());
  }

  @Test
  void remapReadsBetweenPixelsAndAveragesParts() {
    // One row 0, 100, 200. By IEC 61966-2-1 codes 100 and 200 are lights of 0.1274 and 0.5776: half
    // way lie 0.0637 and 0.3525, codes 71 and 160; their mean is 0.2081, code 126; outside is
    // black.
    byte[] rgb = {0, 0, 0, 100, 100, 100, (byte) 200, (byte) 200, (byte) 200};
    RgbImage row = RgbImage.of(3, 1, rgb);
    Warp.Sources two = Warp.Sources.of(2, 2, new float[] {0.5f, 1.5f, 0.5f, 1.5f}, new float[4]);
    assertEquals(71, Warp.remap(row, two, 1).value(0, 0, 0));
    assertEquals(160, Warp.remap(row, two, 1).value(1, 0, 0));
    assertEquals(126, Warp.remap(row, two, 2).value(0, 0, 0));
    Warp.Sources outside = Warp.Sources.of(1, 1, new float[] {7}, new float[1]);
    assertEquals(0, Warp.remap(row, outside, 1).value(0, 0, 0));
  }

  @Test
  void aMapOfTheWrongLengthIsRefused() {
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> Warp.Sources.of(2, 2, new float[3], new float[4]));
    assertEquals("map lengths must be 4, got 3, 4", e.getMessage());
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
