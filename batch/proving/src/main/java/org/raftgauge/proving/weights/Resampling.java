// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.weights;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.raftgauge.core.grader.FitGrader;
import org.raftgauge.core.grader.FitRule;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.Prediction;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.Weighed;

/**
 * Calibrates again and again from a few weighings of each variety and scores the plants that were
 * not weighed.
 *
 * @param weighings of each variety
 * @param resamples how often
 * @param coverage share of plants inside their 90 % interval
 * @param widthShare mean width of the interval over the predicted median
 * @param meanShare mean of |predicted - weighed| / weighed
 * @param byVariety coverage and bias of each variety
 */
record Resampling(
    int weighings,
    int resamples,
    double coverage,
    double widthShare,
    double meanShare,
    Map<String, OfVariety> byVariety) {
  private static final Grader.Origin ORIGIN = new Grader.Origin("", "", "", "", "", 24, "");

  /** Coverage of one variety, and the mean of ln predicted - ln weighed. */
  record OfVariety(double coverage, double biasLn) {}

  /** Sums over plants. */
  private static final class Sums {
    private double plants;
    private double inside;
    private double width;
    private double share;
    private double bias;

    private void add(Prediction told, double g) {
      double low = told.quantileG(0.05);
      double high = told.quantileG(0.95);
      plants++;
      inside += g >= low && g <= high ? 1 : 0;
      width += (high - low) / told.medianG();
      share += Math.abs(told.medianG() - g) / g;
      bias += told.lnMedian() - Math.log(g);
    }
  }

  /** Whether varieties are told apart. */
  enum Varieties {
    /** Each is known. */
    KNOWN,
    /** All are taken for one: the trap. */
    POOLED
  }

  /** Resamples; the seed makes it repeatable. */
  static Resampling of(List<Lettuce> plants, int weighings, int resamples, Varieties varieties) {
    Random random = new Random(7000 + weighings);
    Sums all = new Sums();
    Map<String, Sums> own = new TreeMap<>();
    for (int i = 0; i < resamples; i++) {
      List<Lettuce> chosen = draw(plants, weighings, random);
      List<Weighed> weighed = chosen.stream().map(p -> weighed(p, varieties)).toList();
      Grader grader = (Grader) FitGrader.fit("lettuce", weighed, FitRule.defaults(), ORIGIN);
      for (Lettuce plant : plants) {
        if (!chosen.contains(plant)) {
          Prediction told =
              grader.predict(Regime.OPEN, weighed(plant, varieties).traits()).orElseThrow();
          all.add(told, plant.weightG());
          own.computeIfAbsent(plant.variety(), v -> new Sums()).add(told, plant.weightG());
        }
      }
    }
    Map<String, OfVariety> byVariety = new TreeMap<>();
    own.forEach(
        (variety, s) ->
            byVariety.put(variety, new OfVariety(s.inside / s.plants, s.bias / s.plants)));
    return new Resampling(
        weighings,
        resamples,
        all.inside / all.plants,
        all.width / all.plants,
        all.share / all.plants,
        byVariety);
  }

  private static Weighed weighed(Lettuce plant, Varieties varieties) {
    return plant.weighed(Lettuce.Area.LEAF, varieties == Varieties.KNOWN ? plant.variety() : "");
  }

  private static List<Lettuce> draw(List<Lettuce> plants, int ofEach, Random random) {
    Map<String, List<Lettuce>> groups =
        plants.stream()
            .collect(Collectors.groupingBy(Lettuce::variety, TreeMap::new, Collectors.toList()));
    List<Lettuce> chosen = new ArrayList<>();
    for (List<Lettuce> group : groups.values()) {
      List<Lettuce> shuffled = new ArrayList<>(group);
      Collections.shuffle(shuffled, random);
      chosen.addAll(shuffled.subList(0, ofEach));
    }
    return chosen;
  }
}
