// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.soak;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;

/**
 * Writes a farm of rafts of two plants under one fixed camera, and its photos: small drawn boards
 * whose plants grow by the evening. A photo differs from every other in raft or time, and in bytes:
 * each carries its number in a comment of the JPEG file.
 */
final class SoakFarm {
  /** Photos of one evening, each of another raft. */
  static final int RAFTS = 500;

  private static final LocalDate FIRST = LocalDate.of(2026, 4, 1);
  private static final LocalTime BEGIN = LocalTime.of(17, 0);
  private static final int SECONDS_APART = 10;
  private static final int WIDTH_PX = 120;
  private static final int HEIGHT_PX = 72;
  private static final double PX_PER_MM = 0.6;

  /** Different pictures of an evening. */
  private static final int PICTURES = 5;

  private final Path folder;
  private final long seed;

  SoakFarm(Path folder, long seed) {
    this.folder = folder;
    this.seed = seed;
  }

  Path book() {
    return folder.resolve("book");
  }

  Path photos() {
    return folder.resolve("photos");
  }

  /** Writes book and photos. */
  void write(int count) throws IOException {
    writeBook();
    byte[][] pictures = new byte[PICTURES][];
    for (int i = 0; i < count; i++) {
      int evening = Math.floorDiv(i, RAFTS);
      if (i % RAFTS == 0) {
        for (int n = 0; n < PICTURES; n++) {
          pictures[n] = picture(evening, n);
        }
      }
      Path file = photos().resolve(name(evening, i % RAFTS));
      Files.createDirectories(file.getParent());
      Files.write(file, numbered(pictures[i % PICTURES], i));
    }
  }

  private static String name(int evening, int raft) {
    LocalDate day = FIRST.plusDays(evening);
    String time = BEGIN.plusSeconds((long) SECONDS_APART * raft).toString().replace(':', '-');
    String whole = time.length() == 5 ? time + "-00" : time;
    return String.format(Locale.ROOT, "%s/%s_%s_S-%03d.jpg", day, day, whole, raft);
  }

  private void writeBook() throws IOException {
    write(
        "book.yaml",
        """
        time_zone: UTC
        day_starts_at: "04:00"
        station: lane
        photo_name: "{date}_{time}_{raft}"
        """);
    write(
        "stations/lane.yaml",
        """
        kind: fixed
        image_width_px: 120
        image_height_px: 72
        lens: {fx_px: 600}
        camera_height_mm: 1000
        slots:
          - {name: s1, layout: two, corners_px: [[-0.5, -0.5], [119.5, -0.5], [119.5, 71.5], [-0.5, 71.5]], refine: none}
        """);
    write(
        "layouts.yaml",
        """
        layouts:
          two:
            board: {width_mm: 200, length_mm: 120}
            sites: {rows: 1, columns: 2, first_x_mm: 55, first_y_mm: 60, pitch_x_mm: 90, pitch_y_mm: 90}
        """);
    write(
        "crops.yaml",
        """
        crops:
          leaf:
            colour_model: green-leaf
            height_model: {scale_mm: 5, exponent: 0.5}
        """);
    StringBuilder plantings = new StringBuilder("raft,pond,crop,layout,transplanted_on\n");
    for (int raft = 0; raft < RAFTS; raft++) {
      plantings.append(
          String.format(Locale.ROOT, "S-%03d,P%d,leaf,two,2026-03-20%n", raft, 1 + raft / 100));
    }
    write("plantings.csv", plantings.toString());
  }

  private void write(String file, String text) throws IOException {
    Path path = book().resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private byte[] picture(int evening, int number) throws IOException {
    Random random = new Random(seed + 31L * evening + number);
    BufferedImage image = new BufferedImage(WIDTH_PX, HEIGHT_PX, BufferedImage.TYPE_INT_RGB);
    Graphics2D ink = image.createGraphics();
    ink.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    ink.setColor(new Color(205, 203, 200));
    ink.fillRect(0, 0, WIDTH_PX, HEIGHT_PX);
    for (int site = 0; site < 2; site++) {
      double x = (55 + 90 * site) * PX_PER_MM;
      double y = 60 * PX_PER_MM;
      double r = (10 + 1.5 * evening + 3 * random.nextDouble()) * PX_PER_MM;
      ink.setColor(new Color(70 + random.nextInt(20), 125 + random.nextInt(20), 50));
      ink.fill(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
    }
    ink.dispose();
    noise(image, random);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "jpg", bytes);
    return bytes.toByteArray();
  }

  private static void noise(BufferedImage image, Random random) {
    for (int y = 0; y < HEIGHT_PX; y++) {
      for (int x = 0; x < WIDTH_PX; x++) {
        Color c = new Color(image.getRGB(x, y));
        int n = (int) Math.round(3 * random.nextGaussian());
        Color noisy =
            new Color(clamp(c.getRed() + n), clamp(c.getGreen() + n), clamp(c.getBlue() + n));
        image.setRGB(x, y, noisy.getRGB());
      }
    }
  }

  private static int clamp(int value) {
    return Math.max(0, Math.min(255, value));
  }

  /** Puts a comment segment (ITU-T T.81, B.2.4.5) behind the start of the file. */
  private static byte[] numbered(byte[] jpeg, int number) {
    byte[] text = ("photo " + number).getBytes(StandardCharsets.US_ASCII);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.write(jpeg, 0, 2);
    bytes.write(0xff);
    bytes.write(0xfe);
    bytes.write((text.length + 2) >> 8);
    bytes.write((text.length + 2) & 0xff);
    bytes.writeBytes(text);
    bytes.write(jpeg, 2, jpeg.length - 2);
    return bytes.toByteArray();
  }
}
