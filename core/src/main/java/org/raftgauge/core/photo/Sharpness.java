// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

/**
 * Measures how much a picture loses when it is blurred once more: a sharp one loses most of its
 * edges' energy, a blurred one little.
 *
 * <p>{@code S = 1 - sum (b * dF)^2 / sum (dF)^2}, with dF the differences of neighbouring pixels
 * along one direction and b the binomial kernel of 9 taps; S is taken along x and along y and the
 * smaller counts, since a camera that moved blurs one direction only. A hard edge gives {@code 1 -
 * C(16, 8) / 2^16 = 0.8036}; a flat picture 0.
 *
 * <p>Known limits: sensor noise on a much blurred photo, and rounding where the contrast is a few
 * levels, count as edges and raise it.
 *
 * <p>Source: the idea of re-blurring is Crete, Dolmiere, Ladret and Nicolas (2007), "The blur
 * effect", Proc. SPIE 6492, doi:10.1117/12.702790. Differs from it: energies in place of absolute
 * differences, so that noise on flat parts does not drown the edges; a binomial kernel in place of
 * a box, since its response {@code cos^8(w/2)} falls with every frequency, hence S falls when a
 * Gaussian blur shifts the energy to lower ones.
 */
final class Sharpness {
  private static final float[] KERNEL = {70 / 256f, 56 / 256f, 28 / 256f, 8 / 256f, 1 / 256f};
  private static final int REACH = KERNEL.length - 1;

  private Sharpness() {}

  /**
   * Measures a thumbnail on every second row and column.
   *
   * @param thumbnail the picture
   * @return 0..1
   */
  static double of(Thumbnail thumbnail) {
    int width = thumbnail.width();
    int height = thumbnail.height();
    double alongX = along(thumbnail.luma(), new Lines(height, width, width, 1));
    double alongY = along(thumbnail.luma(), new Lines(width, height, 1, width));
    return Math.min(alongX, alongY);
  }

  /**
   * How lines run through the array.
   *
   * @param count number of lines
   * @param length px of each
   * @param toNextLine what the next line adds to an index
   * @param toNextPixel what the next px of the line adds
   */
  private record Lines(int count, int length, int toNextLine, int toNextPixel) {}

  private static double along(float[] luma, Lines lines) {
    if (lines.length() < 2 * REACH + 2) {
      return 0;
    }
    float[] differences = new float[lines.length() - 1];
    double before = 0;
    double after = 0;
    for (int line = 0; line < lines.count(); line += 2) {
      int at = line * lines.toNextLine();
      for (int i = 0; i < differences.length; i++, at += lines.toNextPixel()) {
        differences[i] = luma[at + lines.toNextPixel()] - luma[at];
      }
      before += energy(differences);
      after += blurredEnergy(differences);
    }
    return before > 0 ? Math.max(0, 1 - after / before) : 0;
  }

  // Both sums leave out the ends, where the kernel would reach over.
  private static double energy(float[] d) {
    float sum = 0;
    for (int i = REACH; i < d.length - REACH; i++) {
      sum += d[i] * d[i];
    }
    return sum;
  }

  private static double blurredEnergy(float[] d) {
    float sum = 0;
    for (int i = REACH; i < d.length - REACH; i++) {
      float blurred =
          KERNEL[0] * d[i]
              + KERNEL[1] * (d[i - 1] + d[i + 1])
              + KERNEL[2] * (d[i - 2] + d[i + 2])
              + KERNEL[3] * (d[i - 3] + d[i + 3])
              + KERNEL[4] * (d[i - 4] + d[i + 4]);
      sum += blurred * blurred;
    }
    return sum;
  }
}
