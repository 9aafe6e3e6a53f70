// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.book.Crop;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.CropCurve;
import org.raftgauge.core.book.Harvest;
import org.raftgauge.core.grader.Grader;
import org.raftgauge.core.grader.HeightFit;
import org.raftgauge.core.grader.Prediction;
import org.raftgauge.core.grader.Regime;
import org.raftgauge.core.grader.RegimeFit;
import org.raftgauge.core.grader.Traits;
import org.raftgauge.core.growth.CurveModel;
import org.raftgauge.core.growth.GrowthCurve;
import org.raftgauge.core.history.PlantSeries;

/**
 * Finds the area at which a plant is ready: in a tray by the crop's rule for transplanting; else
 * the area of a head of the harvest's weight by the crop's grader, as far as its weighings reach;
 * without a grader the area that the book's growth curve has on the first day of the harvest's
 * window.
 */
final class TargetSizes {
  private static final double STEP = 1e-4;

  private final CropBook book;
  private final Map<String, Grader> graders;
  private final Map<Weighed, Size> weighed = new HashMap<>();

  /** What a size by weight depends on. */
  private record Weighed(String crop, String variety, double headWeightG) {}

  /** An area, or why there is none. */
  record Size(OptionalDouble areaCm2, String reason) {
    static Size of(double areaCm2) {
      return new Size(OptionalDouble.of(areaCm2), "");
    }

    static Size none(String reason) {
      return new Size(OptionalDouble.empty(), reason);
    }
  }

  /**
   * @param book the crop book
   * @param graders by crop, none that knows more than the evening
   */
  TargetSizes(CropBook book, Map<String, Grader> graders) {
    this.book = book;
    this.graders = graders;
  }

  Size of(PlantSeries plant) {
    Optional<Crop> crop = book.crop(plant.planting());
    String name = plant.planting().crop();
    if (plant.clock() == PlantSeries.AgeClock.SOWING) {
      return crop.flatMap(Crop::transplant)
          .map(rule -> Size.of(rule.areaCm2()))
          .orElse(Size.none("crops.yaml sets no ready_to_transplant for " + name));
    }
    Optional<Harvest> harvest = crop.flatMap(Crop::harvest);
    if (harvest.isEmpty()) {
      return Size.none("crops.yaml sets no harvest for " + name);
    }
    Optional<Grader> grader = Optional.ofNullable(graders.get(name));
    return grader.isPresent()
        ? weighed.computeIfAbsent(
            new Weighed(name, plant.planting().variety(), harvest.get().headWeightG()),
            w -> weighed(grader.get(), w.variety(), w.headWeightG()))
        : crop.flatMap(Crop::curve)
            .map(curve -> Size.of(area(curve, harvest.get().windowFromDat())))
            .orElse(
                Size.none(
                    "the harvest is set as a weight; an area for it needs a grader or a"
                        + " growth_curve"));
  }

  private static double area(CropCurve curve, double dat) {
    return new GrowthCurve(CurveModel.valueOf(curve.model().name()), curve.parameters())
        .areaCm2(dat);
  }

  /** Returns the area at which the median plant weighs so much. */
  private static Size weighed(Grader grader, String variety, double weightG) {
    Optional<RegimeFit> open = grader.fit(Regime.OPEN);
    if (open.isEmpty()) {
      return Size.none("the grader tells no open plants");
    }
    double small = 0;
    double large = Math.log(1e5);
    Optional<Prediction> most = open.get().predict(traits(grader, variety, large));
    if (most.isEmpty() || !(most.get().medianG() > weightG)) {
      return Size.none("the grader tells no area for " + grams(weightG));
    }
    while (large - small > STEP) {
      double middle = (small + large) / 2;
      double weight = open.get().predict(traits(grader, variety, middle)).orElseThrow().medianG();
      if (weight < weightG) {
        small = middle;
      } else {
        large = middle;
      }
    }
    Traits found = traits(grader, variety, large);
    return open.get()
        .numbers()
        .validity()
        .beyond(found)
        .map(beyond -> Size.none("no weighing reaches " + grams(weightG) + ": " + beyond))
        .orElse(Size.of(Math.exp(large)));
  }

  private static String grams(double weightG) {
    return String.format(Locale.ROOT, "%.0f g", weightG);
  }

  private static Traits traits(Grader grader, String variety, double lnArea) {
    OptionalDouble area = OptionalDouble.of(Math.exp(lnArea));
    Optional<HeightFit> height = grader.height();
    OptionalDouble top =
        height.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                height.get().topScaleMm() * Math.exp(height.get().exponent() * lnArea));
    return new Traits(variety, area, top, area);
  }
}
