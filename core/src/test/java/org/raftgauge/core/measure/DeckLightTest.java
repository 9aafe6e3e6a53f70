// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.raftgauge.core.plane.DrawnPhoto;
import org.raftgauge.core.site.SiteMeasure;

/** Small and large plants in failing light, from their photo to their sites. */
class DeckLightTest {
  private static final double[] LEAF = {0.117, 0.296, 0.034};

  /** Radii of three large plants and a small one, mm; the other holes are empty. */
  private static final Map<String, Double> RADII =
      Map.of("A1", 60.0, "B2", 45.0, "F3", 30.0, "F1", 9.0);

  @TempDir private Path folder;

  private RaftMeasure raft(double light) {
    DrawnPhoto photo =
        DrawnPhoto.upright()
            .tagged("DR-1")
            .disc(125, 155, 60, LEAF)
            .disc(300, 330, 45, LEAF)
            .disc(480, 1050, 30, LEAF)
            .disc(122, 1052, 9, LEAF);
    PhotoFacts facts = DrawnFarm.manifest(DrawnFarm.NAME, "bench", "");
    byte[] png = photo.light(light, light, light).png();
    return MeasurePhoto.measure(png, facts, DrawnFarm.book(folder)).measure().rafts().get(0);
  }

  @Test
  void allIsMeasuredInDimLight() {
    for (SiteMeasure site : raft(0.15).sites()) {
      assertEquals("", site.held(), site.site().toString());
    }
  }

  @Test
  void inTheDuskLargePlantsAreMeasuredAndSmallOnesHeld() {
    for (SiteMeasure site : raft(0.05).sites()) {
      double radiusCm = RADII.getOrDefault(site.site().toString(), 0.0) / 10;
      if (radiusCm > 1) {
        assertEquals("", site.held(), site.site().toString());
        double truth = Math.PI * radiusCm * radiusCm;
        assertEquals(1, site.projectedAreaCm2().orElseThrow() / truth, 0.03, "" + site.site());
      } else {
        assertTrue(site.held().contains("so small a plant"), site.site() + site.held());
        assertTrue(site.projectedAreaCm2().isEmpty(), site.site().toString());
      }
    }
  }

  @Test
  void aDarkBoardIsHeld() {
    RaftMeasure raft = raft(0.015);
    assertEquals("it is too dark to tell leaf from board", raft.held());
  }
}
