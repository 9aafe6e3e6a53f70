// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Noise;
import org.raftgauge.proving.solid.TopView;

/**
 * How much of the sky a place sees over the canopy around it: the mean over eight directions of the
 * squared cosine of the horizon, on a coarse height map.
 */
final class SkyView {
  private static final double STEP_MM = 4;
  private static final double[] REACH_MM = {6, 13, 27, 52, 95};

  private static final double[] COS = new double[8];
  private static final double[] SIN = new double[8];

  static {
    for (int k = 0; k < 8; k++) {
      COS[k] = Math.cos(Math.PI / 4 * k + 0.3);
      SIN[k] = Math.sin(Math.PI / 4 * k + 0.3);
    }
  }

  private final TopView top;
  private final Box box;
  private final int columns;
  private final int rows;
  private final float[] deck;

  SkyView(Mesh mesh) {
    box = Box.around(mesh).grown(120);
    top = new TopView(box, STEP_MM);
    top.draw(mesh, patch -> true);
    columns = top.width();
    rows = top.height();
    deck = new float[columns * rows];
    for (int i = 0; i < deck.length; i++) {
      double x = box.xMinMm() + (i % columns + 0.5) * STEP_MM;
      int row = i / columns;
      double y = box.yMinMm() + (row + 0.5) * STEP_MM;
      deck[i] = (float) share(x, y, 0);
    }
  }

  /** Returns the share of the sky seen from a place, 0..1. */
  double share(double x, double y, double z) {
    double hidden = 0;
    for (int k = 0; k < 8; k++) {
      double steepest = 0;
      for (double reach : REACH_MM) {
        double rise = top.atMm(x + reach * COS[k], y + reach * SIN[k]) - z;
        steepest = Math.max(steepest, rise / reach);
      }
      hidden += steepest * steepest / (1 + steepest * steepest);
    }
    double under = Noise.step(3, 14, top.atMm(x, y) - z);
    return (1 - hidden / 8) * (1 - 0.6 * under);
  }

  /** Returns the share of the sky seen from a place on the deck plane, 0..1. */
  double onDeck(double x, double y) {
    double fx = (x - box.xMinMm()) / STEP_MM - 0.5;
    double fy = (y - box.yMinMm()) / STEP_MM - 0.5;
    int ix = (int) Math.floor(fx);
    int iy = (int) Math.floor(fy);
    if (ix < 0 || iy < 0 || ix + 1 >= columns || iy + 1 >= rows) {
      return 1;
    }
    int at = iy * columns + ix;
    double ax = fx - ix;
    double ay = fy - iy;
    return (deck[at] * (1 - ax) + deck[at + 1] * ax) * (1 - ay)
        + (deck[at + columns] * (1 - ax) + deck[at + columns + 1] * ax) * ay;
  }
}
