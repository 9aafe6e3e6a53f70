// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Draws boards with markers, tags, holes and flat leaves as a camera sees them: exact by
 * projection, each pixel the mean of 5 x 5 places in linear light.
 */
final class Scene {
  private static final int FINE = 5;
  private static final int MESH = 4;

  private final int width;
  private final int height;
  private final Random random;
  private final List<PaintedBoard> boards = new ArrayList<>();
  private double water = 0.03;
  private double noise = 2;

  private Scene(int width, int height, long seed) {
    this.width = width;
    this.height = height;
    this.random = new Random(seed);
  }

  static Scene of(int width, int height, long seed) {
    return new Scene(width, height, seed);
  }

  Scene water(double light) {
    water = light;
    return this;
  }

  Scene noise(double codes) {
    noise = codes;
    return this;
  }

  PaintedBoard board(Layout layout, CameraPose pose) {
    PaintedBoard board = new PaintedBoard(layout, pose);
    boards.add(board);
    return board;
  }

  RgbImage draw() {
    float[] light = new float[3 * width * height];
    for (int y0 = 0; y0 < height; y0 += MESH) {
      for (int x0 = 0; x0 < width; x0 += MESH) {
        tile(x0, y0, light);
      }
    }
    byte[] rgb = new byte[light.length];
    for (int i = 0; i < rgb.length; i++) {
      double code = 255 * encoded(light[i]) + noise * random.nextGaussian();
      rgb[i] = (byte) Math.max(0, Math.min(255, Math.round(code)));
    }
    return RgbImage.of(width, height, rgb);
  }

  private void tile(int x0, int y0, float[] light) {
    PointMm[][] corners = new PointMm[boards.size()][];
    for (int b = 0; b < boards.size(); b++) {
      CameraPose pose = boards.get(b).pose;
      corners[b] =
          new PointMm[] {
            pose.toDeck(new PointPx(x0 - 0.5, y0 - 0.5)),
            pose.toDeck(new PointPx(x0 + MESH - 0.5, y0 - 0.5)),
            pose.toDeck(new PointPx(x0 - 0.5, y0 + MESH - 0.5)),
            pose.toDeck(new PointPx(x0 + MESH - 0.5, y0 + MESH - 0.5))
          };
    }
    double[] colour = new double[3];
    for (int j = 0; j < MESH * FINE; j++) {
      for (int i = 0; i < MESH * FINE; i++) {
        int x = x0 + i / FINE;
        int y = y0 + j / FINE;
        if (x < width && y < height) {
          double fx = (i + 0.5) / (MESH * FINE);
          double fy = (j + 0.5) / (MESH * FINE);
          look(corners, fx, fy, colour);
          for (int c = 0; c < 3; c++) {
            light[3 * (y * width + x) + c] += (float) (colour[c] / (FINE * FINE));
          }
        }
      }
    }
  }

  private void look(PointMm[][] corners, double fx, double fy, double[] colour) {
    for (int b = 0; b < boards.size(); b++) {
      PointMm[] c = corners[b];
      double x =
          (1 - fy) * ((1 - fx) * c[0].xMm() + fx * c[1].xMm())
              + fy * ((1 - fx) * c[2].xMm() + fx * c[3].xMm());
      double y =
          (1 - fy) * ((1 - fx) * c[0].yMm() + fx * c[1].yMm())
              + fy * ((1 - fx) * c[2].yMm() + fx * c[3].yMm());
      if (boards.get(b).colour(x, y, colour)) {
        return;
      }
    }
    java.util.Arrays.fill(colour, water);
  }

  private static double encoded(double light) {
    double c = Math.max(0, Math.min(1, light));
    return c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
  }
}
