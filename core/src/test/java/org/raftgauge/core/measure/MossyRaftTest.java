// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.plane.DrawnPhoto;
import org.raftgauge.core.site.SiteMeasure;

/** A raft whose holes are full of moss as green as leaf, from its photo to its sites. */
class MossyRaftTest {
  /** sRGB 60, 90, 40 and lettuce in linear light (IEC 61966-2-1). */
  private static final double[] FRESH_MOSS = {0.045, 0.102, 0.021};

  private static final double[] LEAF = {0.117, 0.296, 0.034};

  @TempDir private Path folder;

  private List<SiteMeasure> sites(double plantRadiusMm) {
    DrawnPhoto photo = DrawnPhoto.upright().tagged("DR-1");
    for (int i = 0; i < 18; i++) {
      double x = 120 + 180 * (i % 3);
      double y = 150 + 180 * Math.floorDiv(i, 3);
      photo.disc(x, y, 23, FRESH_MOSS).disc(x, y, plantRadiusMm, LEAF);
    }
    PhotoFacts facts = DrawnFarm.manifest(DrawnFarm.NAME, "bench", "");
    PhotoMeasure measure =
        MeasurePhoto.measure(photo.png(), facts, DrawnFarm.book(folder)).measure();
    return measure.rafts().get(0).sites();
  }

  @Test
  void plantsOnMossAreHeldWithWhatToDo() {
    for (SiteMeasure site : sites(9)) {
      assertEquals(
          "leaf and the plug of its hole look alike; look at it, clean a mossy plug, or teach a colour"
              + " model",
          site.held(),
          site.site().toString());
      assertTrue(site.projectedAreaCm2().isEmpty(), site.site().toString());
    }
  }

  @Test
  void mossAloneIsEmpty() {
    for (SiteMeasure site : sites(0)) {
      assertEquals("", site.held(), site.site().toString());
      assertEquals(0, site.projectedAreaCm2().orElseThrow(), site.site().toString());
    }
  }
}
