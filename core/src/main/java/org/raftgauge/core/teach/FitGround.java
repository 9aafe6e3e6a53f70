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

  /** Terms that hardly vary are not blown up. */
  private static final double LEAST_SPREAD = 1e-3;

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
    double[][] range = normalise(x);
    FitNetwork fitted = FitNetwork.to(x, leaf, weight);
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

  /** Brings terms to mean 0 and spread 1, cut at the network's limit; returns mean and spread. */
  private static double[][] normalise(float[][] x) {
    double[][] range = new double[2][TaughtGround.TERMS];
    for (int k = 0; k < TaughtGround.TERMS; k++) {
      double sum = 0;
      double squares = 0;
      for (float[] row : x) {
        sum += row[k];
        squares += (double) row[k] * row[k];
      }
      double mean = sum / x.length;
      double spread = Math.sqrt(Math.max(0, squares / x.length - mean * mean));
      range[0][k] = Math.rint(mean * 1e4) / 1e4;
      range[1][k] = Math.max(LEAST_SPREAD, Math.rint(spread * 1e4) / 1e4);
      for (float[] row : x) {
        double z = (row[k] - range[0][k]) / range[1][k];
        row[k] = (float) Math.max(-TaughtGround.MOST, Math.min(TaughtGround.MOST, z));
      }
    }
    return range;
  }

  private static List<Double> list(double[] values) {
    return DoubleStream.of(values).boxed().toList();
  }

  /** Returns the probability of leaf at a pixel of open ground. */
  static double probability(GroundNetwork network, Lesson.Pixel pixel, TaughtRule rule) {
    return 1 / (1 + Math.exp(FAVOUR - network.score(terms(pixel, rule))));
  }
}
