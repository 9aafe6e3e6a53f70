// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import org.raftgauge.proving.plant.GrowPlant.Growing;
import org.raftgauge.proving.plant.LeafForm.Surface;

/**
 * Plants whose leaves all start near the foot, each turned on from the last by the golden angle.
 */
final class Rosette {
  /** The golden angle, radians: the usual turn from leaf to leaf (phyllotaxis, textbook value). */
  private static final double GOLDEN_RAD = Math.toRadians(137.508);

  private Rosette() {}

  /**
   * The plan of a rosette.
   *
   * @param outline of its leaves
   * @param widthShare half width over length
   * @param petioleShare of the outer leaves
   * @param lowRad elevation of the oldest leaf
   * @param highRad elevation of the youngest leaf
   * @param bendRad bend of the oldest leaf
   * @param surface of the oldest leaf
   * @param gloss of the blades
   */
  private record Plan(
      Outline outline,
      double widthShare,
      double petioleShare,
      double lowRad,
      double highRad,
      double bendRad,
      Surface surface,
      double gloss) {}

  static void butterhead(Growing growing) {
    Surface surface = new Surface(0.45, 0.16, 2.6, 0.10, 0.10);
    grow(
        growing,
        3 + 4.6 * log(growing),
        new Plan(Outline.ROUND, 0.50, 0.10, 0.30, 1.35, 0.55, surface, 0.25));
  }

  static void oakleaf(Growing growing) {
    Surface surface = new Surface(0.25, 0.30, 6.5, 0.08, 0.16);
    grow(
        growing,
        4 + 4.2 * log(growing),
        new Plan(Outline.OAK, 0.40, 0.14, 0.45, 1.25, 0.75, surface, 0.2));
  }

  static void romaine(Growing growing) {
    Surface surface = new Surface(0.75, 0.10, 2.2, 0.13, 0.08);
    grow(
        growing,
        3 + 3.4 * log(growing),
        new Plan(Outline.SPOON, 0.30, 0.10, 0.75, 1.45, 0.75, surface, 0.25));
  }

  static void rocket(Growing growing) {
    Surface surface = new Surface(0.20, 0.06, 3, 0.05, 0.40);
    grow(
        growing,
        4 + 4.0 * log(growing),
        new Plan(Outline.CUT, 0.20, 0.34, 0.55, 1.35, 0.85, surface, 0.3));
  }

  /** ln(1 + A / 3 cm2): leaves come at a falling rate as the plant grows. */
  private static double log(Growing growing) {
    return Math.log(1 + growing.order().areaCm2() / 3);
  }

  private static void grow(Growing growing, double leaves, Plan plan) {
    int n = (int) Math.max(4, Math.round(leaves + growing.random().nextGaussian()));
    double start = growing.between(0, 2 * Math.PI);
    for (int i = 0; i < n; i++) {
      double youth = n == 1 ? 0 : i / (n - 1.0);
      double azimuth = start + i * GOLDEN_RAD + 0.16 * growing.random().nextGaussian();
      addLeaf(growing, plan, youth, azimuth);
    }
  }

  private static void addLeaf(Growing growing, Plan plan, double youth, double azimuth) {
    double length = growing.sizeMm() * lengthShare(youth) * growing.between(0.86, 1.14);
    double width = length * plan.widthShare() * growing.between(0.9, 1.1) * (1 - 0.2 * youth);
    Surface s = plan.surface();
    Surface surface =
        new Surface(
            s.cupRad() * growing.between(0.5, 1.3) + 0.9 * youth * youth,
            s.ruffle() * growing.between(0.6, 1.4),
            s.waves() * growing.between(0.8, 1.2),
            s.blister(),
            s.forward());
    LeafForm form =
        new LeafForm(
            plan.outline(), length, width, plan.petioleShare() * (1 - 0.6 * youth), surface);
    double rise = plan.lowRad() + (plan.highRad() - plan.lowRad()) * Math.pow(youth, 0.85);
    double off = 0.05 * growing.sizeMm() * (1 - youth);
    LeafPose pose =
        new LeafPose(
            off * Math.cos(azimuth),
            off * Math.sin(azimuth),
            2 + 0.10 * growing.sizeMm() * youth,
            azimuth,
            rise + 0.10 * growing.random().nextGaussian(),
            plan.bendRad() * growing.between(0.75, 1.25) * (1 - 1.3 * youth),
            0.22 * growing.random().nextGaussian(),
            1.5 + 0.06 * growing.sizeMm() * youth);
    growing.leaf(new BuildLeaf.Leaf(form, pose), youth, plan.gloss());
  }

  /** The oldest leaves stayed a bit smaller, the youngest have still to grow. */
  private static double lengthShare(double youth) {
    return youth < 0.3 ? 0.86 + 0.14 * youth / 0.3 : 1 - 0.80 * Math.pow((youth - 0.3) / 0.7, 1.1);
  }
}
