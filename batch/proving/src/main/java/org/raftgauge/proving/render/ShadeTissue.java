// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.solid.Material;
import org.raftgauge.proving.solid.Noise;
import org.raftgauge.proving.solid.Pigment;
import org.raftgauge.proving.solid.Tint;

/** Colours a point of a leaf, a stalk or a thing. */
final class ShadeTissue {
  /** Share of the light that a leaf lets through, per channel, over its reflectance; by eye. */
  private static final double THROUGH = 1.15;

  private final Lighting lighting;
  private final Shine shine = new Shine();
  private double relief;

  ShadeTissue(Lighting lighting) {
    this.lighting = lighting;
  }

  /** Writes the light that leaves the point, linear r g b, to {@code rgb}. */
  void shade(Fragment at, double[] rgb) {
    Pigment pigment = at.patch.pigment();
    relief = 0;
    Tint colour = at.patch.material() == Material.BLADE ? blade(at) : pigment.base();
    if (at.patch.material() == Material.BLADE) {
      roughen(at);
    }
    lighting.onLeaf(at, shine);
    double through = at.patch.material() == Material.BLADE ? THROUGH : 0;
    double mirrored = shine.mirrored * pigment.gloss();
    rgb[0] = colour.r() * (shine.r + through * shine.throughR) + mirrored;
    rgb[1] = colour.g() * (shine.g + through * shine.throughG) + mirrored;
    rgb[2] = colour.b() * (shine.b + 0.6 * through * shine.throughB) + mirrored;
  }

  private Tint blade(Fragment at) {
    int seed = at.patch.seed();
    double across = Math.abs(at.v);
    double mottle = Noise.octaves(14 * at.u, 6 * at.v, 3, seed);
    Tint colour = at.patch.pigment().base().times(0.82 + 0.36 * mottle);
    double share = at.patch.pigment().blushShare();
    if (share > 0) {
      double out = 0.55 * across + 0.45 * at.u + 0.7 * (mottle - 0.5);
      double low = 0.88 - 1.1 * share;
      colour = colour.mix(at.patch.pigment().blush(), Noise.step(low, low + 0.6, out));
    }
    double veins = veins(at, across);
    relief = veins;
    return colour.mix(at.patch.pigment().vein(), veins);
  }

  /** The strength of the veins at a place: the rib, and side veins that run forward. */
  private double veins(Fragment at, double across) {
    double ribWidth = (0.075 - 0.055 * at.u) * at.patch.aspect() / 4 + 0.012;
    double rib = 1 - Noise.step(0.5 * ribWidth, 1.6 * ribWidth, across);
    double pairs = 6.5;
    double wobble = 0.35 * Noise.at(5 * at.u, at.v < 0 ? 4 : 7, at.patch.seed() + 11);
    double along = pairs * (at.u - 0.62 * across / Math.max(1.6, at.patch.aspect() / 1.6)) + wobble;
    double off = Math.abs(along - Math.floor(along) - 0.5) * 2;
    double side = Noise.step(0.86, 0.97, off) * (1 - Noise.step(0.55, 1.0, across));
    double net = Noise.at(40 * at.u, 18 * at.v, at.patch.seed() + 23);
    return Math.min(1, 0.75 * rib + 0.30 * side + 0.10 * Noise.step(0.62, 0.9, net));
  }

  /** Tilts the normal between the veins, so that the blade looks quilted. */
  private void roughen(Fragment at) {
    int seed = at.patch.seed();
    double strength = 0.42 * (1 - 0.6 * relief);
    at.nx += strength * (Noise.octaves(11 * at.u, 5 * at.v, 2, seed + 31) - 0.5);
    at.ny += strength * (Noise.octaves(11 * at.u, 5 * at.v, 2, seed + 37) - 0.5);
    double length = Math.sqrt(at.nx * at.nx + at.ny * at.ny + at.nz * at.nz);
    at.nx /= length;
    at.ny /= length;
    at.nz /= length;
  }
}
