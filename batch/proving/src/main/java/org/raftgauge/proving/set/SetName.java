// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** The sets of photos that can be made. */
public enum SetName {
  /** Every condition, three leaf habits, three stages, both kinds of station. */
  CONDITIONS,
  /** Large photos for timing: 1, 2 and 4 rafts on a photo. */
  SPEED,
  /** Rafts photographed every second evening while they grow into each other. */
  GROWING,
  /** Small plants in substrates and holders of many kinds. */
  FILLINGS,
  /** Looks, crops, sizes and fillings drawn at random, to teach from. */
  DRAWN_FILLINGS;

  private static final CropKind[][] CROPS = {
    {CropKind.BUTTERHEAD, CropKind.OAKLEAF, CropKind.BASIL},
    {CropKind.ROMAINE, CropKind.OAKLEAF, CropKind.ROCKET},
    {CropKind.BUTTERHEAD, CropKind.ROCKET, CropKind.BASIL},
    {CropKind.OAKLEAF, CropKind.BASIL, CropKind.ROMAINE}
  };
  private static final CropKind[] RED_CROPS = {
    CropKind.RED_OAKLEAF, CropKind.RED_BUTTERHEAD, CropKind.PURPLE_BASIL
  };
  private static final Stage[] STAGES = {Stage.YOUNG, Stage.MIDDLE, Stage.LATE};

  /** Plans the set's photos. */
  List<PhotoPlan> plan(Order order) {
    if (this == GROWING) {
      return Growing.plan(order);
    }
    List<PhotoPlan> all =
        switch (this) {
          case CONDITIONS -> conditions(order);
          case DRAWN_FILLINGS -> Filling.drawn(order);
          case FILLINGS -> Filling.plan(order);
          default -> speed(order);
        };
    List<PhotoPlan> plans = all.stream().filter(p -> order.wants(p.condition())).toList();
    if (order.photos() >= plans.size()) {
      return plans;
    }
    List<PhotoPlan> some = new ArrayList<>(plans);
    Collections.shuffle(some, new Random(order.seed()));
    some = some.subList(0, order.photos());
    some.sort((a, b) -> Integer.compare(a.number(), b.number()));
    return some;
  }

  /**
   * What is ordered of a set.
   *
   * @param seed of the set
   * @param photos at most so many
   * @param megapixels of each photo
   * @param looks labels of the conditions wanted; none: all of them
   */
  public record Order(long seed, int photos, double megapixels, List<String> looks) {

    /** Copies the list and refuses looks that are not known. */
    public Order {
      looks = List.copyOf(looks);
      List<String> known = Arrays.stream(Condition.values()).map(Condition::label).toList();
      for (String look : looks) {
        if (!known.contains(look)) {
          throw new IllegalArgumentException("unknown look: " + look + "; known: " + known);
        }
      }
    }

    /** Orders photos of all looks. */
    public Order(long seed, int photos, double megapixels) {
      this(seed, photos, megapixels, List.of());
    }

    private boolean wants(Condition condition) {
      return looks.isEmpty() || looks.contains(condition.label());
    }
  }

  private static List<PhotoPlan> conditions(Order order) {
    Random random = new Random(order.seed());
    StationPlan passing = StationPlan.passing(1, order.megapixels());
    StationPlan fixed = StationPlan.fixed(order.megapixels());
    List<PhotoPlan> plans = new ArrayList<>();
    int turn = 0;
    for (Condition condition : Condition.values()) {
      CropKind[] crops = condition == Condition.RED ? RED_CROPS : CROPS[turn++ % CROPS.length];
      for (CropKind crop : crops) {
        for (Stage stage : stages(condition)) {
          for (StationPlan station : List.of(passing, fixed)) {
            CropKind sown =
                stage == Stage.YOUNG && crop == crops[2] && crops != RED_CROPS && turn % 2 == 1
                    ? CropKind.SEEDLING
                    : crop;
            plans.add(
                new PhotoPlan(plans.size(), condition, sown, stage, station, random.nextLong()));
          }
        }
      }
    }
    return plans;
  }

  private static Stage[] stages(Condition condition) {
    return condition == Condition.FULL
        ? new Stage[] {Stage.FULL}
        : condition == Condition.EMPTY ? new Stage[] {Stage.LATE} : STAGES;
  }

  private static List<PhotoPlan> speed(Order order) {
    Random random = new Random(order.seed());
    List<PhotoPlan> plans = new ArrayList<>();
    List<StationPlan> stations = new ArrayList<>();
    for (int rafts : new int[] {1, 2, 4}) {
      stations.add(StationPlan.passing(rafts, order.megapixels()));
    }
    stations.add(StationPlan.fixed(order.megapixels()));
    for (StationPlan station : stations) {
      for (Stage stage : STAGES) {
        plans.add(
            new PhotoPlan(
                plans.size(),
                Condition.PLAIN,
                CropKind.BUTTERHEAD,
                stage,
                station,
                random.nextLong()));
      }
    }
    return plans;
  }
}
