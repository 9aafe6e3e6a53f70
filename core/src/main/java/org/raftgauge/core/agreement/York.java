// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.agreement;

/**
 * The line through points each with its own error in both variables, not correlated.
 *
 * <p>Source: York 1966, Canadian Journal of Physics 44:1079-1086, solved in the form of York and
 * others 2004, American Journal of Physics 72:367-375.
 *
 * @param line the line; standard errors as given by the weights, not scaled by the scatter
 * @param chiSquare weighted sum of squared distances; about {@code n - 2} where the weights are
 *     true
 */
public record York(Line line, double chiSquare) {
  private static final int STEPS = 500;
  private static final double CLOSE = 1e-15;

  /** Points with their weights. */
  private static final class Points {
    private final double[] x;
    private final double[] y;
    private final double[] weightX;
    private final double[] weightY;

    private Points(double[] x, double[] y, double[] weightX, double[] weightY) {
      this.x = x;
      this.y = y;
      this.weightX = weightX;
      this.weightY = weightY;
    }
  }

  /**
   * Fits.
   *
   * @param x values by one way, at least 3
   * @param y values by the other
   * @param weightX inverse error variance of each x, above 0
   * @param weightY inverse error variance of each y, above 0
   * @return the line
   */
  public static York fit(double[] x, double[] y, double[] weightX, double[] weightY) {
    Samples.pairs(x, y, 3);
    Samples.pairs(weightX, weightY, x.length);
    Points points = new Points(x, y, weightX, weightY);
    double slope = Samples.cross(x, y) / Samples.cross(x, x);
    for (int step = 0; step < STEPS; step++) {
      double next = step(points, slope);
      boolean settled = Math.abs(next - slope) <= CLOSE * Math.abs(slope);
      slope = next;
      if (settled) {
        break;
      }
    }
    return atSlope(points, slope);
  }

  private static double[] weights(Points points, double slope) {
    double[] weights = new double[points.x.length];
    for (int i = 0; i < weights.length; i++) {
      double wx = points.weightX[i];
      double wy = points.weightY[i];
      weights[i] = wx * wy / (wx + slope * slope * wy);
    }
    return weights;
  }

  private static double weightedMean(double[] values, double[] weights) {
    double total = 0;
    for (double weight : weights) {
      total += weight;
    }
    return LinearFit.dot(values, weights) / total;
  }

  private static double step(Points points, double slope) {
    double[] w = weights(points, slope);
    double mx = weightedMean(points.x, w);
    double my = weightedMean(points.y, w);
    double top = 0;
    double bottom = 0;
    for (int i = 0; i < w.length; i++) {
      double u = points.x[i] - mx;
      double v = points.y[i] - my;
      double beta = w[i] * (u / points.weightY[i] + slope * v / points.weightX[i]);
      top += w[i] * beta * v;
      bottom += w[i] * beta * u;
    }
    return top / bottom;
  }

  private static York atSlope(Points points, double slope) {
    double[] w = weights(points, slope);
    double mx = weightedMean(points.x, w);
    double my = weightedMean(points.y, w);
    double intercept = my - slope * mx;
    double[] adjusted = new double[w.length];
    double chiSquare = 0;
    double total = 0;
    for (int i = 0; i < w.length; i++) {
      double u = points.x[i] - mx;
      double v = points.y[i] - my;
      adjusted[i] = mx + w[i] * (u / points.weightY[i] + slope * v / points.weightX[i]);
      double off = points.y[i] - slope * points.x[i] - intercept;
      chiSquare += w[i] * off * off;
      total += w[i];
    }
    double centre = weightedMean(adjusted, w);
    double spread = 0;
    for (int i = 0; i < w.length; i++) {
      spread += w[i] * (adjusted[i] - centre) * (adjusted[i] - centre);
    }
    double slopeVariance = 1 / spread;
    double interceptVariance = 1 / total + centre * centre * slopeVariance;
    return new York(
        new Line(slope, intercept, Math.sqrt(slopeVariance), Math.sqrt(interceptVariance)),
        chiSquare);
  }
}
