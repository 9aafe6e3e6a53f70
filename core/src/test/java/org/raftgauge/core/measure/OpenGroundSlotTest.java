// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.book.BookFolder;
import org.raftgauge.core.canopy.DrawnGround;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.site.SiteMeasure;

/** A slot with nothing to refine on: plants on soil under a fixed camera. */
class OpenGroundSlotTest {
  /** 400 x 300 px, 1 mm a pixel; the slot is the whole picture, a 2 x 3 board of 400 x 300 mm. */
  private static final String STATION =
      """
      kind: fixed
      image_width_px: 400
      image_height_px: 300
      lens: {fx_px: 1000}
      camera_height_mm: 1000
      slots:
        - {name: left, layout: small, corners_px: [[-0.5, -0.5], [399.5, -0.5], [399.5, 299.5], [-0.5, 299.5]], refine: none}
      """;

  @TempDir Path folder;

  private PhotoResult measure(RgbImage photo, String raft) throws IOException {
    BookFolder book =
        BookFolder.in(folder)
            .with("stations/over-pond.yaml", STATION)
            .with("placements.csv", "station,slot,raft,from,to\n");
    PhotoFacts facts =
        new PhotoFacts(
            "plot.png",
            Optional.of("2026-04-20T18:00"),
            Optional.of("over-pond"),
            Optional.empty(),
            Optional.of(raft));
    return MeasurePhoto.measure(DrawnFarm.png(photo), facts, book.read().book());
  }

  /** Two leaves about site A1 at (80, 80), one about site B3 at (320, 220). */
  private static DrawnGround plants() {
    return DrawnGround.soil(400, 300)
        .leaf(80, 80, 40, 14, 0.3)
        .leaf(82, 78, 30, 16, 1.8)
        .leaf(320, 220, 35, 15, 2.2);
  }

  @Test
  void plantsOnSoilAreMeasuredSiteBySite() throws IOException {
    DrawnGround drawn = plants();
    PhotoResult result = measure(drawn.photo(), "R1");
    assertEquals(PhotoStatus.USED, result.measure().status(), result.measure().reason());
    RaftMeasure raft = result.measure().rafts().get(0);
    double cm2 = 0;
    for (SiteMeasure site : raft.sites()) {
      cm2 += site.visibleAreaCm2().orElseThrow();
    }
    // 1 mm a pixel: 100 px to the cm2.
    assertEquals(drawn.areaPx() / 100, cm2, 0.06 * drawn.areaPx() / 100);
    assertEquals(drawn.areaPx() / (400 * 300), raft.canopyCover().orElseThrow(), 0.005);
    assertEquals(0, raft.sites().get(1).visibleAreaCm2().orElseThrow(), 1e-9);
    assertEquals(OptionalDouble.empty(), result.measure().lightCast());
  }

  @Test
  void redLeafOnSoilIsHeldInsteadOfGuessed() throws IOException {
    RaftMeasure raft = measure(plants().photo(), "R2").measure().rafts().get(0);
    for (SiteMeasure site : raft.sites()) {
      assertEquals(
          "on open ground only green leaf, and leaf that a model was taught there, is told from"
              + " what is about it",
          site.held());
      assertTrue(site.projectedAreaCm2().isEmpty());
    }
  }
}
