// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.proving.plant.GrowPlant;
import org.raftgauge.proving.plant.PlantOrder;
import org.raftgauge.proving.plant.Tone;
import org.raftgauge.proving.scene.Sown;

/** Fills the sites of a board with plants that differ as plants do. */
final class FillRaft {
  /** Spread of ln(area) among sound plants; the design expects 15-20 % among healthy plants. */
  private static final double SPREAD = 0.17;

  /** Area over pitch area past which a plant would be a giant of its kind. */
  private static final double LARGEST = 2.1;

  private FillRaft() {}

  /**
   * What is to be grown on a board.
   *
   * @param grid its sites
   * @param crop the crop
   * @param stage how far it has grown
   * @param planted false: no plants at all
   * @param growing its age, where the same plants are grown for many evenings
   */
  record Crop(
      SiteGrid grid, CropKind crop, Stage stage, boolean planted, Optional<Growing> growing) {

    double areaOverPitch() {
      return growing.map(Growing::areaOverPitch).orElse(stage.areaOverPitch());
    }
  }

  /** Fills all sites, in the grid's order. */
  static List<Sown> fill(Crop crop, Random random) {
    List<Sown> sown = new ArrayList<>();
    for (SiteId site : crop.grid().sites()) {
      sown.add(site(site, crop, new Random(random.nextLong())));
    }
    return sown;
  }

  private static Sown site(SiteId site, Crop crop, Random random) {
    double lot = random.nextDouble();
    boolean full = crop.stage() == Stage.FULL;
    if (!crop.planted() || (!full && lot < 0.07)) {
      return new Sown(site, "empty", Optional.empty(), random.nextInt(3) > 0);
    }
    String kind =
        full || lot < 0.84 || lot >= 0.98
            ? "ok"
            : lot < 0.93 ? "lagging" : lot < 0.965 ? "pale" : "dead";
    double pitchCm2 = crop.grid().pitchXMm() * crop.grid().pitchYMm() / 100;
    double share =
        Math.min(LARGEST, crop.areaOverPitch() * Math.exp(SPREAD * random.nextGaussian()));
    double size =
        kind.equals("lagging") ? 0.30 + 0.4 * random.nextDouble() : kind.equals("dead") ? 0.5 : 1;
    double small = crop.crop() == CropKind.SEEDLING ? 0.18 : 1;
    long shape = random.nextLong();
    double wandered = crop.growing().map(g -> Math.exp(g.wandered(random))).orElse(1.0);
    PlantOrder order =
        new PlantOrder(
            crop.crop().habit(),
            tone(kind, crop.crop()),
            Math.max(0.8, share * size * small * wandered * pitchCm2),
            shape);
    return new Sown(site, kind, Optional.of(GrowPlant.grow(order)), true);
  }

  private static Tone tone(String kind, CropKind crop) {
    return kind.equals("pale") ? Tone.PALE : kind.equals("dead") ? Tone.DEAD : crop.tone();
  }
}
