// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.teaching;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import javax.imageio.ImageIO;

/** Draws plants on matting and the paintings that go with them. */
final class DrawnBench {
  static final int WIDTH = 200;
  static final int HEIGHT = 150;
  private static final Color MATTING = new Color(120, 104, 96);
  private static final Color LEAF = new Color(110, 140, 60);

  private DrawnBench() {}

  /** Draws a photo and its painting: three leaves at places of a seed's choice. */
  static Path draw(Path folder, int seed) throws IOException {
    BufferedImage photo = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    BufferedImage labels = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(seed);
    fill(photo, MATTING);
    fill(labels, new Color(0xFFFFFF));
    for (int n = 0; n < 3; n++) {
      Ellipse2D leaf =
          new Ellipse2D.Double(
              20 + 60 * n, 20 + 60 * random.nextDouble(), 40, 25 + 20 * random.nextDouble());
      paint(photo, LEAF, leaf);
      paint(labels, new Color(0x00A040), leaf);
    }
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      int x = i % WIDTH;
      int y = Math.floorDiv(i, WIDTH);
      Color c = new Color(photo.getRGB(x, y));
      int noise = (int) Math.round(5 * random.nextGaussian());
      photo.setRGB(
          x, y, new Color(c.getRed() + noise, c.getGreen() + noise, c.getBlue() + noise).getRGB());
    }
    Path file = folder.resolve("bench").resolve("2026-04-1" + seed + "_R1.png");
    ImageIO.write(photo, "png", file.toFile());
    ImageIO.write(labels, "png", TeachRequest.Pair.labelsOf(file).toFile());
    return file;
  }

  private static void fill(BufferedImage picture, Color colour) {
    Graphics2D g = picture.createGraphics();
    g.setColor(colour);
    g.fillRect(0, 0, WIDTH, HEIGHT);
    g.dispose();
  }

  private static void paint(BufferedImage picture, Color colour, Ellipse2D leaf) {
    Graphics2D g = picture.createGraphics();
    g.setColor(colour);
    g.fill(leaf);
    g.dispose();
  }
}
