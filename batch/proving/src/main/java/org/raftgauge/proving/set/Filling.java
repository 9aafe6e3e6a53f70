// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.raftgauge.proving.scene.Medium;
import org.raftgauge.proving.solid.Tint;

/**
 * Substrates and holders that planting holes are filled with. That those with a name are in use is
 * common practice; their colours are chosen by eye, without a source.
 *
 * @param label its name in tables and folders
 * @param medium what shows in the holes
 */
record Filling(String label, Medium medium) {
  private static final int MOSS = 0x5d7030;

  private static final List<Filling> NAMED =
      List.of(
          plain("stone-wool", 0xb7a877),
          plain("coir", 0x7d5a3c),
          plain("white-foam", 0xd6d3c8),
          plain("peat", 0x241b15),
          plain("green-foam", 0x4f6b52),
          plain("burnt-clay", 0x97583a),
          collared("coir-in-grey-collar", 0x7d5a3c, 0x77777a, 0.6),
          collared("stone-wool-in-black-cup", 0xb7a877, 0x1c1c1e, 0.7),
          mossy("mossy-grey-foam", 0x6b6a66, 0.4),
          mossy("mossy-coir", 0x7d5a3c, 0.75));

  private static final List<Condition> LIGHTS =
      List.of(Condition.PLAIN, Condition.PLAIN, Condition.SUN, Condition.UNEVEN, Condition.TILT);
  private static final List<Condition> TAUGHT =
      Arrays.stream(Condition.values())
          .filter(c -> c != Condition.PURPLE_LAMP && c != Condition.FULL && c != Condition.EMPTY)
          .toList();

  /** One photo in so many shows the usual plugs, that they stay what they are. */
  private static final int USUAL = 3;

  private static final List<CropKind> ALL_CROPS = List.of(CropKind.values());

  /** Half of the plants are small: their plugs show most. */
  private static final List<Stage> STAGES =
      List.of(Stage.YOUNG, Stage.YOUNG, Stage.YOUNG, Stage.MIDDLE, Stage.MIDDLE, Stage.LATE);

  private static final List<CropKind> CROPS =
      List.of(
          CropKind.BUTTERHEAD,
          CropKind.RED_OAKLEAF,
          CropKind.BASIL,
          CropKind.ROMAINE,
          CropKind.RED_BUTTERHEAD,
          CropKind.SEEDLING,
          CropKind.PURPLE_BASIL);

  private static Filling plain(String label, int rgb) {
    return collared(label, rgb, rgb, 1);
  }

  private static Filling collared(String label, int core, int collar, double coreShare) {
    Medium.Moss none = new Medium.Moss(Tint.srgb(MOSS), 0);
    return new Filling(label, new Medium(Tint.srgb(core), Tint.srgb(collar), coreShare, none));
  }

  private static Filling mossy(String label, int rgb, double share) {
    Medium.Moss moss = new Medium.Moss(Tint.srgb(MOSS), share);
    return new Filling(label, new Medium(Tint.srgb(rgb), Tint.srgb(rgb), 1, moss));
  }

  /** Draws any filling there might be: earthen, grey or green, with a collar or moss at times. */
  static Filling any(Random random) {
    Tint core = colour(random);
    boolean collared = random.nextInt(3) == 0;
    Tint collar = collared ? colour(random) : core;
    double coreShare = collared ? 0.4 + 0.45 * random.nextDouble() : 1;
    double share = random.nextInt(3) == 0 ? random.nextDouble() : 0;
    Tint moss = hsb(random, new double[] {0.17, 0.33, 0.35, 0.8, 0.18, 0.6});
    return new Filling("drawn", new Medium(core, collar, coreShare, new Medium.Moss(moss, share)));
  }

  private static Tint colour(Random random) {
    return switch (random.nextInt(5)) {
      case 0 -> hsb(random, new double[] {0, 1, 0, 0.1, 0.08, 0.95});
      case 1 -> hsb(random, new double[] {0.2, 0.45, 0.1, 0.45, 0.15, 0.7});
      default -> hsb(random, new double[] {0.02, 0.17, 0.15, 0.7, 0.12, 0.85});
    };
  }

  /** Draws hue, saturation and brightness between two limits each. */
  private static Tint hsb(Random random, double[] limits) {
    float[] drawn = new float[3];
    for (int i = 0; i < 3; i++) {
      double span = limits[2 * i + 1] - limits[2 * i];
      drawn[i] = (float) (limits[2 * i] + span * random.nextDouble());
    }
    return Tint.srgb(Color.HSBtoRGB(drawn[0], drawn[1], drawn[2]) & 0xffffff);
  }

  /** Plans as many photos as are ordered, all about them drawn at random, a third usual plugs. */
  static List<PhotoPlan> drawn(SetName.Order order) {
    Random random = new Random(order.seed());
    List<StationPlan> stations = stations(order);
    List<PhotoPlan> plans = new ArrayList<>();
    for (int number = 0; number < order.photos(); number++) {
      PhotoPlan plan =
          new PhotoPlan(
              number,
              TAUGHT.get(random.nextInt(TAUGHT.size())),
              ALL_CROPS.get(random.nextInt(ALL_CROPS.size())),
              STAGES.get(random.nextInt(STAGES.size())),
              stations.get(random.nextInt(2)),
              random.nextLong());
      plans.add(number % USUAL == 0 ? plan : plan.in(any(random)));
    }
    return plans;
  }

  private static List<StationPlan> stations(SetName.Order order) {
    return List.of(
        StationPlan.passing(1, order.megapixels()), StationPlan.fixed(order.megapixels()));
  }

  /** Plans small and middling plants in each filling, for a plug that shows is what misleads. */
  static List<PhotoPlan> plan(SetName.Order order) {
    Random random = new Random(order.seed());
    List<StationPlan> stations = stations(order);
    List<PhotoPlan> plans = new ArrayList<>();
    for (CropKind crop : CROPS) {
      for (Filling filling : NAMED) {
        Stage stage = random.nextInt(3) == 0 ? Stage.MIDDLE : Stage.YOUNG;
        plans.add(
            new PhotoPlan(
                    plans.size(),
                    LIGHTS.get(random.nextInt(LIGHTS.size())),
                    crop,
                    stage,
                    stations.get(random.nextInt(2)),
                    random.nextLong())
                .in(filling));
      }
    }
    return plans;
  }
}
