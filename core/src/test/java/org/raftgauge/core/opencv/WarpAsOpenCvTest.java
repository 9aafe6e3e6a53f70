// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import org.raftgauge.core.pixels.LightLevels;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.pixels.Warp;

/** Redrawing against OpenCV's remap and resize of 16-bit light, bit by bit. */
class WarpAsOpenCvTest {

  @Test
  void redrawingIsRemappingAndResizing() {
    for (int seed = 0; seed < 100; seed++) {
      Random random = new Random(seed);
      RgbImage image = image(2 + random.nextInt(40), 2 + random.nextInt(30), random);
      int shrink = 1 + seed % 5;
      Places places = places(image, shrink, random);
      assertArrayEquals(
          byOpenCv(image, places, shrink),
          Warp.redraw(image, places, shrink).rgb(),
          "seed " + seed);
    }
  }

  private static final class Places implements Warp.Sources {
    private final int width;
    private final int height;
    private final float[] xs;
    private final float[] ys;

    private Places(int width, int height) {
      this.width = width;
      this.height = height;
      this.xs = new float[width * height];
      this.ys = new float[width * height];
    }

    @Override
    public int width() {
      return width;
    }

    @Override
    public int height() {
      return height;
    }

    @Override
    public void row(int y, float[] xPx, float[] yPx) {
      System.arraycopy(xs, y * width, xPx, 0, width);
      System.arraycopy(ys, y * width, yPx, 0, width);
    }
  }

  private static RgbImage image(int width, int height, Random random) {
    byte[] rgb = new byte[3 * width * height];
    random.nextBytes(rgb);
    return RgbImage.of(width, height, rgb);
  }

  /** Places all over a picture and some pixels beyond it, some of them halves of 1/32 px. */
  private static Places places(RgbImage image, int shrink, Random random) {
    int width = shrink * (1 + random.nextInt(30));
    int height = shrink * (1 + random.nextInt(30));
    Places places = new Places(width, height);
    for (int i = 0; i < width * height; i++) {
      places.xs[i] = place(image.width(), random);
      places.ys[i] = place(image.height(), random);
    }
    return places;
  }

  private static float place(int side, Random random) {
    float place = (side + 5) * random.nextFloat() - 3;
    return random.nextInt(4) == 0 ? Math.round(64 * place) / 64f : place;
  }

  private static byte[] byOpenCv(RgbImage image, Places places, int shrink) {
    try (MatScope scope = new MatScope()) {
      short[] light = new short[image.rgb().length];
      for (int i = 0; i < light.length; i++) {
        light[i] = (short) (int) LightLevels.ofCode(image.rgb()[i]);
      }
      Mat from = scope.own(new Mat(image.height(), image.width(), CvType.CV_16UC3));
      from.put(0, 0, light);
      Mat drawn = scope.mat();
      Mat xs = scope.of(places.width, places.height, places.xs);
      Mat ys = scope.of(places.width, places.height, places.ys);
      Imgproc.remap(from, drawn, xs, ys, Imgproc.INTER_LINEAR, Core.BORDER_CONSTANT);
      Mat mean = scope.mat();
      int across = places.width / shrink;
      int down = places.height / shrink;
      Imgproc.resize(drawn, mean, new Size(across, down), 0, 0, Imgproc.INTER_AREA);
      short[] levels = new short[(int) (3 * mean.total())];
      mean.get(0, 0, levels);
      byte[] codes = new byte[levels.length];
      for (int i = 0; i < codes.length; i++) {
        codes[i] = LightLevels.coded(levels[i] & 0xffff);
      }
      return codes;
    }
  }
}
