// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.raftgauge.core.pixels.RgbImage;

/** Finds the shared data folder, where there is one, and reads its pictures. */
public final class SharedData {

  private SharedData() {}

  /** Returns a folder of the shared data; skips the test where it is absent. */
  public static Path folder(String name) {
    Path found = Path.of("absent");
    String given = System.getProperty("raftgauge.shared", "");
    if (!given.isEmpty()) {
      found = Path.of(given, name);
    }
    for (Path p = Path.of(System.getProperty("user.dir")); p != null; p = p.getParent()) {
      Path shared = p.resolve("shared").resolve(name);
      if (!Files.exists(found) && Files.exists(shared)) {
        found = shared;
      }
    }
    assumeTrue(Files.exists(found), "no shared/" + name + " beside the project: skipped");
    return found;
  }

  /** Reads a picture as three channels. */
  public static RgbImage picture(Path file) throws IOException {
    BufferedImage image = ImageIO.read(file.toFile());
    int[] argb = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    byte[] rgb = new byte[3 * argb.length];
    for (int i = 0; i < argb.length; i++) {
      rgb[3 * i] = (byte) (argb[i] >> 16);
      rgb[3 * i + 1] = (byte) (argb[i] >> 8);
      rgb[3 * i + 2] = (byte) argb[i];
    }
    return RgbImage.of(image.getWidth(), image.getHeight(), rgb);
  }
}
