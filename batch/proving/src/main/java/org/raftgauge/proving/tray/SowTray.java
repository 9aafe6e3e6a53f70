// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.tray;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.plant.GrowPlant;
import org.raftgauge.proving.plant.Habit;
import org.raftgauge.proving.plant.PlantOrder;
import org.raftgauge.proving.plant.Tone;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;

/** Decides what becomes of each cell of a tray, and grows its seedlings to a day. */
final class SowTray {
  private static final double NEVER = 0.06;
  private static final double DOUBLE = 0.04;
  private static final double MEDIAN_DAS = 4.2;
  private static final double LN_SPREAD = 0.2;
  private static final double AREA_LN_SPREAD = 0.15;

  private SowTray() {}

  /**
   * A cell.
   *
   * @param site which
   * @param emergesDas when its first seedling shows, days after sowing; infinite: never
   * @param doubled true: two seedlings, which show together
   * @param lnOwn how much larger its seedlings are than usual, ln
   * @param seed of their shape
   */
  record Cell(SiteId site, double emergesDas, boolean doubled, double lnOwn, long seed) {
    /** Says whether it shows a seedling. */
    boolean emerged(double das) {
      return emergesDas <= das;
    }
  }

  /** Sows a tray. */
  static List<Cell> cells(TrayPlan plan) {
    Random random = new Random(plan.seed());
    List<Cell> cells = new ArrayList<>();
    for (SiteId site : plan.layout().grid().sites()) {
      boolean never = random.nextDouble() < NEVER;
      double das = MEDIAN_DAS * Math.exp(LN_SPREAD * random.nextGaussian());
      boolean doubled = random.nextDouble() < DOUBLE;
      double own = AREA_LN_SPREAD * random.nextGaussian();
      cells.add(
          new Cell(
              site,
              never ? Double.POSITIVE_INFINITY : das,
              doubled && !never,
              own,
              random.nextLong()));
    }
    return cells;
  }

  /** Grows all cells to a day after sowing. */
  static List<Sown> grown(List<Cell> cells, double das) {
    return cells.stream()
        .map(
            cell ->
                cell.emerged(das)
                    ? new Sown(cell.site(), "ok", Optional.of(seedlings(cell, das)), true)
                    : new Sown(cell.site(), "empty", Optional.empty(), true))
        .toList();
  }

  private static Mesh seedlings(Cell cell, double das) {
    Random random = new Random(cell.seed());
    double area = areaCm2(das - cell.emergesDas()) * Math.exp(cell.lnOwn());
    Mesh first = seedling(area, random);
    if (!cell.doubled()) {
      return first;
    }
    double away = 2 + 2 * random.nextDouble();
    double to = 2 * Math.PI * random.nextDouble();
    Mesh both = new Mesh();
    both.append(first, Placement.NONE, 0);
    both.append(
        seedling(area * Math.exp(AREA_LN_SPREAD * random.nextGaussian()), random),
        new Placement(away * Math.cos(to), away * Math.sin(to), 0),
        0);
    return both;
  }

  private static Mesh seedling(double areaCm2, Random random) {
    return GrowPlant.grow(
        new PlantOrder(Habit.SEEDLING, Tone.LIGHT_GREEN, areaCm2, random.nextLong()));
  }

  /**
   * Area of a seedling by days since it shows, cm2: it unfolds its cotyledons within a day, then
   * grows by 18 % a day; chosen by eye.
   */
  static double areaCm2(double days) {
    return (0.12 + 0.33 * Math.min(1, days)) * Math.exp(0.18 * Math.max(0, days - 1));
  }
}
