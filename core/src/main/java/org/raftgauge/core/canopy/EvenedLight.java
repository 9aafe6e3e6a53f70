// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * The light on a board: what a white surface at each place of the deck picture would send to the
 * camera, per channel.
 *
 * <p>Log-linear surfaces of second order for the two colour balances, a constant or a second-order
 * surface for the strength.
 */
public final class EvenedLight {
  private final LightSource source;
  private final double[] redOverGreen;
  private final double[] blueOverGreen;
  private final double[] green;
  private final boolean boardIsBright;
  private final double boardGreen;

  EvenedLight(LightSource source, double[][] lnSurfaces, double boardGreen, boolean boardIsBright) {
    this.source = source;
    this.redOverGreen = lnSurfaces[0];
    this.blueOverGreen = lnSurfaces[1];
    this.green = lnSurfaces[2];
    this.boardGreen = boardGreen;
    this.boardIsBright = boardIsBright;
  }

  /** Returns the camera's own white balance taken as it is, white at 0.8 of full scale. */
  public static EvenedLight ofCamera() {
    double[][] flat = {Surface.flat(0), Surface.flat(0), Surface.flat(Math.log(0.8))};
    return new EvenedLight(LightSource.CAMERA, flat, 0.8, false);
  }

  /** Returns what it was evened on. */
  public LightSource source() {
    return source;
  }

  /** Says whether the board is bright enough to serve as the white itself. */
  public boolean boardIsBright() {
    return boardIsBright;
  }

  /** Returns the board's usual green light, linear, 0 to 1. */
  public double boardGreen() {
    return boardGreen;
  }

  /**
   * Returns how far the light is from the camera's neutral: the larger of |ln(R/G)| and |ln(B/G)|
   * of the board at its middle.
   *
   * @return 0 for neutral; 0.3 is a warm evening; past 1.4 the channels differ by more than four
   *     times
   */
  public double cast() {
    return Math.max(Math.abs(redOverGreen[0]), Math.abs(blueOverGreen[0]));
  }

  /**
   * Returns how far the colour balances of two lights are apart at the middle of their boards.
   *
   * @param other another light
   * @return the larger difference of ln(R/G) and of ln(B/G)
   */
  public double balanceFrom(EvenedLight other) {
    return Math.max(
        Math.abs(redOverGreen[0] - other.redOverGreen[0]),
        Math.abs(blueOverGreen[0] - other.blueOverGreen[0]));
  }

  /**
   * Returns how much weaker green is than the stronger of red and blue, ln: lamps for growth starve
   * it.
   *
   * @return 0 or less where green is the strongest
   */
  public double greenStarvation() {
    return Math.max(redOverGreen[0], blueOverGreen[0]);
  }

  /**
   * Writes what to multiply linear light with at a place: after it, white is 1 in each channel.
   *
   * @param u place along x, -1 to 1 from side to side of the deck picture
   * @param v place along y, -1 to 1
   * @param gains receives red, green, blue
   */
  void gains(double u, double v, float[] gains) {
    double g = Surface.at(green, u, v);
    gains[0] = (float) Math.exp(-g - Surface.at(redOverGreen, u, v));
    gains[1] = (float) Math.exp(-g);
    gains[2] = (float) Math.exp(-g - Surface.at(blueOverGreen, u, v));
  }

  /**
   * Returns what to multiply linear light with at a pixel of the deck picture: after it, white is 1
   * in each channel.
   *
   * @param x column
   * @param y row
   * @param width of the deck picture, px
   * @param height of the deck picture, px
   * @return for red, green, blue
   */
  public float[] gainsAt(int x, int y, int width, int height) {
    float[] gains = new float[3];
    gains(2.0 * x / width - 1, 2.0 * y / height - 1, gains);
    return gains;
  }
}
