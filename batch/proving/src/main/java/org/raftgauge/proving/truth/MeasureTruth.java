// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.truth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Patch;
import org.raftgauge.proving.solid.TopView;

/**
 * Measures every plant of a scene orthographically, sampling at the centres of 0.25 mm cells: a
 * plant of 1 cm2 is 1,600 cells, so that the sampling error of its area stays under about 1 %.
 */
public final class MeasureTruth {
  /** Side of a cell, mm. */
  public static final double STEP_MM = 0.25;

  private MeasureTruth() {}

  /** One owner's part of a mesh and the box around it. */
  private record Part(Mesh mesh, Box box) {}

  /**
   * Measures all owners of a mesh.
   *
   * @param mesh a scene's mesh, in mm
   * @return the truth by owner; those that no measured site owns are left out
   */
  public static Map<Integer, PlantTruth> measure(Mesh mesh) {
    Map<Integer, Part> parts = split(mesh);
    Map<Integer, PlantTruth> truths = new TreeMap<>();
    for (Map.Entry<Integer, Part> entry : parts.entrySet()) {
      if (entry.getKey() > 0 && entry.getKey() != Patch.FOREIGN) {
        List<Part> others = new ArrayList<>(parts.values());
        others.remove(entry.getValue());
        truths.put(entry.getKey(), measure(entry.getValue(), others));
      }
    }
    return truths;
  }

  private static PlantTruth measure(Part own, List<Part> others) {
    Box box = own.box().grown(1);
    TopView alone = new TopView(box, STEP_MM);
    alone.draw(own.mesh(), patch -> true);
    TopView cover = new TopView(box, STEP_MM);
    for (Part other : others) {
      if (other.box().meets(box)) {
        cover.draw(other.mesh(), patch -> true);
      }
    }
    long cells = 0;
    long seen = 0;
    double sum = 0;
    double top = 0;
    for (int i = 0; i < alone.width() * alone.height(); i++) {
      float z = alone.at(i % alone.width(), i / alone.width());
      if (z > TopView.NOTHING) {
        cells++;
        sum += z;
        top = Math.max(top, z);
        seen += cover.at(i % alone.width(), i / alone.width()) <= z ? 1 : 0;
      }
    }
    return cells == 0
        ? PlantTruth.NONE
        : new PlantTruth(cells * alone.cellCm2(), seen * alone.cellCm2(), sum / cells, top);
  }

  /** Copies each owner's triangles, without unused vertices, into a mesh of its own. */
  private static Map<Integer, Part> split(Mesh mesh) {
    Map<Integer, Mesh> byOwner = new TreeMap<>();
    int[] moved = new int[mesh.vertices()];
    int[] movedFor = new int[mesh.vertices()];
    Arrays.fill(movedFor, -1);
    List<Patch> patches = mesh.patches();
    for (int t = 0; t < mesh.triangles(); t++) {
      int owner = patches.get(mesh.patchOf(t)).owner();
      Mesh part = byOwner.computeIfAbsent(owner, key -> new Mesh());
      int[] corner = new int[3];
      for (int k = 0; k < 3; k++) {
        int i = mesh.corner(t, k);
        if (movedFor[i] != owner) {
          movedFor[i] = owner;
          moved[i] = part.addVertex(mesh.x(i), mesh.y(i), mesh.z(i), mesh.u(i), mesh.v(i));
        }
        corner[k] = moved[i];
      }
      part.addTriangle(corner[0], corner[1], corner[2], 0);
    }
    Map<Integer, Part> parts = new TreeMap<>();
    byOwner.forEach((owner, part) -> parts.put(owner, new Part(part, Box.around(part))));
    return parts;
  }
}
