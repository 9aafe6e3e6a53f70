// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.accuracy;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.apache.commons.csv.CSVRecord;
import org.raftgauge.batch.teaching.TeachRequest;
import org.raftgauge.core.book.Tissue;
import org.raftgauge.core.canopy.Cielab;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.teach.Labels;

/**
 * Paints rendered photos in the palette of teaching, from their exact truth: what a person would
 * paint by eye with a hard brush. Leaf of neighbour boards is left out.
 */
public final class PaintTruth {
  /** Coverage of a pixel that is half leaf. */
  public static final int HALF = 128;

  /** L* of the picture under which what is no leaf is painted dark, as pre-painting does. */
  private static final double DARK = 25;

  private final Path set;
  private final Path out;
  private final int least;

  private PaintTruth(Path set, Path out, int least) {
    this.set = set;
    this.out = out;
    this.least = least;
  }

  /**
   * Paints all photos of a set.
   *
   * @param set as {@code prove render} made it
   * @param out folder for the paintings
   * @param least coverage, 0..255, from which a pixel is painted as leaf
   * @return photos and paintings, in the order of the truth
   * @throws IOException if a file cannot be read or written
   */
  public static List<TeachRequest.Pair> of(Path set, Path out, int least) throws IOException {
    Map<String, Map<Integer, Tissue>> photos = new TreeMap<>();
    for (CSVRecord row : Table.read(set.resolve("truth.csv"))) {
      photos
          .computeIfAbsent(Table.cell(row, "photo"), p -> new HashMap<>())
          .put((int) Table.number(row, "label"), tissue(row));
    }
    PaintTruth paint = new PaintTruth(set, Files.createDirectories(out), least);
    List<TeachRequest.Pair> pairs = new ArrayList<>();
    for (Map.Entry<String, Map<Integer, Tissue>> photo : photos.entrySet()) {
      pairs.add(paint.paint(photo.getKey(), photo.getValue()));
    }
    return pairs;
  }

  private static Tissue tissue(CSVRecord row) {
    String crop = Table.cell(row, "crop");
    boolean red = crop.startsWith("red-") || crop.startsWith("purple-");
    return switch (Table.cell(row, "kind")) {
      case "pale" -> Tissue.PALE;
      case "dead" -> Tissue.DEAD;
      default -> red ? Tissue.RED : Tissue.GREEN;
    };
  }

  private TeachRequest.Pair paint(String photo, Map<Integer, Tissue> tissues) throws IOException {
    String png = photo.replace(".jpg", ".png");
    Path file = set.resolve("photos").resolve(photo);
    BufferedImage picture = ImageIO.read(file.toFile());
    Raster coverage = ImageIO.read(set.resolve("coverage").resolve(png).toFile()).getRaster();
    Raster labels = ImageIO.read(set.resolve("labels").resolve(png).toFile()).getRaster();
    BufferedImage painted =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        int leaf = coverage.getSample(x, y, 0);
        int owner = labels.getSample(x, y, 0);
        int rgb = Labels.IGNORE_RGB;
        if (leaf < least) {
          rgb = (isDark(picture.getRGB(x, y)) ? Tissue.DARK : Tissue.BOARD).rgb();
        } else if (tissues.containsKey(owner)) {
          rgb = tissues.get(owner).rgb();
        }
        painted.setRGB(x, y, rgb);
      }
    }
    Path to = out.resolve(Table.fileName(png).replace(".png", ".labels.png"));
    ImageIO.write(painted, "png", to.toFile());
    return new TeachRequest.Pair(file, to);
  }

  private static boolean isDark(int rgb) {
    return Cielab.ofLinear(
                Srgb.linear((byte) (rgb >> 16)),
                Srgb.linear((byte) (rgb >> 8)),
                Srgb.linear((byte) rgb))
            .l()
        < DARK;
  }
}
