// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.function.Consumer;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;

/**
 * Renders photos of a printed chessboard on a bench under a known lens: the example of a lens
 * calibration. The board has 9 x 6 squares of 27 mm on an A4 sheet. The next to last photo is
 * blurred and the last one cuts the board off, as happens.
 */
public final class TargetSet {
  /** The lens that the photos are rendered with, for 1280 x 960 px. */
  public static final Lens LENS =
      new Lens(1420, 1420, 646.5, 471.0, -0.155, 0.062, 0.0006, -0.0009, 0);

  private static final int WIDTH = 1280;
  private static final int HEIGHT = 960;
  private static final int QUALITY = 82;
  private static final int PARTS = 3;
  private static final double SQUARE_MM = 27;

  /**
   * Where the board's middle lies in the picture (shares of its width and height), camera height
   * (mm), turn and two tilts (degrees).
   */
  private static final double[][] HOLDS = {
    {0.50, 0.50, 420, 3, 0, 0},
    {0.32, 0.30, 480, 0, 4, -3},
    {0.68, 0.30, 480, 2, 3, 4},
    {0.32, 0.70, 480, -2, -3, -4},
    {0.68, 0.70, 480, 1, -4, 3},
    {0.50, 0.45, 460, 0, 33, 0},
    {0.50, 0.55, 460, 4, -35, 2},
    {0.55, 0.50, 470, -3, 0, 34},
    {0.45, 0.50, 470, 0, 2, -36},
    {0.60, 0.55, 520, 40, 24, 26},
    {0.40, 0.45, 520, -35, 26, -24},
    {0.45, 0.50, 520, 90, -14, 34},
    {0.66, 0.36, 560, 20, 25, 8},
    {0.34, 0.64, 580, 190, -22, -14},
    {0.52, 0.50, 470, 8, 3, 2},
    {0.14, 0.50, 430, 0, 0, 2}
  };

  private TargetSet() {}

  /**
   * Renders the photos.
   *
   * @param out folder to write to
   * @param seed of the noise
   * @param written told of each file
   * @throws IOException if a file cannot be written
   */
  public static void make(Path out, long seed, Consumer<Path> written) throws IOException {
    Bench bench = new Bench(new Random(seed));
    for (int i = 0; i < HOLDS.length; i++) {
      Path file = out.resolve(String.format(Locale.ROOT, "target-%02d.jpg", i + 1));
      PictureFiles.writeJpeg(
          bench.photo(camera(HOLDS[i]), i == HOLDS.length - 2 ? 9 : 0), file, QUALITY);
      written.accept(file);
    }
  }

  /** Moves the camera so that it sees the board's middle where it should. */
  private static Camera camera(double[] p) {
    Camera above = new Camera(LENS, WIDTH, HEIGHT, hold(p, new double[2]));
    double[] seen = above.planePoint(p[0] * WIDTH, p[1] * HEIGHT, 0);
    return new Camera(LENS, WIDTH, HEIGHT, hold(p, new double[] {-seen[0], -seen[1]}));
  }

  private static Hold hold(double[] p, double[] at) {
    return new Hold(
        at[0], at[1], p[2], Math.toRadians(p[3]), Math.toRadians(p[4]), Math.toRadians(p[5]));
  }

  /** The board on its bench, and the sensor's noise. */
  static final class Bench {
    private final Random random;

    Bench(Random random) {
      this.random = random;
    }

    /** Photographs the bench; motion in px along x. */
    RgbImage photo(Camera camera, double motionPx) {
      int width = camera.width();
      int height = camera.height();
      float[] light = light(camera, motionPx);
      byte[] rgb = new byte[3 * width * height];
      for (int i = 0; i < light.length; i++) {
        double x = (i % width - width / 2.0) / width;
        double y = (Math.floorDiv(i, width) - height / 2.0) / width;
        double v = light[i] * (1 - 0.5 * (x * x + y * y));
        double noisy = v + Math.sqrt(2e-5 + 1.5e-4 * v) * random.nextGaussian();
        for (int c = 0; c < 3; c++) {
          double tint = c == 0 ? 1 : c == 1 ? 0.97 : 0.9;
          rgb[3 * i + c] = (byte) Math.round(255 * coded(noisy * tint));
        }
      }
      return RgbImage.of(width, height, rgb);
    }

    /** Light of the scene through lens and shutter; motion in px along x. */
    private static float[] light(Camera camera, double motionPx) {
      int width = camera.width();
      float[] light = new float[width * camera.height()];
      int parts = motionPx > 0 ? 12 : PARTS;
      for (int i = 0; i < light.length; i++) {
        double sum = 0;
        for (int k = 0; k < parts * PARTS; k++) {
          double dx = ((k % parts + 0.5) / parts - 0.5) * (1.4 + motionPx);
          double dy = ((Math.floorDiv(k, parts) + 0.5) / PARTS - 0.5) * 1.4;
          double[] at = camera.planePoint(i % width + dx, Math.floorDiv(i, width) + dy, 0);
          sum += bench(at[0], at[1]);
        }
        light[i] = (float) (sum / (parts * PARTS));
      }
      return light;
    }

    /** A bench of planks with the sheet on it. */
    private static double bench(double x, double y) {
      if (Math.abs(x) > 148.5 || Math.abs(y) > 105) {
        double grain = Math.sin(0.9 * y + 0.35 * Math.sin(0.05 * x)) * Math.sin(0.013 * x + y);
        double seam = Math.abs(Math.IEEEremainder(y + 30, 90)) < 1.2 ? 0.4 : 1;
        return seam * (0.17 + 0.035 * grain);
      }
      double u = Math.floor(x / SQUARE_MM + 4.5);
      double v = Math.floor(y / SQUARE_MM + 3);
      boolean on = u >= 0 && u < 9 && v >= 0 && v < 6;
      double lamp = 1 - 0.0006 * x + 0.0004 * y;
      return lamp * (on && (u + v) % 2 == 0 ? 0.035 : 0.72);
    }

    private static double coded(double linear) {
      double v = Math.max(0, Math.min(1, linear));
      return v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055;
    }
  }
}
