// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.raftgauge.core.book.SiteId;

/** Invented weighed plants of a known relation. */
final class Plants {
  static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-04-16T08:00:00+01:00");
  static final Grader.Origin ORIGIN =
      new Grader.Origin(
          "2026-04-17T09:00:00+01:00",
          "test",
          "trimmed",
          "2026-04-16T08:00:00+01:00",
          "2026-04-16T10:00:00+01:00",
          24,
          "invented plants");

  private Plants() {}

  /** Makes a plant that weighs {@code g}. */
  static Weighed plant(int line, Traits traits, Regime regime, double g) {
    return new Weighed(
        line,
        "KV-" + (1 + line / 18),
        new SiteId(line % 6, line / 6 % 3),
        MORNING.plusMinutes(line),
        g,
        traits,
        regime,
        "evening.jpg");
  }

  /**
   * Makes open plants of {@code w = 0.06 A^1.25}, areas from 60 to 600 cm2.
   *
   * @param sd of ln w
   */
  static List<Weighed> open(int count, double sd, long seed) {
    Random random = new Random(seed);
    List<Weighed> plants = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double area = 60 * Math.pow(10, random.nextDouble());
      double g = 0.06 * Math.pow(area, 1.25) * Math.exp(sd * random.nextGaussian());
      plants.add(plant(i + 2, Traits.ofArea("", area), Regime.OPEN, g));
    }
    return plants;
  }

  /** Makes plants of two varieties, the second heavier by half at equal area. */
  static List<Weighed> twoVarieties(int ofEach, double sd, long seed) {
    Random random = new Random(seed);
    List<Weighed> plants = new ArrayList<>();
    for (int i = 0; i < 2 * ofEach; i++) {
      String variety = i % 2 == 0 ? "Halm" : "Marle";
      double area = 60 * Math.pow(10, random.nextDouble());
      double g = 0.06 * Math.pow(area, 1.25) * Math.exp(sd * random.nextGaussian());
      double heavier = variety.equals("Marle") ? 1.5 : 1;
      plants.add(plant(i + 2, Traits.ofArea(variety, area), Regime.OPEN, g * heavier));
    }
    return plants;
  }

  /** Makes closed plants of {@code w = 0.004 h^2} with h from 100 to 250 mm. */
  static List<Weighed> closed(int count, double sd, long seed) {
    Random random = new Random(seed);
    List<Weighed> plants = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double height = 100 * Math.pow(2.5, random.nextDouble());
      Traits traits =
          new Traits("", OptionalDouble.of(400), OptionalDouble.of(height), OptionalDouble.empty());
      double g = 0.004 * height * height * Math.exp(sd * random.nextGaussian());
      plants.add(plant(i + 200, traits, Regime.CLOSED, g));
    }
    return plants;
  }

  static Grader fitted(List<Weighed> plants) {
    return (Grader) FitGrader.fit("butterhead", plants, FitRule.defaults(), ORIGIN);
  }

  /** Returns the plants with the weight of one changed. */
  static List<Weighed> withWeight(List<Weighed> plants, int index, double g) {
    List<Weighed> changed = new ArrayList<>(plants);
    Weighed old = plants.get(index);
    changed.set(
        index,
        new Weighed(
            old.line(),
            old.raft(),
            old.site(),
            old.weighedAt(),
            g,
            old.traits(),
            old.regime(),
            old.photo()));
    return changed;
  }
}
