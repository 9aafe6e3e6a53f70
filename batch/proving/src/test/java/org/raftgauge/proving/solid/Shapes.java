// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

/** Shapes whose area is known in closed form. */
public final class Shapes {
  private static final Pigment GREEN = Pigment.plain(new Tint(0.1, 0.4, 0.05), 0);

  private Shapes() {}

  /** Returns a square leaf around the origin: side and height in mm, tilted about y. */
  public static Mesh plate(double side, double height, double tiltRad) {
    Mesh mesh = new Mesh();
    int patch = mesh.addPatch(new Patch(1, Material.BLADE, GREEN, 1, 4));
    double half = side / 2;
    double x = half * Math.cos(tiltRad);
    double rise = half * Math.sin(tiltRad);
    int a = mesh.addVertex(-x, -half, height - rise, 0, 0);
    int b = mesh.addVertex(x, -half, height + rise, 0, 0);
    int c = mesh.addVertex(-x, half, height - rise, 0, 0);
    int d = mesh.addVertex(x, half, height + rise, 0, 0);
    mesh.addTriangle(a, b, c, patch);
    mesh.addTriangle(c, b, d, patch);
    return mesh;
  }

  /** Returns a flat round leaf around the origin: radius and height in mm, 720 corners. */
  public static Mesh disc(double radius, double height) {
    Mesh mesh = new Mesh();
    int patch = mesh.addPatch(new Patch(1, Material.BLADE, GREEN, 1, 4));
    int centre = mesh.addVertex(0, 0, height, 0, 0);
    for (int i = 0; i < 720; i++) {
      double turn = 2 * Math.PI * i / 720;
      mesh.addVertex(radius * Math.cos(turn), radius * Math.sin(turn), height, 0, 0);
    }
    for (int i = 0; i < 720; i++) {
      mesh.addTriangle(centre, 1 + i, 1 + (i + 1) % 720, patch);
    }
    return mesh;
  }
}
