// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.raftgauge.core.canopy.KnownCanopy;

/** What must hold of every split of a canopy: leaf drawn with a seed, flat and under the camera. */
class AllotmentPropertyTest {
  private static final int WIDTH = 120;
  private static final int HEIGHT = 60;
  private static final double PITCH_PX = 40;
  private static final double MM_PER_PX = 5;
  private static final double CM2_PER_PX = MM_PER_PX * MM_PER_PX / 100;

  private final Random random = new Random(8_302);

  @Test
  void whatTheSitesGetAndWhatIsLeftAddUpToAllLeaf() {
    for (int n = 0; n < 150; n++) {
      byte[] leaf = leaf();
      SiteCanopy sites = split(leaf);
      double cm2 = sites.leftoverCm2();
      for (SiteMeasure site : sites.sites()) {
        cm2 += site.visibleAreaCm2().orElseThrow();
      }
      assertEquals(CM2_PER_PX * covered(leaf), cm2, 1e-6 + 1e-9 * cm2, "case " + n);
    }
  }

  @Test
  void everyPixelOfLeafHasOneOwnerOrNoneAndOthersHaveNone() {
    for (int n = 0; n < 150; n++) {
      byte[] leaf = leaf();
      short[] owner = split(leaf).owner();
      for (int i = 0; i < owner.length; i++) {
        assertTrue(owner[i] >= -1 && owner[i] < 3, "case " + n + ": owner " + owner[i]);
      }
    }
  }

  @Test
  void leafAboutOneFootAloneIsThatSitesAlone() {
    for (int n = 0; n < 60; n++) {
      int site = random.nextInt(3);
      double r = 4 + 10 * random.nextDouble();
      byte[] leaf =
          KnownCanopy.discs(WIDTH, HEIGHT, new double[] {PITCH_PX * (site + 0.5) - 0.5, 29.5, r});
      SiteCanopy sites = split(leaf);
      for (int i = 0; i < 3; i++) {
        double cm2 = sites.sites().get(i).visibleAreaCm2().orElseThrow();
        assertEquals(i == site ? CM2_PER_PX * covered(leaf) : 0, cm2, 1e-6, "case " + n);
      }
    }
  }

  private static SiteCanopy split(byte[] leaf) {
    return MeasureSites.of(
        Grounds.row(WIDTH, HEIGHT, PITCH_PX, MM_PER_PX), KnownCanopy.of(WIDTH, HEIGHT, leaf));
  }

  /** Discs about the feet and anywhere, some touching, some cut by the rim. */
  private byte[] leaf() {
    double[][] discs = new double[1 + random.nextInt(8)][];
    for (int i = 0; i < discs.length; i++) {
      boolean atFoot = random.nextBoolean();
      double x = atFoot ? PITCH_PX * (random.nextInt(3) + 0.5) : WIDTH * random.nextDouble();
      double y = atFoot ? 29.5 : HEIGHT * random.nextDouble();
      discs[i] = new double[] {x, y, 1 + 17 * random.nextDouble()};
    }
    return KnownCanopy.discs(WIDTH, HEIGHT, discs);
  }

  private static double covered(byte[] leaf) {
    double sum = 0;
    for (byte b : leaf) {
      sum += (b & 0xff) / 255.0;
    }
    return sum;
  }
}
