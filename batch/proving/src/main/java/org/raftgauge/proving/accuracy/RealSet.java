// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/** The sets of real photos with hand-drawn masks, as they lie in their folder. */
public enum RealSet {
  /** Field crop and weeds, 960 x 720; a mask is whatever is not black. */
  PEANUT("labels", 960, 720),
  /** Thin leaves, 350 x 350; a mask is white. */
  WHEAT("masks", 350, 350);

  private final String masks;
  private final int widthPx;
  private final int heightPx;

  RealSet(String masks, int widthPx, int heightPx) {
    this.masks = masks;
    this.widthPx = widthPx;
    this.heightPx = heightPx;
  }

  /** Returns the set's name in small letters. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  int widthPx() {
    return widthPx;
  }

  int heightPx() {
    return heightPx;
  }

  /** Lists the set's photos below a folder, by name. */
  List<Path> photos(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve(label()).resolve("images"))) {
      return files.sorted().toList();
    }
  }

  /** Reads the mask that belongs to a photo: true where it shows a plant. */
  boolean[] mask(Path photo) throws IOException {
    Path folder = photo.getParent().resolveSibling(masks);
    String name = Table.fileName(photo.toString());
    String stem = name.substring(0, name.lastIndexOf('.') + 1);
    try (Stream<Path> files = Files.list(folder)) {
      Path file =
          files
              .filter(f -> Table.fileName(f.toString()).startsWith(stem))
              .findFirst()
              .orElseThrow(() -> new IOException("no mask of " + name));
      return bright(ImageIO.read(file.toFile()));
    }
  }

  /** Says where any channel is over half: masks kept as JPEG are never quite black. */
  private static boolean[] bright(BufferedImage image) {
    int width = image.getWidth();
    int[] argb = image.getRGB(0, 0, width, image.getHeight(), null, 0, width);
    boolean[] bright = new boolean[argb.length];
    for (int i = 0; i < argb.length; i++) {
      bright[i] = (argb[i] & 0x808080) != 0;
    }
    return bright;
  }
}
