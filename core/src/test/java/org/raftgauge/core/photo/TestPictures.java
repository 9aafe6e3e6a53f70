// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Random;
import org.raftgauge.core.pixels.RgbImage;

/** Draws pictures for tests. */
final class TestPictures {

  private TestPictures() {}

  /** Returns a picture of coloured noise. */
  static BufferedImage noise(int width, int height, long seed) {
    Random random = new Random(seed);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < width * height; i++) {
      image.setRGB(i % width, i / width, random.nextInt(0x1000000));
    }
    return image;
  }

  /** Returns a light board with green discs and dark lines on it, all of seeded sizes. */
  static BufferedImage board(int width, int height, long seed) {
    Random random = new Random(seed);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setColor(new Color(205, 205, 200));
    graphics.fillRect(0, 0, width, height);
    for (int i = 0; i < 40; i++) {
      int size = width / 20 + random.nextInt(width / 8);
      graphics.setColor(
          new Color(40 + random.nextInt(60), 90 + random.nextInt(80), 30 + random.nextInt(40)));
      graphics.fillOval(random.nextInt(width), random.nextInt(height), size, size);
    }
    graphics.setColor(new Color(40, 40, 40));
    graphics.setStroke(new BasicStroke(width / 150f));
    for (int i = 0; i < 12; i++) {
      graphics.drawLine(
          random.nextInt(width),
          random.nextInt(height),
          random.nextInt(width),
          random.nextInt(height));
    }
    graphics.dispose();
    return image;
  }

  /** Copies a picture into ours. */
  static RgbImage toRgb(BufferedImage image) {
    int width = image.getWidth();
    byte[] rgb = new byte[3 * width * image.getHeight()];
    for (int i = 0; i < rgb.length / 3; i++) {
      int argb = image.getRGB(i % width, i / width);
      rgb[3 * i] = (byte) (argb >> 16);
      rgb[3 * i + 1] = (byte) (argb >> 8);
      rgb[3 * i + 2] = (byte) argb;
    }
    return RgbImage.of(width, image.getHeight(), rgb);
  }
}
