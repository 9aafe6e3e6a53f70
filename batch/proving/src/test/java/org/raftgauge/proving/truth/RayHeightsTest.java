// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.truth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.raftgauge.core.book.Lens;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.camera.Hold;
import org.raftgauge.proving.solid.Mesh;

class RayHeightsTest {
  private static final Camera CAMERA =
      new Camera(
          new Lens(500, 500, 100, 100, 0, 0, 0, 0, 0), 201, 201, new Hold(0, 0, 1000, 0, 0, 0));

  private static void square(Mesh mesh, double half, double[] heights) {
    int patch = 0;
    int a = mesh.addVertex(-half, -half, heights[0], 0, 0);
    int b = mesh.addVertex(half, -half, heights[1], 0, 0);
    int c = mesh.addVertex(half, half, heights[2], 0, 0);
    int d = mesh.addVertex(-half, half, heights[3], 0, 0);
    mesh.addTriangle(a, b, c, patch);
    mesh.addTriangle(a, c, d, patch);
  }

  @Test
  void theNearestSurfaceCountsAndBesideItNothingShows() {
    Mesh mesh = new Mesh();
    square(mesh, 80, new double[] {50, 50, 50, 50});
    square(mesh, 40, new double[] {200, 200, 200, 200});
    float[] mm = RayHeights.of(mesh, CAMERA);
    // 40 mm at 800 mm from the camera are 25 px, 80 mm at 950 mm are 42 px from the middle.
    assertEquals(200, mm[100 * 201 + 100], 1e-3);
    assertEquals(200, mm[100 * 201 + 124], 1e-3);
    assertEquals(50, mm[100 * 201 + 126], 1e-3);
    assertEquals(50, mm[100 * 201 + 141], 1e-3);
    assertTrue(Float.isNaN(mm[100 * 201 + 143]));
  }

  @Test
  void aSlopeIsReadWhereTheRayMeetsIt() {
    Mesh mesh = new Mesh();
    square(mesh, 100, new double[] {0, 200, 200, 0});
    float[] mm = RayHeights.of(mesh, CAMERA);
    // The plane z = x + 100 and the ray x = 0.04 (1000 - z): z = (100 + 40) / 1.04.
    assertEquals(140 / 1.04, mm[100 * 201 + 120], 1e-2);
  }
}
