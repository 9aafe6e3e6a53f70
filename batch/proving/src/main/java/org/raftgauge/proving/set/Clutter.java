// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.Random;
import org.raftgauge.proving.solid.Material;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Patch;
import org.raftgauge.proving.solid.Pigment;
import org.raftgauge.proving.solid.Tint;

/** Hoses and cables that lie across the deck. */
final class Clutter {
  private static final int[] HOSES = {0x17181a, 0x2a4f8f, 0x8a8d90, 0xd9d9d4};
  private static final int ROUND = 10;

  private Clutter() {}

  /** Lays hoses across the deck from left to right. */
  static Mesh hoses(int count, Random random) {
    Mesh mesh = new Mesh();
    for (int k = 0; k < count; k++) {
      Pigment pigment = Pigment.plain(Tint.srgb(HOSES[random.nextInt(HOSES.length)]), 0.5);
      int patch = mesh.addPatch(new Patch(0, Material.THING, pigment, random.nextInt(), 10));
      double radius = random.nextBoolean() ? 3.5 : 8;
      double y = 250 + 700 * random.nextDouble();
      double wave = 40 + 60 * random.nextDouble();
      double phase = 6 * random.nextDouble();
      lay(mesh, patch, new double[] {y, wave, phase, radius});
    }
    return mesh;
  }

  private static void lay(Mesh mesh, int patch, double[] course) {
    double radius = course[3];
    int last = -1;
    for (double x = -500; x <= 2300; x += 12) {
      double y = course[0] + course[1] * Math.sin(x / 240 + course[2]);
      int first = mesh.vertices();
      for (int j = 0; j <= ROUND; j++) {
        double turn = 2 * Math.PI * j / ROUND;
        mesh.addVertex(x, y + radius * Math.cos(turn), radius + radius * Math.sin(turn), 0, 0);
      }
      if (last >= 0) {
        mesh.addRows(last, first, ROUND + 1, patch);
      }
      last = first;
    }
  }
}
