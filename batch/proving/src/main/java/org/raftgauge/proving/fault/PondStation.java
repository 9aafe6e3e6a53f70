// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.set.Boards;
import org.raftgauge.proving.set.LayoutText;
import org.raftgauge.proving.solid.Placement;

/**
 * A fixed station over three boards of 500 x 1000 mm.
 *
 * @param name as the book names it
 * @param lens of its camera
 * @param hold where its camera hangs
 * @param blurPx usual defocus, px
 * @param vignetting usual loss in the corners
 * @param slopeX usual slope of its light along x, share a metre
 * @param slopeY the same along y
 */
record PondStation(
    String name,
    Lens lens,
    Hold hold,
    double blurPx,
    double vignetting,
    double slopeX,
    double slopeY) {
  private static final int WIDTH_PX = 1000;
  private static final int HEIGHT_PX = 660;

  /** Width of deck in the picture, mm. */
  private static final double WIDE_MM = 1760;

  static final Layout LAYOUT = Boards.named("pond-18");

  private static final List<Placement> PLACES =
      List.of(
          new Placement(0, 0, 0), new Placement(528, 7, 0.008), new Placement(1052, -5, -0.006));

  /** Draws a station. */
  static PondStation draw(String name, Random random) {
    double height = 2100 + 500 * random.nextDouble();
    double focal = WIDTH_PX * height / WIDE_MM;
    Lens lens =
        new Lens(focal, focal, WIDTH_PX / 2.0 + 4, HEIGHT_PX / 2.0 - 3, -0.09, 0.025, 0, 0, 0);
    Hold hold =
        new Hold(
            780,
            495,
            height,
            0.012 * random.nextGaussian(),
            0.01 * random.nextGaussian(),
            0.01 * random.nextGaussian());
    double slopeX = 0.1 * random.nextGaussian();
    double slopeY = 0.1 * random.nextGaussian();
    return new PondStation(
        name,
        lens,
        hold,
        0.4 + 0.2 * random.nextDouble(),
        0.15 * random.nextDouble(),
        slopeX,
        slopeY);
  }

  int widthPx() {
    return WIDTH_PX;
  }

  int heightPx() {
    return HEIGHT_PX;
  }

  /** Returns how many boards lie under the camera. */
  static int boards() {
    return PLACES.size();
  }

  /** Returns where a board floats on an evening. */
  static Placement place(int board, Random random) {
    Placement at = PLACES.get(board);
    return new Placement(
        at.xMm() + 2.5 * random.nextGaussian(),
        at.yMm() + 2.5 * random.nextGaussian(),
        at.turnRad() + 0.001 * random.nextGaussian());
  }

  /** Returns the id of the raft in a slot. */
  static String raft(int board) {
    return "FR-" + (board + 1);
  }

  /** Writes a crop book for the station. */
  void writeBook(Path book) throws IOException {
    Files.createDirectories(book.resolve("stations"));
    write(
        book.resolve("book.yaml"),
        "time_zone: UTC\nday_starts_at: \"04:00\"\nstation: "
            + name
            + "\nphoto_name: \"{date}\"\nunits: metric\n");
    write(book.resolve("layouts.yaml"), LayoutText.of(LAYOUT));
    write(
        book.resolve("crops.yaml"),
        "crops:\n  butterhead:\n    colour_model: green-leaf\n    height_model: {scale_mm: 6.0,"
            + " exponent: 0.45, mean_to_top: 0.55}\n    emerged_by_das: 7\n    limits:"
            + " {lagging_share: 0.78, ahead_share: 1.35, closed_outline: 0.35}\n");
    StringBuilder plantings =
        new StringBuilder(
            "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot\n");
    StringBuilder placements = new StringBuilder("station,slot,raft,from,to\n");
    for (int i = 0; i < boards(); i++) {
      plantings
          .append(raft(i))
          .append(",P1,,butterhead,,")
          .append(LAYOUT.name())
          .append(",,2025-12-15,2025-12-31,,,\n");
      placements.append(name).append(",S").append(i + 1).append(',').append(raft(i));
      placements.append(",2026-01-01,2026-12-31\n");
    }
    write(book.resolve("plantings.csv"), plantings.toString());
    write(book.resolve("placements.csv"), placements.toString());
    write(book.resolve("stations").resolve(name + ".yaml"), station());
  }

  private String station() {
    StringBuilder yaml = new StringBuilder();
    yaml.append(
        String.format(
            Locale.ROOT,
            "kind: fixed%nimage_width_px: %d%nimage_height_px: %d%nlens: {fx_px: %.3f, fy_px: %.3f,"
                + " cx_px: %.2f, cy_px: %.2f, k1: %.4f, k2: %.4f}%ncamera_height_mm: %.1f%nslots:%n",
            WIDTH_PX,
            HEIGHT_PX,
            lens.fxPx(),
            lens.fyPx(),
            lens.cxPx(),
            lens.cyPx(),
            lens.k1(),
            lens.k2(),
            hold.heightMm()));
    Camera camera = new Camera(lens, WIDTH_PX, HEIGHT_PX, hold);
    double w = LAYOUT.board().widthMm();
    double l = LAYOUT.board().lengthMm();
    for (int i = 0; i < boards(); i++) {
      List<String> corners = new ArrayList<>();
      for (double[] c : new double[][] {{0, 0}, {w, 0}, {w, l}, {0, l}}) {
        double x = PLACES.get(i).worldX(c[0], c[1]);
        double y = PLACES.get(i).worldY(c[0], c[1]);
        double[] at = camera.project(x, y, 0);
        corners.add(String.format(Locale.ROOT, "[%.1f, %.1f]", at[0], at[1]));
      }
      yaml.append(
          String.format(
              Locale.ROOT,
              "  - {name: S%d, layout: %s, corners_px: [%s]}%n",
              i + 1,
              LAYOUT.name(),
              String.join(", ", corners)));
    }
    return yaml.toString();
  }

  private static void write(Path file, String text) throws IOException {
    Files.writeString(file, text);
  }
}
