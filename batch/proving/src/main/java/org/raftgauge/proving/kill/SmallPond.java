// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.kill;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Random;
import javax.imageio.ImageIO;

/**
 * A pond of two boards of four plants under two fixed cameras, thirty evenings: 60 small photos.
 * Leaf and board are plain colours, so that measuring takes little time; what is measured does not
 * matter here, only that it is kept.
 */
final class SmallPond {
  static final int BOARDS = 2;
  static final int EVENINGS = 30;

  /** Evenings that most books of the campaign do not know yet. */
  static final int NEW_EVENINGS = 3;

  static final LocalDate FIRST = LocalDate.of(2026, 4, 6);
  private static final int SIZE_PX = 240;
  private static final int RIM_PX = 20;
  private static final double BOARD_MM = 500;
  private static final double PX_PER_MM = (SIZE_PX - 2 * RIM_PX) / BOARD_MM;
  private static final double PLANTED_CM2 = 20;
  private static final double RATE_PER_DAY = 0.05;

  private SmallPond() {}

  /** Writes the book and the photos. */
  static void write(Path book, Path photos, long seed) throws IOException {
    Random draw = new Random(seed);
    Files.createDirectories(book.resolve("stations"));
    write(book, "book.yaml", "time_zone: UTC", "day_starts_at: \"04:00\"", "station: cam-0");
    write(
        book,
        "layouts.yaml",
        "layouts:",
        "  small-4:",
        "    board: {width_mm: 500, length_mm: 500}",
        "    sites: {rows: 2, columns: 2, first_x_mm: 150, first_y_mm: 150, pitch_x_mm: 200,"
            + " pitch_y_mm: 200}");
    write(
        book,
        "crops.yaml",
        "crops:",
        "  small:",
        "    colour_model: green-leaf",
        "    height_model: {scale_mm: 5, exponent: 0.5}");
    StringBuilder plantings = new StringBuilder("raft,pond,crop,layout,transplanted_on\n");
    StringBuilder placements = new StringBuilder("station,slot,raft,from,to\n");
    StringBuilder manifest = new StringBuilder("photo,taken_at,station\n");
    for (int board = 0; board < BOARDS; board++) {
      station(book, board);
      plantings.append("K-" + board + ",P1,small,small-4," + FIRST.minusDays(2) + "\n");
      placements.append("cam-" + board + ",s,K-" + board + "," + FIRST.minusDays(2) + ",\n");
      for (int evening = 0; evening < EVENINGS; evening++) {
        LocalDate day = FIRST.plusDays(evening);
        String name = day + "/K-" + board + ".jpg";
        manifest.append(name + "," + day + "T18:00:00Z,cam-" + board + "\n");
        Files.createDirectories(photos.resolve(day.toString()));
        photo(photos.resolve(name), evening + 2, draw);
      }
    }
    write(book, "plantings.csv", plantings.toString());
    write(book, "placements.csv", placements.toString());
    write(photos, "manifest.csv", manifest.toString());
  }

  private static void station(Path book, int board) throws IOException {
    int far = SIZE_PX - RIM_PX;
    double focalPx = PX_PER_MM * 1600;
    write(
        book.resolve("stations"),
        "cam-" + board + ".yaml",
        "kind: fixed",
        "image_width_px: " + SIZE_PX,
        "image_height_px: " + SIZE_PX,
        "lens: {fx_px: " + focalPx + ", fy_px: " + focalPx + ", cx_px: 119.5, cy_px: 119.5}",
        "camera_height_mm: 1600",
        "slots:",
        "  - name: s",
        "    layout: small-4",
        "    corners_px: [["
            + RIM_PX
            + ", "
            + RIM_PX
            + "], ["
            + far
            + ", "
            + RIM_PX
            + "], ["
            + far
            + ", "
            + far
            + "], ["
            + RIM_PX
            + ", "
            + far
            + "]]",
        "    refine: none");
  }

  private static void photo(Path file, int dat, Random draw) throws IOException {
    BufferedImage image = new BufferedImage(SIZE_PX, SIZE_PX, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setColor(new Color(40, 55, 60));
    pen.fillRect(0, 0, SIZE_PX, SIZE_PX);
    pen.setColor(new Color(225, 225, 222));
    pen.fillRect(RIM_PX, RIM_PX, SIZE_PX - 2 * RIM_PX, SIZE_PX - 2 * RIM_PX);
    for (int site = 0; site < 4; site++) {
      double areaMm2 = 100 * PLANTED_CM2 * Math.exp(RATE_PER_DAY * dat + 0.1 * draw.nextGaussian());
      double radius = Math.sqrt(areaMm2 / Math.PI) * PX_PER_MM;
      double x = RIM_PX + (150 + 200 * (site % 2)) * PX_PER_MM;
      double y = RIM_PX + (150 + 200 * (site / 2)) * PX_PER_MM;
      pen.setColor(new Color(60 + draw.nextInt(10), 140 + draw.nextInt(10), 45));
      pen.fill(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
    }
    pen.dispose();
    if (!ImageIO.write(image, "jpg", file.toFile())) {
      throw new IOException("no JPEG writer");
    }
  }

  private static void write(Path folder, String name, String... lines) throws IOException {
    String text = String.join("\n", lines);
    Files.writeString(folder.resolve(name), text.endsWith("\n") ? text : text + "\n");
  }
}
