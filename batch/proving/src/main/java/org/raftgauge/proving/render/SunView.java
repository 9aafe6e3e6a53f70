// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Noise;
import org.raftgauge.proving.solid.TopView;

/** How much of the sun a place sees: a height map along the sun's rays, sampled softly. */
final class SunView {
  private static final double STEP_MM = 1.25;
  private static final int TAPS = 8;

  private final TopView top;
  private final Light light;
  private final double[] tapX = new double[TAPS];
  private final double[] tapY = new double[TAPS];

  SunView(Mesh mesh, Light light) {
    this.light = light;
    double reach = 200 * Math.max(Math.abs(light.sunDxMm()), Math.abs(light.sunDyMm()));
    this.top =
        new TopView(Box.around(mesh).grown(20 + reach), STEP_MM)
            .slanted(light.sunDxMm(), light.sunDyMm());
    if (light.sun().g() > 0) {
      top.draw(mesh, patch -> true);
    }
    for (int k = 0; k < TAPS; k++) {
      double radius = Math.sqrt((k + 0.5) / TAPS);
      tapX[k] = radius * Math.cos(2.399963 * k);
      tapY[k] = radius * Math.sin(2.399963 * k);
    }
  }

  /** Returns the share of the sun's light that reaches a place, 0..1. */
  double share(double x, double y, double z) {
    double footX = x - light.sunDxMm() * z;
    double footY = y - light.sunDyMm() * z;
    double over = Math.max(0, Math.min(150, top.atMm(footX, footY) - z));
    double radius = 1.0 + light.softness() * (over > 0 ? over : 25);
    int lit = 0;
    for (int k = 0; k < TAPS; k++) {
      if (top.atMm(footX + radius * tapX[k], footY + radius * tapY[k]) < z + 1.6) {
        lit++;
      }
    }
    return lit / (double) TAPS * roof(footX, footY);
  }

  /** The shade of bars, gutters and plants overhead: bright patches with soft edges. */
  private double roof(double x, double y) {
    Light.Field field = light.field();
    if (field.patches() <= 0) {
      return 1;
    }
    double bars = Noise.octaves((x + 0.4 * y) / 260, (y - 0.4 * x) / 900, 2, field.seed());
    return 1 - field.patches() * (1 - Noise.step(0.46, 0.50, bars));
  }
}
