// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.solid.Mesh;

/** A mesh's vertices in the picture. */
final class Projected {
  private final float[] at;

  Projected(Mesh mesh, Camera camera) {
    at = new float[3 * mesh.vertices()];
    for (int i = 0; i < mesh.vertices(); i++) {
      double[] p = camera.project(mesh.x(i), mesh.y(i), mesh.z(i));
      at[3 * i] = (float) ((p[0] + 0.5) * Band.SPLIT - 0.5);
      at[3 * i + 1] = (float) ((p[1] + 0.5) * Band.SPLIT - 0.5);
      at[3 * i + 2] = (float) p[2];
    }
  }

  /** Returns x in samples. */
  float sampleX(int vertex) {
    return at[3 * vertex];
  }

  /** Returns y in samples. */
  float sampleY(int vertex) {
    return at[3 * vertex + 1];
  }

  /** Returns the depth along the optical axis, mm. */
  float depth(int vertex) {
    return at[3 * vertex + 2];
  }
}
