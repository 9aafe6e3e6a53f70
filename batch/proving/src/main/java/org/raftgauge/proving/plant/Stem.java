// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import org.raftgauge.proving.plant.GrowPlant.Growing;
import org.raftgauge.proving.plant.LeafForm.Surface;
import org.raftgauge.proving.solid.Material;
import org.raftgauge.proving.solid.Patch;
import org.raftgauge.proving.solid.Pigment;

/** Plants that hold pairs of leaves on an upright stem. */
final class Stem {

  private Stem() {}

  static void basil(Growing growing) {
    double area = growing.order().areaCm2();
    int nodes = (int) Math.max(2, Math.round(1.6 + 1.05 * Math.log(1 + area / 2.5)));
    double leanRad = 0.10 * growing.random().nextGaussian();
    double leanTo = growing.between(0, 2 * Math.PI);
    double internode = growing.sizeMm() * growing.between(0.19, 0.26);
    double start = growing.between(0, Math.PI);
    for (int k = 0; k < nodes; k++) {
      double youth = (double) k / (nodes - 1);
      double z = 6 + internode * k * (1 - 0.35 * youth);
      double[] foot = {z * leanRad * Math.cos(leanTo), z * leanRad * Math.sin(leanTo), z};
      double turn = start + k * Math.PI / 2 + 0.12 * growing.random().nextGaussian();
      pair(growing, foot, turn, youth);
      if (area > 40 && k > 0 && youth < 0.75) {
        double[] shoot = {foot[0], foot[1], z + 0.45 * internode};
        sideShoots(growing, shoot, turn);
      }
    }
    double tall = 6 + internode * (nodes - 1) * 0.65;
    stalk(growing, tall, new double[] {leanRad * Math.cos(leanTo), leanRad * Math.sin(leanTo)});
  }

  private static void pair(Growing growing, double[] foot, double turn, double youth) {
    double share = youth < 0.35 ? 0.72 + 0.8 * youth : 1 - 1.15 * (youth - 0.35);
    for (int side = 0; side < 2; side++) {
      double length = growing.sizeMm() * Math.max(0.2, share) * growing.between(0.88, 1.12);
      Surface surface =
          new Surface(-0.55 * growing.between(0.5, 1.3) * (1 - 2 * youth), 0.05, 2, 0.07, 0.05);
      LeafForm form =
          new LeafForm(Outline.OVATE, length, 0.31 * length, 0.20 * (1 - youth), surface);
      LeafPose pose =
          new LeafPose(
              foot[0],
              foot[1],
              foot[2],
              turn + side * Math.PI + 0.1 * growing.random().nextGaussian(),
              0.35 + 0.75 * youth + 0.12 * growing.random().nextGaussian(),
              growing.between(0.5, 1.0) * (1 - 0.5 * youth),
              0.2 * growing.random().nextGaussian(),
              1.5);
      growing.leaf(new BuildLeaf.Leaf(form, pose), youth, 0.55);
    }
  }

  private static void sideShoots(Growing growing, double[] foot, double turn) {
    for (int side = 0; side < 4; side++) {
      double way = side < 2 ? turn : turn + Math.PI;
      double to = way + (side % 2 == 0 ? 0.55 : -0.55);
      double reach = growing.sizeMm() * 0.22;
      double length = growing.sizeMm() * growing.between(0.30, 0.5);
      LeafForm form =
          new LeafForm(
              Outline.OVATE, length, 0.30 * length, 0.15, new Surface(-0.4, 0.05, 2, 0.06, 0.05));
      LeafPose pose =
          new LeafPose(
              foot[0] + reach * Math.cos(way),
              foot[1] + reach * Math.sin(way),
              foot[2] + 3,
              to,
              growing.between(0.4, 0.8),
              growing.between(0.4, 0.8),
              0,
              1.5);
      growing.leaf(new BuildLeaf.Leaf(form, pose), 0.6, 0.55);
    }
  }

  static void seedling(Growing growing) {
    double start = growing.between(0, 2 * Math.PI);
    double tall = growing.sizeMm() * growing.between(0.25, 0.5);
    for (int side = 0; side < 2; side++) {
      double length = growing.sizeMm() * growing.between(0.9, 1.1);
      LeafForm form =
          new LeafForm(
              Outline.COTYLEDON, length, 0.30 * length, 0.22, new Surface(-0.15, 0, 1, 0.02, 0));
      LeafPose pose =
          new LeafPose(
              0,
              0,
              3 + tall,
              start + side * Math.PI + 0.2 * growing.random().nextGaussian(),
              0.35,
              0.5,
              0,
              1.5);
      growing.leaf(new BuildLeaf.Leaf(form, pose), 0.7, 0.3);
    }
    int more = growing.order().areaCm2() > 1.5 ? 2 : 1;
    for (int k = 0; k < more; k++) {
      double length = growing.sizeMm() * growing.between(0.5, 0.9);
      LeafForm form =
          new LeafForm(
              Outline.ROUND, length, 0.36 * length, 0.2, new Surface(0.3, 0.1, 3, 0.08, 0.1));
      LeafPose pose = new LeafPose(0, 0, 4 + tall, start + Math.PI / 2 + k * 2.8, 0.9, 0.5, 0, 1.5);
      growing.leaf(new BuildLeaf.Leaf(form, pose), 1, 0.3);
    }
    stalk(growing, tall, new double[2]);
  }

  /** Adds a six-sided stem from the foot to a height. */
  private static void stalk(Growing growing, double tallMm, double[] lean) {
    Pigment pigment =
        Pigment.plain(growing.order().tone().leaf(0.5, 0.2, growing.random()).vein(), 0.2);
    int patch =
        growing
            .mesh()
            .addPatch(new Patch(0, Material.STALK, pigment, growing.random().nextInt(), 10));
    double radius = Math.max(0.7, 0.022 * growing.sizeMm());
    int last = -1;
    for (int i = 0; i <= 4; i++) {
      double z = 1 + (tallMm + 4) * i / 4;
      int first = growing.mesh().vertices();
      for (int j = 0; j <= 6; j++) {
        double turn = Math.PI * j / 3;
        growing
            .mesh()
            .addVertex(
                z * lean[0] + radius * Math.cos(turn),
                z * lean[1] + radius * Math.sin(turn),
                z,
                0,
                0);
      }
      if (last >= 0) {
        growing.mesh().addRows(last, first, 7, patch);
      }
      last = first;
    }
  }
}
