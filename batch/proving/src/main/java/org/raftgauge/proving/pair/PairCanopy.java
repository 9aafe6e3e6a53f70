// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.pair;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.plant.GrowPlant;
import org.raftgauge.proving.plant.PlantOrder;
import org.raftgauge.proving.scene.BoardLook;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.scene.Pond;
import org.raftgauge.proving.scene.Raft;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.scene.Sown;
import org.raftgauge.proving.set.Boards;
import org.raftgauge.proving.set.CropKind;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Placement;
import org.raftgauge.proving.solid.Tint;

/**
 * What stands on a raft before a pair of cameras.
 *
 * @param crop the crop
 * @param areaCm2 median projected area of its plants, cm2
 * @param noisy whether the light is poor, so that the photos are noisy
 */
record PairCanopy(CropKind crop, double areaCm2, boolean noisy) {
  static final Layout LAYOUT = Boards.named("deck-18");

  /** The canopies of the proof: from young and open to closed, low and tall. */
  static List<PairCanopy> all() {
    return List.of(
        new PairCanopy(CropKind.BUTTERHEAD, 45, false),
        new PairCanopy(CropKind.BUTTERHEAD, 200, false),
        new PairCanopy(CropKind.OAKLEAF, 300, false),
        new PairCanopy(CropKind.ROMAINE, 230, false),
        new PairCanopy(CropKind.BASIL, 120, true),
        new PairCanopy(CropKind.BUTTERHEAD, 480, true));
  }

  /** Says whether it is photographed with the long lens too: young, tall, and poor light. */
  boolean beforeLongLens() {
    return areaCm2 < 60 || crop == CropKind.ROMAINE || crop == CropKind.BASIL;
  }

  /** Returns a name for files and tables. */
  String code() {
    return crop.crop() + "-" + Math.round(areaCm2) + (noisy ? "-noisy" : "");
  }

  /** Arranges the scene; the same seed has the same plants. */
  Scene scene(long seed) {
    Random random = new Random(seed * 31 + code().hashCode());
    List<Sown> sites = new ArrayList<>();
    for (SiteId site : LAYOUT.grid().sites()) {
      double own = areaCm2 * Math.exp(0.17 * random.nextGaussian());
      boolean empty = random.nextInt(18) == 0;
      long shape = random.nextLong();
      PlantOrder order = new PlantOrder(crop.habit(), crop.tone(), own, shape);
      sites.add(
          empty
              ? new Sown(site, "empty", Optional.empty(), true)
              : new Sown(site, "ok", Optional.of(GrowPlant.grow(order)), true));
    }
    BoardLook look =
        new BoardLook(
            Tint.srgb(0xe4e2da),
            0.15,
            0,
            0.15,
            Medium.of(Tint.srgb(0x4a3526)),
            true,
            random.nextInt(1 << 20));
    Pond pond = Pond.allAround(random.nextInt(1 << 20));
    Raft raft = new Raft("PR-1", LAYOUT, new Placement(0, 0, 0), look, sites, 1);
    return new Scene(List.of(raft), List.of(), pond, new Mesh());
  }
}
