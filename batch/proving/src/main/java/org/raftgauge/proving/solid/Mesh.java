// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.solid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A growing triangle mesh: vertices in mm with surface coordinates, triangles with their patch.
 *
 * <p>{@code u} runs from 0 at a leaf's base to 1 at its tip, {@code v} from -1 to 1 across.
 */
public final class Mesh {
  private float[] vertex = new float[5 * 256];
  private int[] triangle = new int[4 * 256];
  private int vertices;
  private int triangles;
  private final List<Patch> patches = new ArrayList<>();

  /** Makes an empty mesh. */
  public Mesh() {}

  /** Returns the number of vertices. */
  public int vertices() {
    return vertices;
  }

  /** Returns the number of triangles. */
  public int triangles() {
    return triangles;
  }

  /** Returns the patches, by index. */
  public List<Patch> patches() {
    return List.copyOf(patches);
  }

  /**
   * Adds a patch that triangles can name.
   *
   * @param patch the patch
   * @return its index
   */
  public int addPatch(Patch patch) {
    patches.add(patch);
    return patches.size() - 1;
  }

  /**
   * Adds a vertex.
   *
   * @param at x, y, z in mm and u, v: five numbers
   * @return its index
   */
  public int addVertex(double... at) {
    if (vertex.length < 5 * (vertices + 1)) {
      vertex = Arrays.copyOf(vertex, 2 * vertex.length);
    }
    for (int k = 0; k < 5; k++) {
      vertex[5 * vertices + k] = (float) at[k];
    }
    return vertices++;
  }

  /**
   * Adds a triangle.
   *
   * @param a vertex index
   * @param b vertex index
   * @param c vertex index
   * @param patch patch index
   */
  public void addTriangle(int a, int b, int c, int patch) {
    if (triangle.length < 4 * (triangles + 1)) {
      triangle = Arrays.copyOf(triangle, 2 * triangle.length);
    }
    int at = 4 * triangles++;
    triangle[at] = a;
    triangle[at + 1] = b;
    triangle[at + 2] = c;
    triangle[at + 3] = patch;
  }

  /**
   * Joins two rows of vertices by triangles.
   *
   * @param first index of the first vertex of the first row
   * @param second index of the first vertex of the second row
   * @param across vertices in a row, 2 or more
   * @param patch patch index
   */
  public void addRows(int first, int second, int across, int patch) {
    for (int j = 0; j + 1 < across; j++) {
      addTriangle(first + j, first + j + 1, second + j, patch);
      addTriangle(second + j, first + j + 1, second + j + 1, patch);
    }
  }

  /**
   * Appends a placed copy of another mesh.
   *
   * @param other the other mesh
   * @param place where its origin goes
   * @param owner label that its tissue gets; things that are no plant keep 0
   */
  public void append(Mesh other, Placement place, int owner) {
    int firstVertex = vertices;
    int firstPatch = patches.size();
    for (Patch patch : other.patches) {
      patches.add(patch.material().isTissue() ? patch.withOwner(owner) : patch);
    }
    for (int i = 0; i < other.vertices; i++) {
      double x = other.x(i);
      double y = other.y(i);
      addVertex(place.worldX(x, y), place.worldY(x, y), other.z(i), other.u(i), other.v(i));
    }
    for (int t = 0; t < other.triangles; t++) {
      addTriangle(
          firstVertex + other.corner(t, 0),
          firstVertex + other.corner(t, 1),
          firstVertex + other.corner(t, 2),
          firstPatch + other.patchOf(t));
    }
  }

  /** Returns x of a vertex, mm. */
  public float x(int i) {
    return vertex[5 * i];
  }

  /** Returns y of a vertex, mm. */
  public float y(int i) {
    return vertex[5 * i + 1];
  }

  /** Returns z of a vertex, mm over the deck. */
  public float z(int i) {
    return vertex[5 * i + 2];
  }

  /** Returns the place along the leaf, 0..1. */
  public float u(int i) {
    return vertex[5 * i + 3];
  }

  /** Returns the place across the leaf, -1..1. */
  public float v(int i) {
    return vertex[5 * i + 4];
  }

  /** Returns a triangle's corner, {@code k} 0..2, as vertex index. */
  public int corner(int t, int k) {
    return triangle[4 * t + k];
  }

  /** Returns a triangle's patch index. */
  public int patchOf(int t) {
    return triangle[4 * t + 3];
  }

  /**
   * Computes a normal per vertex: the area-weighted mean of its triangles' normals.
   *
   * @return x, y, z per vertex, unit length; 0 0 1 where a vertex has no area
   */
  public float[] normals() {
    float[] sum = new float[3 * vertices];
    for (int t = 0; t < triangles; t++) {
      int a = corner(t, 0);
      int b = corner(t, 1);
      int c = corner(t, 2);
      float abx = x(b) - x(a);
      float aby = y(b) - y(a);
      float abz = z(b) - z(a);
      float acx = x(c) - x(a);
      float acy = y(c) - y(a);
      float acz = z(c) - z(a);
      float nx = aby * acz - abz * acy;
      float ny = abz * acx - abx * acz;
      float nz = abx * acy - aby * acx;
      for (int k = 0; k < 3; k++) {
        int at = 3 * corner(t, k);
        sum[at] += nx;
        sum[at + 1] += ny;
        sum[at + 2] += nz;
      }
    }
    for (int i = 0; i < vertices; i++) {
      normalise(sum, 3 * i);
    }
    return sum;
  }

  private static void normalise(float[] v, int at) {
    double length = Math.sqrt(v[at] * v[at] + v[at + 1] * v[at + 1] + v[at + 2] * v[at + 2]);
    if (length < 1e-12) {
      v[at + 2] = 1;
      return;
    }
    for (int k = 0; k < 3; k++) {
      v[at + k] /= (float) length;
    }
  }
}
