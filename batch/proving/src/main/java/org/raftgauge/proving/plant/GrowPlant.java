// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.plant;

import java.util.Random;
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.TopView;

/** Grows one plant as a mesh around its foot at the origin. */
public final class GrowPlant {
  /** Cell of the height map that steers the size; the truth is measured on a finer one. */
  private static final double STEP_MM = 0.7;

  private GrowPlant() {}

  /**
   * Grows a plant: builds it at a guessed size, measures it from above, and builds it again at the
   * size that gives the wanted area.
   *
   * @param order what is wanted
   * @return the plant; its tissue has no owner yet
   */
  public static Mesh grow(PlantOrder order) {
    double size = 11 * Math.sqrt(order.areaCm2());
    Mesh plant = build(order, size);
    for (int pass = 0; pass < 2; pass++) {
      size *= Math.sqrt(order.areaCm2() / areaCm2(plant));
      plant = build(order, size);
    }
    return plant;
  }

  /**
   * Measures a plant from straight above.
   *
   * @param plant the plant
   * @return projected area, cm2
   */
  private static double areaCm2(Mesh plant) {
    TopView view = new TopView(Box.around(plant).grown(1), STEP_MM);
    view.draw(plant, patch -> plant.patches().get(patch).material().isTissue());
    return Math.max(0.01, view.coveredCm2());
  }

  private static Mesh build(PlantOrder order, double sizeMm) {
    Random random = new Random(order.seed());
    Growing growing = new Growing(new Mesh(), order, sizeMm, random);
    switch (order.habit()) {
      case BUTTERHEAD -> Rosette.butterhead(growing);
      case OAKLEAF -> Rosette.oakleaf(growing);
      case ROMAINE -> Rosette.romaine(growing);
      case ROCKET -> Rosette.rocket(growing);
      case BASIL -> Stem.basil(growing);
      case SEEDLING -> Stem.seedling(growing);
    }
    return growing.mesh();
  }

  /** A plant under construction: its mesh, its order, its leaf length in mm, its random numbers. */
  record Growing(Mesh mesh, PlantOrder order, double sizeMm, Random random) {

    /** Returns a number between two bounds. */
    double between(double low, double high) {
      return low + (high - low) * random.nextDouble();
    }

    /** Adds a leaf of the plant's tone. */
    void leaf(BuildLeaf.Leaf leaf, double youth, double gloss) {
      BuildLeaf.add(mesh, leaf, order.tone().leaf(youth, gloss, random), random.nextInt());
    }
  }
}
