// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Scores how leaf-like a colour is, in evened light: 0 is the board's own colour, 1 or more is
 * leaf.
 */
interface LeafRule {
  /**
   * Added to each channel before logarithms, in units of white: below about 1 % of white the noise
   * of an 8-bit camera outweighs the colour.
   */
  double FLOOR = 0.012;

  /**
   * Scores a colour.
   *
   * @param red evened linear light, 1 is white
   * @param green evened linear light
   * @param blue evened linear light
   * @return the score
   */
  double score(double red, double green, double blue);

  /**
   * Scores green leaf: {@code ln(G/R) + ln(G/B)}, the log of the excess of green over the board's
   * own balance. It does not change with the strength of the light, so shade does not look like
   * leaf; water-film algae stay under half of a leaf's score.
   */
  static double green(double red, double green, double blue) {
    return 2 * Math.log(green + FLOOR) - Math.log(red + FLOOR) - Math.log(blue + FLOOR);
  }

  /**
   * Scores red, purple or green leaf: the largest of the green score, yellow-red and
   * red-over-green, as long as it is darker than a sunlit stain: red leaf reflects under a third of
   * what a white board does in green light.
   */
  static double redOrGreen(double red, double green, double blue) {
    double u = Math.log(green + FLOOR) - Math.log(red + FLOOR);
    double v = Math.log(green + FLOOR) - Math.log(blue + FLOOR);
    double reddish = Math.max(v - u, -1.3 * u - 0.4 * Math.min(v, 0));
    double dark = Math.max(0, Math.min(1, (0.42 - green) / 0.12));
    return Math.max(u + v, reddish * dark);
  }

  /**
   * Adds to the score of red leaf what darkness on a bright board tells: shade on white foam keeps
   * a tenth of its light and more, red leaf in shade a fiftieth.
   *
   * @param green evened linear green, 1 is white
   * @return 0 for board, 0.5 for what may be shade, to 1.5 for what cannot be
   */
  static double darkness(double green) {
    double shade = Math.max(0, Math.min(1, (0.30 - green) / 0.20));
    double black = Math.max(0, Math.min(1, (0.085 - green) / 0.05));
    return 0.5 * shade + black;
  }
}
