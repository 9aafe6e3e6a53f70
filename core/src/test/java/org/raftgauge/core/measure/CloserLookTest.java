// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.plane.DrawnPhoto;

/**
 * A drawn raft of 1.45 mm a pixel, each pixel four times each way: 0.36 mm. That is averaged twice
 * each way for a first look, 0.72 mm, and not at all for a closer one.
 */
class CloserLookTest {
  private static final double[] LEAF = {0.117, 0.296, 0.034};
  private static final int TIMES = 4;

  @TempDir static Path folder;
  private static CropBook book;

  @BeforeAll
  static void readBook() {
    book = DrawnFarm.book(folder);
  }

  @Test
  void largePlantsAreMeasuredAtTheFirstLook() throws IOException {
    RaftMeasure raft = measure(disc(60)).rafts().get(0);
    assertEquals(0.72, raft.mmPerPx(), 0.02);
    // A disc of 60 mm, placed to 0.15 px of the drawing: 0.2 mm of its radius.
    assertEquals(Math.PI * 36, area(raft), 0.01 * Math.PI * 36);
  }

  @Test
  void smallPlantsAreLookedAtInAllDetail() throws IOException {
    RaftMeasure raft = measure(disc(20)).rafts().get(0);
    assertEquals(0.36, raft.mmPerPx(), 0.01);
    // The same 0.2 mm of 20 mm.
    assertEquals(Math.PI * 4, area(raft), 0.02 * Math.PI * 4);
  }

  @Test
  void anEmptyRaftIsLookedAtInAllDetail() throws IOException {
    RaftMeasure raft = measure(DrawnPhoto.upright().tagged("DR-1")).rafts().get(0);
    assertEquals(0.36, raft.mmPerPx(), 0.01);
  }

  @Test
  void aPhotoTellsOfItsCameraWhatTheFirstLookTold() throws IOException {
    double large = blurPx(measure(disc(60)));
    double small = blurPx(measure(disc(20)));
    // Twice as many pixels across the same edge would nearly double it.
    assertEquals(1, small / large, 0.05);
  }

  @Test
  void aPhotoOfAnotherShapeIsRefusedByTheSizeOfItsFile() throws IOException {
    BufferedImage wide = new BufferedImage(1000, 600, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = wide.createGraphics();
    pen.setColor(Color.ORANGE);
    pen.fillRect(100, 100, 800, 400);
    PhotoMeasure measure =
        MeasurePhoto.measure(enlarged(wide), PhotoFacts.of(DrawnFarm.NAME), book).measure();
    assertEquals(PhotoStatus.REFUSED, measure.status());
    String said = "photo is 4000 x 2400 px, station bench takes 600 x 1000: not the same shape";
    assertTrue(measure.reason().startsWith(said), measure.reason());
  }

  @Test
  void aPhotoWithoutABoardIsLookedAtTwiceAndRefused() throws IOException {
    byte[] grass = enlarged(new BufferedImage(600, 1000, BufferedImage.TYPE_INT_RGB));
    PhotoMeasure photo = MeasurePhoto.measure(grass, PhotoFacts.of(DrawnFarm.NAME), book).measure();
    assertTrue(photo.rafts().isEmpty());
  }

  private static DrawnPhoto disc(double radiusMm) {
    return DrawnPhoto.upright().tagged("DR-1").disc(120, 150, radiusMm, LEAF);
  }

  private static double area(RaftMeasure raft) {
    return raft.sites().stream()
        .filter(s -> s.site().equals(new SiteId(0, 0)))
        .mapToDouble(s -> s.projectedAreaCm2().orElseThrow())
        .sum();
  }

  private static double blurPx(PhotoMeasure photo) {
    return photo.witness().blur().blurPx().orElseThrow();
  }

  private static PhotoMeasure measure(DrawnPhoto drawn) throws IOException {
    byte[] bytes = enlarged(ImageIO.read(new ByteArrayInputStream(drawn.png())));
    PhotoMeasure photo = MeasurePhoto.measure(bytes, PhotoFacts.of(DrawnFarm.NAME), book).measure();
    assertEquals(
        List.of(Optional.of("DR-1")), photo.rafts().stream().map(RaftMeasure::raft).toList());
    return photo;
  }

  private static byte[] enlarged(BufferedImage drawn) throws IOException {
    BufferedImage large =
        new BufferedImage(
            TIMES * drawn.getWidth(), TIMES * drawn.getHeight(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < large.getHeight(); y++) {
      for (int x = 0; x < large.getWidth(); x++) {
        large.setRGB(x, y, drawn.getRGB(x / TIMES, y / TIMES));
      }
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(large, "png", bytes);
    return bytes.toByteArray();
  }
}
