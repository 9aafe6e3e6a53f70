// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.plant.GrowPlant;
import org.raftgauge.proving.plant.Habit;
import org.raftgauge.proving.plant.PlantOrder;
import org.raftgauge.proving.plant.Tone;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.scene.Pond;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Tint;

/**
 * What grows under a station: each board is planted, grows for four weeks, is cut and replanted.
 */
final class PondCrop {
  private static final int CYCLE_DAYS = 28;

  /** Evenings between the boards' plantings. */
  private static final int STAGGER_DAYS = 9;

  private static final double LARGEST_CM2 = 190;

  private PondCrop() {}

  /** Arranges an evening's scene; the same evening has the same plants. */
  static Scene scene(long seed, int evening) {
    Random drift = new Random(seed * 1009 + evening);
    List<Raft> rafts = new ArrayList<>();
    for (int board = 0; board < PondStation.boards(); board++) {
      int age = (evening + STAGGER_DAYS * board) % CYCLE_DAYS + 3;
      int cycle = (evening + STAGGER_DAYS * board) / CYCLE_DAYS;
      long plants = seed * 7919 + 131L * board + cycle;
      BoardLook look =
          new BoardLook(
              Tint.srgb(0xeeeeec),
              0.2,
              0,
              0.15,
              Medium.of(Tint.srgb(0x4a3526)),
              true,
              (int) (plants % 100_000));
      rafts.add(
          new Raft(
              PondStation.raft(board),
              PondStation.LAYOUT,
              PondStation.place(board, drift),
              look,
              sites(plants, age),
              1 + 18 * board));
    }
    Pond pond = Pond.allAround((int) (seed % 100_000));
    return new Scene(rafts, List.of(), pond, new Mesh());
  }

  private static List<Sown> sites(long seed, int age) {
    Random random = new Random(seed);
    List<Sown> sites = new ArrayList<>();
    for (SiteId site : PondStation.LAYOUT.grid().sites()) {
      double own = Math.exp(0.17 * random.nextGaussian());
      boolean empty = random.nextInt(20) == 0;
      long shape = random.nextLong();
      double area = own * LARGEST_CM2 / (1 + Math.exp(-0.24 * (age - 20)));
      sites.add(
          new Sown(
              site,
              empty ? "empty" : "ok",
              empty
                  ? Optional.empty()
                  : Optional.of(
                      GrowPlant.grow(
                          new PlantOrder(Habit.BUTTERHEAD, Tone.LIGHT_GREEN, area, shape))),
              true));
    }
    return sites;
  }
}
