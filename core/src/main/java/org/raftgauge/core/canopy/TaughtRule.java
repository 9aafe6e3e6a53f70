// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.book.TaughtColour;
import org.raftgauge.core.book.Tissue;

/** What a taught colour model says of a colour: how probable each tissue is. */
public final class TaughtRule {
  /**
   * Leaf for sure scores this: the adaptive threshold, half of the usual leaf's score and at least
   * 0.75, then lies at a probability of one half.
   */
  private static final double SURE = 1.5;

  private static final double LEAST_ODDS = 0.005;

  private final ColourTerms terms;
  private final Tissue[] tissues;
  private final double[][] weights;

  /**
   * Sets up a model.
   *
   * @param model as its file says it
   */
  public TaughtRule(TaughtColour model) {
    this.terms = new ColourTerms(model.least(), model.most());
    this.tissues = model.weights().keySet().toArray(Tissue[]::new);
    this.weights =
        model.weights().values().stream()
            .map(w -> w.stream().mapToDouble(Double::doubleValue).toArray())
            .toArray(double[][]::new);
  }

  /**
   * Returns the probability of leaf of any kind.
   *
   * @param coordinates of the colour, see {@link ColourTerms}
   * @return 0..1
   */
  public double leaf(double[] coordinates) {
    double[] p = shares(coordinates);
    double leaf = 0;
    for (int t = 0; t < p.length; t++) {
      leaf += tissues[t].isLeaf() ? p[t] : 0;
    }
    return leaf;
  }

  /**
   * Returns the most probable tissue.
   *
   * @param coordinates of the colour, see {@link ColourTerms}
   * @return the tissue
   */
  public Tissue likeliest(double[] coordinates) {
    double[] p = shares(coordinates);
    int best = 0;
    for (int t = 1; t < p.length; t++) {
      best = p[t] > p[best] ? t : best;
    }
    return tissues[best];
  }

  /** Scores a colour as the built-in rules do. */
  double score(double red, double green, double blue) {
    float[] rgb = {(float) red, (float) green, (float) blue};
    return SURE * leaf(ColourTerms.coordinates(rgb));
  }

  /** Returns the probability of leaf that a score stands for. */
  static float leafOfScore(float score) {
    return score / (float) SURE;
  }

  /**
   * Returns how strongly a probability of leaf speaks for it on open ground: its log odds, within
   * 5.3 both ways.
   *
   * @param leaf probability, 0..1
   * @return log odds
   */
  public static double odds(double leaf) {
    return Math.log((leaf + LEAST_ODDS) / (1 - leaf + LEAST_ODDS));
  }

  private double[] shares(double[] coordinates) {
    double[] z = new double[TaughtColour.COLOUR_TERMS];
    terms.write(coordinates, z);
    double[] p = new double[weights.length];
    double top = Double.NEGATIVE_INFINITY;
    for (int t = 0; t < p.length; t++) {
      for (int k = 0; k < z.length; k++) {
        p[t] += weights[t][k] * z[k];
      }
      top = Math.max(top, p[t]);
    }
    double sum = 0;
    for (int t = 0; t < p.length; t++) {
      p[t] = Math.exp(p[t] - top);
      sum += p[t];
    }
    for (int t = 0; t < p.length; t++) {
      p[t] /= sum;
    }
    return p;
  }
}
