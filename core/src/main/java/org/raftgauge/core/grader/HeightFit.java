// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.agreement.LinearFit;
import org.raftgauge.core.book.HeightModel;

/**
 * Canopy height from area, fitted to measured top heights: {@code top = topScaleMm * areaCm2 ^
 * exponent} by least squares of logarithms, closed plants included by the area that they show.
 *
 * @param topScaleMm mm
 * @param exponent 0..2
 * @param exponentSe its standard error
 * @param sdLn spread of single plants, of ln(height)
 * @param meanToTop mean height of the top surface over top height
 * @param meanToTopSe its standard error
 * @param meanToTopMeasured whether it was measured; else it is a guess, from a cone (1/3) to a dome
 *     (2/3)
 * @param heights number of top heights
 */
public record HeightFit(
    double topScaleMm,
    double exponent,
    double exponentSe,
    double sdLn,
    double meanToTop,
    double meanToTopSe,
    boolean meanToTopMeasured,
    int heights) {
  private static final int FEWEST = 8;
  private static final int FEWEST_MEANS = 5;

  /** Mean over top of a shape between cone (1/3) and half ellipsoid (2/3). */
  private static final double GUESS = 0.5;

  /** Standard deviation of a value that may lie anywhere between 1/3 and 2/3. */
  private static final double GUESS_SE = 1 / (3 * Math.sqrt(12));

  /**
   * A plant whose height was measured.
   *
   * @param areaCm2 projected area, cm2, above 0
   * @param topHeightMm height of its top, mm, above 0
   * @param meanHeightMm mean height of its top surface, mm, where measured (by stereo or a depth
   *     camera)
   */
  public record Sample(double areaCm2, double topHeightMm, OptionalDouble meanHeightMm) {}

  /**
   * Fits.
   *
   * @param samples plants of one crop
   * @return the fit; nothing with fewer than 8 plants or where all are of one size
   */
  public static Optional<HeightFit> fit(List<Sample> samples) {
    if (samples.size() < FEWEST) {
      return Optional.empty();
    }
    double[][] design =
        samples.stream().map(s -> new double[] {1, Math.log(s.areaCm2())}).toArray(double[][]::new);
    double[] y = samples.stream().mapToDouble(s -> Math.log(s.topHeightMm())).toArray();
    try {
      LinearFit line = LinearFit.of(design, y);
      double exponent = Math.max(0, Math.min(2, line.coefficients()[1]));
      return Optional.of(
          withShape(
              samples,
              new HeightFit(
                  Math.exp(line.coefficients()[0]),
                  exponent,
                  line.standardErrors()[1],
                  line.residualSd(),
                  GUESS,
                  GUESS_SE,
                  false,
                  samples.size())));
    } catch (IllegalArgumentException oneSize) {
      return Optional.empty();
    }
  }

  private static HeightFit withShape(List<Sample> samples, HeightFit guessed) {
    List<Double> ratios = new ArrayList<>();
    for (Sample sample : samples) {
      sample.meanHeightMm().ifPresent(mean -> ratios.add(mean / sample.topHeightMm()));
    }
    int n = ratios.size();
    if (n < FEWEST_MEANS) {
      return guessed;
    }
    double mean = ratios.stream().mapToDouble(r -> r).average().orElseThrow();
    double squares = ratios.stream().mapToDouble(r -> (r - mean) * (r - mean)).sum();
    return new HeightFit(
        guessed.topScaleMm(),
        guessed.exponent(),
        guessed.exponentSe(),
        guessed.sdLn(),
        Math.min(1, mean),
        Math.sqrt(squares / (n - 1) / n),
        true,
        guessed.heights());
  }

  /** Returns the model for {@code crops.yaml}: mean height from area. */
  public HeightModel model() {
    return new HeightModel(topScaleMm * meanToTop, exponent, meanToTop);
  }
}
