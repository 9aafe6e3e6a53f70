// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import static org.junit.jupiter.api.Assertions.assertEquals;

import boofcv.struct.image.GrayU8;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.pixels.RgbImage;

class GreyTest {

  @Test
  void enlargedPicturesAreBilinearBetweenPixelCentres() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      byte[] rgb = new byte[3 * (1 + random.nextInt(12)) * 9];
      random.nextBytes(rgb);
      RgbImage image = RgbImage.of(rgb.length / 27, 9, rgb);
      PictureRegion all = new PictureRegion(0, 0, image.width(), image.height());
      GrayU8 grey = Grey.of(image, all, 1);
      int times = 2 + seed % 3;
      GrayU8 large = Grey.of(image, all, times);
      for (int i = 0; i < large.data.length; i++) {
        assertEquals(
            bilinear(grey, i % large.width, i / large.width, times),
            large.data[i] & 0xff,
            "seed " + seed + " at " + i);
      }
    }
  }

  private static int bilinear(GrayU8 grey, int x, int y, int times) {
    double sx = Math.max(0, Math.min(grey.width - 1, (x + 0.5) / times - 0.5));
    double sy = Math.max(0, Math.min(grey.height - 1, (y + 0.5) / times - 0.5));
    double fx = sx - Math.floor(sx);
    double fy = sy - Math.floor(sy);
    int left = (int) sx;
    int top = (int) sy;
    int right = Math.min(grey.width - 1, left + 1);
    int bottom = Math.min(grey.height - 1, top + 1);
    double upper = (1 - fx) * grey.get(left, top) + fx * grey.get(right, top);
    double lower = (1 - fx) * grey.get(left, bottom) + fx * grey.get(right, bottom);
    return (int) ((1 - fy) * upper + fy * lower + 0.5);
  }
}
