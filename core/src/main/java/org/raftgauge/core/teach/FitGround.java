// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.teach;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.raftgauge.core.book.TaughtGround;
import org.raftgauge.core.canopy.GroundNetwork;
import org.raftgauge.core.canopy.TaughtRule;

/** Fits a model's look at open ground to lessons. */
final class FitGround {
  /**
   * Dice is best where pixels count as leaf from a probability of about half of it on (settled by
   * cross-validation, flat from 0.35 to 0.5).
   */
  private static final double FAVOUR = Math.log(0.57 / 0.43);

  /** Settled by cross-validation by photo, flat within a half. */
  private static final FitNetwork.Size SIZE = new FitNetwork.Size(24, 8000, 1e-4);

  private static final long SEED = 20_263;

  private FitGround() {}

  /**
   * Fits to the pixels of open ground.
   *
   * @param pixels of all lessons
   * @param rule the colours' model
   * @return the look; nothing where no ground with both leaf and other things was taught
   */
  static Optional<TaughtGround> to(List<Lesson.Pixel> pixels, TaughtRule rule) {
    List<Lesson.Pixel> open = pixels.stream().filter(p -> p.ground.length > 0).toList();
    if (open.stream().noneMatch(p -> p.tissue.isLeaf())
        || open.stream().allMatch(p -> p.tissue.isLeaf())) {
      return Optional.empty();
    }
    float[][] x = open.stream().map(p -> terms(p, rule)).toArray(float[][]::new);
    boolean[] leaf = new boolean[x.length];
    double[] weight = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      leaf[i] = open.get(i).tissue.isLeaf();
      weight[i] = open.get(i).weight;
    }
    Cases cases = Cases.of(x, leaf, weight);
    double[][] range = cases.normalise(TaughtGround.MOST);
    FitNetwork fitted = FitNetwork.to(cases, SIZE, SEED);
    List<List<Double>> units = new ArrayList<>();
    for (double[] unit : fitted.units()) {
      units.add(FitColour.rounded(unit));
    }
    double[] output = fitted.output();
    output[output.length - 1] += FAVOUR;
    return Optional.of(
        new TaughtGround(list(range[0]), list(range[1]), units, FitColour.rounded(output)));
  }

  private static float[] terms(Lesson.Pixel pixel, TaughtRule rule) {
    float[] terms = pixel.ground.clone();
    terms[terms.length - 1] = (float) TaughtRule.odds(rule.leaf(pixel.colour));
    return terms;
  }

  private static List<Double> list(double[] values) {
    return DoubleStream.of(values).boxed().toList();
  }

  /** Returns the probability of leaf at a pixel of open ground. */
  static double probability(GroundNetwork network, Lesson.Pixel pixel, TaughtRule rule) {
    return 1 / (1 + Math.exp(FAVOUR - network.score(terms(pixel, rule))));
  }
}
