// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.function.Consumer;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.plane.Rotations;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;

/**
 * Renders photos of a printed chessboard by two cameras that are fastened to each other: the
 * example of a calibration of a pair. Board and bench are those of {@link TargetSet}.
 */
public final class TargetPairs {
  /** The first lens, for 640 x 480 px. */
  public static final Lens FIRST =
      new Lens(710, 710, 323, 235.3, -0.155, 0.062, 0.0006, -0.0009, 0);

  /** The second lens, for 640 x 480 px. */
  public static final Lens SECOND =
      new Lens(704, 704, 316.5, 243, -0.148, 0.055, -0.0004, 0.0005, 0);

  private static final int WIDTH = 640;
  private static final int HEIGHT = 480;
  private static final int QUALITY = 85;

  /** Turn of the second camera against the first, degrees, and shift, mm. */
  private static final double[] TURN_DEG = {0.35, -0.8, 0.5};

  private static final double[] SHIFT_MM = {-80, 1.2, 0.8};

  /**
   * Where the board's middle lies in the first picture (shares of its width and height), camera
   * height (mm), turn and two tilts (degrees).
   */
  private static final double[][] HOLDS = {
    {0.58, 0.50, 800, 3, 0, 0},
    {0.36, 0.30, 900, 0, 4, -3},
    {0.74, 0.30, 900, 2, 3, 4},
    {0.36, 0.70, 900, -2, -3, -4},
    {0.74, 0.70, 900, 1, -4, 3},
    {0.56, 0.45, 860, 0, 33, 0},
    {0.56, 0.55, 860, 4, -35, 2},
    {0.60, 0.50, 880, -3, 0, 34},
    {0.54, 0.50, 880, 0, 2, -36},
    {0.64, 0.55, 960, 40, 24, 26},
    {0.46, 0.45, 960, -35, 26, -24},
    {0.50, 0.50, 960, 90, -14, 34}
  };

  private TargetPairs() {}

  /**
   * Renders the photos: {@code left/target-NN.jpg} and {@code right/target-NN.jpg}.
   *
   * @param out folder to write to
   * @param seed of the noise
   * @param written told of each file
   * @throws IOException if a file cannot be written
   */
  public static void make(Path out, long seed, Consumer<Path> written) throws IOException {
    TargetSet.Bench bench = new TargetSet.Bench(new Random(seed));
    for (int i = 0; i < HOLDS.length; i++) {
      Camera first = first(HOLDS[i]);
      String name = String.format(Locale.ROOT, "target-%02d.jpg", i + 1);
      Path left = out.resolve("left").resolve(name);
      Path right = out.resolve("right").resolve(name);
      PictureFiles.writeJpeg(bench.photo(first, 0), left, QUALITY);
      PictureFiles.writeJpeg(bench.photo(second(first), 0), right, QUALITY);
      written.accept(left);
      written.accept(right);
    }
  }

  private static Camera first(double[] p) {
    double[] seen =
        new Camera(FIRST, WIDTH, HEIGHT, hold(p, new double[2]))
            .planePoint(p[0] * WIDTH, p[1] * HEIGHT, 0);
    return new Camera(FIRST, WIDTH, HEIGHT, hold(p, new double[] {-seen[0], -seen[1]}));
  }

  private static Hold hold(double[] p, double[] at) {
    return new Hold(
        at[0], at[1], p[2], Math.toRadians(p[3]), Math.toRadians(p[4]), Math.toRadians(p[5]));
  }

  private static Camera second(Camera first) {
    double[] turn =
        Rotations.about(
            Math.toRadians(TURN_DEG[0]), Math.toRadians(TURN_DEG[1]), Math.toRadians(TURN_DEG[2]));
    double[] r = new double[9];
    double[] t = SHIFT_MM.clone();
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < 3; k++) {
        r[3 * i + k] = first.rotation(i, k);
        t[i] += turn[3 * i + k] * first.shift(k);
      }
    }
    return new Camera(SECOND, WIDTH, HEIGHT, new Hold(0, 0, 1, 0, 0, 0))
        .posed(Rotations.times(turn, r), t);
  }
}
