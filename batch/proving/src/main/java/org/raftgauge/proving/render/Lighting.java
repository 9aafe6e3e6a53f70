// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Noise;

/** The light that reaches a point of the scene. */
final class Lighting {
  private final Light light;
  private final SkyView sky;
  private final SunView sun;
  private final double sunX;
  private final double sunY;
  private final double sunZ;

  Lighting(Mesh mesh, Light light) {
    this.light = light;
    this.sky = new SkyView(mesh);
    this.sun = new SunView(mesh, light);
    double length = Math.sqrt(1 + sq(light.sunDxMm()) + sq(light.sunDyMm()));
    sunX = -light.sunDxMm() / length;
    sunY = -light.sunDyMm() / length;
    sunZ = 1 / length;
  }

  private static double sq(double x) {
    return x * x;
  }

  /** Returns the share of the sky that each vertex sees. */
  float[] skyShares(Mesh mesh) {
    float[] shares = new float[mesh.vertices()];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = (float) sky.share(mesh.x(i), mesh.y(i), mesh.z(i));
    }
    return shares;
  }

  /** Lights a point of the deck plane or under it. */
  void onDeck(double x, double y, double z, Shine out) {
    double level = level(x, y);
    double open = 0.25 + 0.75 * sky.onDeck(x, y);
    double direct = direct(x, y, z) * sunZ;
    // Light that comes through and off the leaves is green: the deck beside a plant is tinted.
    double leafy = 0.10 * (1 - open);
    out.r = level * (light.sky().r() * open * (1 - leafy) + light.sun().r() * direct);
    out.g = level * (light.sky().g() * open * (1 + leafy) + light.sun().g() * direct);
    out.b = level * (light.sky().b() * open * (1 - 1.5 * leafy) + light.sun().b() * direct);
    out.mirrored = level * glare(x, y, open);
  }

  /** Lights a point of a leaf; the normal faces the camera. */
  void onLeaf(Fragment at, Shine out) {
    double level = level(at.x, at.y);
    double cos = at.nx * sunX + at.ny * sunY + at.nz * sunZ;
    double lit = light.sun().g() > 0 ? direct(at.x, at.y, at.z) : 0;
    double front = lit * Math.max(0, cos);
    double back = lit * Math.max(0, -cos);
    double upward = 0.5 + 0.5 * at.nz;
    double open = at.sky * (0.25 + 0.75 * upward) + 0.12 * (1 - upward) + 0.02;
    out.r = level * (light.sky().r() * open + light.sun().r() * front);
    out.g = level * (light.sky().g() * open + light.sun().g() * front);
    out.b = level * (light.sky().b() * open + light.sun().b() * front);
    double through = 0.10 * (1 - at.sky) + 0.13;
    out.throughR = level * (light.sky().r() * through + light.sun().r() * back);
    out.throughG = level * (light.sky().g() * through + light.sun().g() * back);
    out.throughB = level * (light.sky().b() * through + light.sun().b() * back);
    out.mirrored = level * mirror(at, lit);
  }

  /** Blinn's highlight of sun and lamps, and a faint sheen of the sky. */
  private double mirror(Fragment at, double lit) {
    double hx = sunX;
    double hy = sunY;
    double hz = sunZ + 1;
    double length = Math.sqrt(hx * hx + hy * hy + hz * hz);
    double cos = Math.max(0, (at.nx * hx + at.ny * hy + at.nz * hz) / length);
    double spot = lit * light.sun().g() * 0.5 * Math.pow(cos, 28);
    double flat = Math.max(0, at.nz);
    double lamps = light.field().glare() * 3 * Math.pow(flat, 60);
    double sheen = light.sky().g() * at.sky * 0.05 * (0.4 + 0.6 * Math.pow(flat, 6));
    return spot + lamps * at.sky + sheen;
  }

  private double direct(double x, double y, double z) {
    return light.sun().g() > 0 ? sun.share(x, y, z) : 0;
  }

  private double level(double x, double y) {
    Light.Field field = light.field();
    return Math.max(0.15, 1 + (field.slopeX() * (x - 300) + field.slopeY() * (y - 600)) / 1000);
  }

  /** Broad bright streaks where lamps mirror in a wet board. */
  private double glare(double x, double y, double open) {
    Light.Field field = light.field();
    if (field.glare() <= 0) {
      return 0;
    }
    double wet = Noise.octaves(x / 190, y / 190, 3, field.seed() + 5);
    double lamp = Math.pow(0.5 + 0.5 * Math.cos((x - 0.25 * y) / 70), 6);
    return field.glare() * open * (0.9 * Noise.step(0.55, 0.68, wet) * lamp);
  }
}
