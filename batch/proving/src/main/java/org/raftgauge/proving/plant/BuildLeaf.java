// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import org.raftgauge.proving.solid.Material;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Noise;
import org.raftgauge.proving.solid.Patch;
import org.raftgauge.proving.solid.Pigment;

/**
 * Lays a leaf along its bent rib: rows of vertices across the blade, rolled, waved and blistered.
 */
final class BuildLeaf {
  private static final int RIB_STEPS = 48;

  private final LeafForm form;
  private final LeafPose pose;
  private final int seed;
  private final Mesh mesh;
  private final double[] ribOut = new double[RIB_STEPS + 1];
  private final double[] ribUp = new double[RIB_STEPS + 1];
  private final double cosAzimuth;
  private final double sinAzimuth;

  private BuildLeaf(Mesh mesh, LeafForm form, LeafPose pose, int seed) {
    this.mesh = mesh;
    this.form = form;
    this.pose = pose;
    this.seed = seed;
    this.cosAzimuth = Math.cos(pose.azimuthRad());
    this.sinAzimuth = Math.sin(pose.azimuthRad());
    double step = form.lengthMm() / RIB_STEPS;
    for (int k = 0; k < RIB_STEPS; k++) {
      double angle = ribAngle((k + 0.5) / RIB_STEPS);
      ribOut[k + 1] = ribOut[k] + step * Math.cos(angle);
      ribUp[k + 1] = ribUp[k] + step * Math.sin(angle);
    }
  }

  /** A leaf's shape and how it is held. */
  record Leaf(LeafForm form, LeafPose pose) {}

  /** Adds a leaf, petiole and blade, to a mesh. */
  static void add(Mesh mesh, Leaf leaf, Pigment pigment, int seed) {
    BuildLeaf build = new BuildLeaf(mesh, leaf.form(), leaf.pose(), seed);
    double aspect = leaf.form().lengthMm() / leaf.form().halfWidthMm();
    if (leaf.form().petioleShare() > 0.02) {
      Pigment stalk = Pigment.plain(pigment.vein(), pigment.gloss());
      build.addPetiole(mesh.addPatch(new Patch(0, Material.STALK, stalk, seed, aspect)));
    }
    build.addBlade(mesh.addPatch(new Patch(0, Material.BLADE, pigment, seed, aspect)));
  }

  private void addBlade(int patch) {
    double blade = form.lengthMm() * (1 - form.petioleShare());
    boolean fine = form.outline() == Outline.OAK || form.outline() == Outline.CUT;
    int along = (int) Math.max(10, Math.min(fine ? 44 : 26, blade / (fine ? 1.6 : 3.0)));
    int across = form.halfWidthMm() > 12 ? 13 : 9;
    int last = -1;
    for (int i = 0; i <= along; i++) {
      double s = fine ? (double) i / along : Math.sin(Math.PI / 2 * i / along);
      int first = mesh.vertices();
      for (int j = 0; j < across; j++) {
        addBladeVertex(s, 2.0 * j / (across - 1) - 1);
      }
      if (last >= 0) {
        mesh.addRows(last, first, across, patch);
      }
      last = first;
    }
  }

  private void addBladeVertex(double s, double v) {
    LeafForm.Surface surface = form.surface();
    double u = form.petioleShare() + s * (1 - form.petioleShare());
    double uneven = 0.86 + 0.28 * Noise.at(7 * s, v < 0 ? 0.5 : 9.5, seed);
    double half = form.halfWidthMm() * form.outline().halfWidth(s) * uneven;
    double roll = surface.cupRad() * v;
    double side = Math.abs(roll) < 1e-6 ? v : Math.sin(roll) / surface.cupRad();
    double rise = Math.abs(roll) < 1e-6 ? 0 : (1 - Math.cos(roll)) / surface.cupRad();
    double margin = Math.pow(Math.abs(v), 2.6) * Noise.step(0, 0.25, s);
    double phase = 2 * Math.PI * (surface.waves() * s + Noise.at(v < 0 ? 3 : 8, 2.5 * s, seed + 7));
    double wave = surface.ruffle() * margin * Math.sin(phase);
    double bumps = surface.blister() * (Noise.octaves(9 * s, 5 * v + 40, 2, seed + 3) - 0.5);
    double reach = surface.forward() * half * Math.abs(v) * (1 - s * s);
    place(
        u,
        new double[] {reach, half * side, half * rise + form.halfWidthMm() * (wave + bumps)},
        s,
        v);
  }

  private void addPetiole(int patch) {
    int last = -1;
    double end = form.petioleShare() + 0.03;
    double half = Math.max(0.7, 0.055 * form.halfWidthMm() + 0.5);
    for (int i = 0; i <= 6; i++) {
      double u = end * i / 6;
      int first = mesh.vertices();
      for (int j = 0; j < 7; j++) {
        double turn = Math.PI * (j - 3) / 4.0;
        double taper = 1.35 - 0.5 * i / 6;
        double[] offset = {0, half * taper * Math.sin(turn), half * taper * (Math.cos(turn) - 0.9)};
        place(u, offset, 0, (j - 3) / 3.0);
      }
      if (last >= 0) {
        mesh.addRows(last, first, 7, patch);
      }
      last = first;
    }
  }

  /** Places a point that lies {@code offset} (along, across, up) off the rib at {@code u}. */
  private void place(double u, double[] offset, double s, double v) {
    double along = u * RIB_STEPS;
    int k = (int) Math.min(RIB_STEPS - 1, along);
    double out = ribOut[k] + (along - k) * (ribOut[k + 1] - ribOut[k]);
    double up = ribUp[k] + (along - k) * (ribUp[k + 1] - ribUp[k]);
    double angle = ribAngle(u);
    double cosTwist = Math.cos(pose.twistRad() * u);
    double sinTwist = Math.sin(pose.twistRad() * u);
    double across = offset[1] * cosTwist - offset[2] * sinTwist;
    double normal = offset[1] * sinTwist + offset[2] * cosTwist;
    out += offset[0] * Math.cos(angle) - normal * Math.sin(angle);
    up += offset[0] * Math.sin(angle) + normal * Math.cos(angle);
    double x = pose.xMm() + out * cosAzimuth - across * sinAzimuth;
    double y = pose.yMm() + out * sinAzimuth + across * cosAzimuth;
    mesh.addVertex(x, y, rest(pose.zMm() + up), s, v);
  }

  private double ribAngle(double u) {
    return pose.elevationRad() - pose.bendRad() * Math.pow(u, 1.4);
  }

  /** Lets a point lie on the floor instead of under it, with a soft landing of 1.5 mm. */
  private double rest(double z) {
    double over = z - pose.floorMm();
    return pose.floorMm() + 0.5 * (over + Math.sqrt(over * over + 2.25));
  }
}
