// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.raftgauge.core.book.Layout;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Pond;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.scene.Slip;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.solid.Box;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Tint;

/** Puts the boards, their neighbours, the clutter and the pond of one photo together. */
final class Arrange {
  private static final int[] SLIPS = {0x2f6fc4, 0x2b62b0, 0xf2f1ea, 0xf0d23c, 0xd8d4c8, 0xe8862e};
  private final PhotoPlan plan;
  private final Look look;
  private final Random random;

  private Arrange(PhotoPlan plan, Look look, Random random) {
    this.plan = plan;
    this.look = look;
    this.random = random;
  }

  /** Arranges a photo's scene. */
  static Scene scene(PhotoPlan plan, Look look, Random random) {
    return new Arrange(plan, look, random).scene();
  }

  private Scene scene() {
    List<Raft> rafts = new ArrayList<>();
    int label = 1;
    Layout layout = plan.layout();
    for (int i = 0; i < plan.station().places().size(); i++) {
      Raft raft = raft(plan.raft(i), layout, plan.station().places().get(i), label);
      rafts.add(raft);
      label += raft.sites().size();
    }
    addNeighbours(rafts, layout);
    int clutter = look.clutter();
    return new Scene(rafts, slips(clutter), pond(), Clutter.hoses(clutter / 2, random));
  }

  private Raft raft(String id, Layout layout, Placement place, int firstLabel) {
    boolean planted = plan.condition() != Condition.EMPTY || firstLabel == 0;
    FillRaft.Crop crop =
        new FillRaft.Crop(layout.grid(), plan.crop(), plan.stage(), planted, plan.growing());
    Random plants = plan.growing().map(g -> new Random(g.seed() + firstLabel)).orElse(random);
    List<Sown> sites = FillRaft.fill(crop, plants);
    BoardLook own = look.board();
    BoardLook board =
        new BoardLook(
            own.colour(),
            own.stain(),
            own.algae(),
            own.gloss(),
            own.medium(),
            own.netCups(),
            own.seed() + firstLabel * 31);
    return new Raft(id, layout, place, board, sites, firstLabel);
  }

  /** Boards beside the measured ones, cut by the picture's edge. */
  private void addNeighbours(List<Raft> rafts, Layout layout) {
    double width = layout.board().widthMm() + 25;
    double right = 0;
    for (Placement place : plan.station().places()) {
      right = Math.max(right, place.xMm() + width);
    }
    if (random.nextInt(3) > 0) {
      rafts.add(raft("NB-1", layout, beside(right), 0));
    }
    if (random.nextInt(3) > 0) {
      rafts.add(raft("NB-2", layout, beside(-width), 0));
    }
  }

  private Placement beside(double x) {
    double away = x > 0 ? 15 * random.nextDouble() : -15 * random.nextDouble();
    return new Placement(x + away, 80 * (random.nextDouble() - 0.5), 0.006 * random.nextGaussian());
  }

  private Pond pond() {
    boolean edge = random.nextBoolean();
    Box water = edge ? new Box(-5000, -60, 9000, 9000) : new Box(-5000, -5000, 9000, 9000);
    Tint colour = Tint.srgb(random.nextBoolean() ? 0x1b2420 : 0x2a2f22);
    Tint bank = Tint.srgb(random.nextBoolean() ? 0x8b877f : 0x3a3b3c);
    return new Pond(water, colour, bank, 30, random.nextInt(1 << 20));
  }

  private List<Slip> slips(int clutter) {
    List<Slip> slips = new ArrayList<>();
    for (int i = 0; i < clutter; i++) {
      boolean tape = i % 2 == 0;
      double length = tape ? 120 + 260 * random.nextDouble() : 55 + 40 * random.nextDouble();
      double width = tape ? 24 : length * 0.62;
      Placement place =
          new Placement(
              60 + 480 * random.nextDouble(),
              210 + 800 * random.nextDouble(),
              tape && random.nextBoolean()
                  ? 0.05 * random.nextGaussian()
                  : 3 * random.nextDouble());
      int rgb = SLIPS[tape ? random.nextInt(2) : 2 + random.nextInt(4)];
      slips.add(new Slip(place, length, width, Tint.srgb(rgb)));
    }
    return slips;
  }
}
