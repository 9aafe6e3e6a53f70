// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.truth;

import java.util.Arrays;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.solid.Mesh;

/** The exact height of what the ray through each pixel's centre meets first. */
public final class RayHeights {
  /** The height of a pixel that shows nothing of the mesh. */
  public static final float NOTHING = Float.NaN;

  private final int width;
  private final int height;
  private final float[] mm;
  private final float[] nearness;

  private RayHeights(int width, int height) {
    this.width = width;
    this.height = height;
    this.mm = new float[width * height];
    this.nearness = new float[width * height];
    Arrays.fill(mm, NOTHING);
  }

  /**
   * Finds the heights of a mesh over the deck as a camera sees it.
   *
   * @param mesh plants and things
   * @param camera the camera
   * @return mm over the deck, row by row, {@link #NOTHING} where the mesh does not show
   */
  public static float[] of(Mesh mesh, Camera camera) {
    RayHeights heights = new RayHeights(camera.width(), camera.height());
    double[][] at = new double[mesh.vertices()][];
    for (int i = 0; i < at.length; i++) {
      at[i] = camera.project(mesh.x(i), mesh.y(i), mesh.z(i));
    }
    for (int t = 0; t < mesh.triangles(); t++) {
      heights.draw(mesh, at, new int[] {mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2)});
    }
    return heights.mm;
  }

  /** Draws a triangle; 1 / depth and height / depth are linear over the picture. */
  private void draw(Mesh mesh, double[][] at, int[] corner) {
    double[] a = at[corner[0]];
    double[] b = at[corner[1]];
    double[] c = at[corner[2]];
    double area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    if (Math.abs(area) < 1e-12) {
      return;
    }
    int yLow = (int) Math.max(0, Math.ceil(Math.min(a[1], Math.min(b[1], c[1]))));
    int yHigh = (int) Math.min(height - 1.0, Math.floor(Math.max(a[1], Math.max(b[1], c[1]))));
    int xLow = (int) Math.max(0, Math.ceil(Math.min(a[0], Math.min(b[0], c[0]))));
    int xHigh = (int) Math.min(width - 1.0, Math.floor(Math.max(a[0], Math.max(b[0], c[0]))));
    for (int y = yLow; y <= yHigh; y++) {
      for (int x = xLow; x <= xHigh; x++) {
        double wa = ((b[0] - x) * (c[1] - y) - (b[1] - y) * (c[0] - x)) / area;
        double wb = ((c[0] - x) * (a[1] - y) - (c[1] - y) * (a[0] - x)) / area;
        double wc = 1 - wa - wb;
        if (wa >= 0 && wb >= 0 && wc >= 0) {
          double near = wa / a[2] + wb / b[2] + wc / c[2];
          double z =
              wa / a[2] * mesh.z(corner[0])
                  + wb / b[2] * mesh.z(corner[1])
                  + wc / c[2] * mesh.z(corner[2]);
          take(y * width + x, near, z / near);
        }
      }
    }
  }

  private void take(int i, double near, double heightMm) {
    if (near > nearness[i]) {
      nearness[i] = (float) near;
      mm[i] = (float) heightMm;
    }
  }
}
