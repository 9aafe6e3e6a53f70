// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * A raft that is photographed on many evenings while the same plants grow: each keeps its leaves'
 * order and its share of the usual size, but for what it wanders.
 *
 * @param raft number of the raft in its set, from 0
 * @param dat days after transplant
 * @param seed of its plants
 */
record Growing(int raft, int dat, long seed) {
  /** Ages at which a raft is photographed, days after transplant: every second evening. */
  static final List<Integer> EVENINGS = IntStream.rangeClosed(4, 15).mapToObj(i -> 2 * i).toList();

  /** Spread of what a plant's ln(area) wanders in a day beside the raft's; invented. */
  private static final double WANDER = 0.01;

  private static final List<CropKind> CROPS =
      List.of(CropKind.BUTTERHEAD, CropKind.OAKLEAF, CropKind.ROMAINE, CropKind.BASIL);

  private static final List<Condition> LOOKS =
      List.of(Condition.PLAIN, Condition.UNEVEN, Condition.SUN, Condition.ALGAE, Condition.TILT);

  /** Plans all evenings of as many rafts as there are photos for, one at least. */
  static List<PhotoPlan> plan(SetName.Order order) {
    Random random = new Random(order.seed());
    StationPlan station = StationPlan.passing(1, order.megapixels());
    List<PhotoPlan> plans = new ArrayList<>();
    int rafts = Math.max(1, Math.min(2 * CROPS.size(), order.photos() / EVENINGS.size()));
    for (int raft = 0; raft < rafts; raft++) {
      long seed = random.nextLong();
      for (int dat : EVENINGS) {
        Condition look = LOOKS.get(random.nextInt(LOOKS.size()));
        CropKind crop = CROPS.get(raft % CROPS.size());
        Growing growing = new Growing(raft, dat, seed);
        plans.add(
            new PhotoPlan(plans.size(), look, crop, growing.stage(), station, random.nextLong())
                .of(growing));
      }
    }
    return plans;
  }

  private Stage stage() {
    return dat < 12 ? Stage.YOUNG : dat < 20 ? Stage.MIDDLE : Stage.LATE;
  }

  /** Returns the usual projected area over the deck area of one site: logistic, invented. */
  double areaOverPitch() {
    return 1.4 / (1 + Math.exp(-0.24 * (dat - 22)));
  }

  /** Returns how far a plant's ln(area) has wandered by now. */
  double wandered(Random random) {
    double sum = 0;
    for (int day = 0; day < dat; day++) {
      sum += WANDER * random.nextGaussian();
    }
    return sum;
  }
}
