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
 * each way, 0.72 mm, and not at all where nothing is found so.
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
  void largeAndSmallPlantsAreMeasuredInWhatPixelsWereAveragedTo() throws IOException {
    for (double radiusMm : new double[] {60, 20}) {
      RaftMeasure raft = measure(disc(radiusMm)).rafts().get(0);
      assertEquals(0.72, raft.mmPerPx(), 0.02);
      double areaCm2 = Math.PI * radiusMm * radiusMm / 100;
      // Discs are placed to 0.15 px of the drawing: 0.2 mm of their radius.
      assertEquals(areaCm2, area(raft), 2 * 0.2 / radiusMm * areaCm2);
    }
  }

  /** A third of the board is in the photo, none of its markers and too little of its outline. */
  @Test
  void aPhotoInWhichNoBoardIsSeenIsLookedAtInAllItsPixels() throws IOException {
    PhotoResult photo = measured(enlarged(DrawnPhoto.shifted(400)));
    assertEquals(2400, photo.picture().orElseThrow().width());
    String said = "no raft was found: no corner marker, tag or board outline";
    assertEquals(said, photo.measure().reason());
  }

  @Test
  void aPhotoOfAnotherShapeIsRefusedByTheSizeOfItsFile() throws IOException {
    BufferedImage wide = new BufferedImage(1000, 600, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = wide.createGraphics();
    pen.setColor(Color.ORANGE);
    pen.fillRect(100, 100, 800, 400);
    PhotoMeasure measure = measured(enlarged(wide)).measure();
    assertEquals(PhotoStatus.REFUSED, measure.status());
    String said = "photo is 4000 x 2400 px, station bench takes 600 x 1000: not the same shape";
    assertTrue(measure.reason().startsWith(said), measure.reason());
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

  private static PhotoMeasure measure(DrawnPhoto drawn) throws IOException {
    PhotoMeasure photo = measured(enlarged(drawn)).measure();
    assertEquals(
        List.of(Optional.of("DR-1")), photo.rafts().stream().map(RaftMeasure::raft).toList());
    return photo;
  }

  private static PhotoResult measured(byte[] photo) {
    return MeasurePhoto.measure(photo, PhotoFacts.of(DrawnFarm.NAME), book);
  }

  private static byte[] enlarged(DrawnPhoto drawn) throws IOException {
    return enlarged(ImageIO.read(new ByteArrayInputStream(drawn.png())));
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
