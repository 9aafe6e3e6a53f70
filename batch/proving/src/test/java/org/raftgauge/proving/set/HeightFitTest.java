// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.raftgauge.proving.truth.PlantTruth;

final class HeightFitTest {

  @Test
  void aPowerLawIsFoundBackFromEveryThirdPlant() {
    PhotoPlan plan =
        new PhotoPlan(0, Condition.PLAIN, CropKind.BASIL, Stage.LATE, StationPlan.passing(1, 1), 1);
    List<SitePoint> points = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      double area = 5 + 7 * i;
      double mean = i % 3 == 0 ? 3.2 * Math.pow(area, 0.6) : 999;
      points.add(
          new SitePoint(plan, "R", "A" + i, i, "ok", new PlantTruth(area, area, mean, 2 * mean)));
    }
    HeightFit fit = HeightFit.fit(points);
    // made with 3.2 * area ^ 0.6 and a top twice the mean; the other plants are not looked at
    assertEquals(3.2, fit.scaleMm(), 1e-9);
    assertEquals(0.6, fit.exponent(), 1e-12);
    assertEquals(0.5, fit.meanToTop(), 1e-12);
  }
}
