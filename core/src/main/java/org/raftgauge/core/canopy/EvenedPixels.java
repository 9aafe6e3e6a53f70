// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;

/**
 * The pixels of a deck picture in the light that colour models judge them in: linear, without veil,
 * calmed by {@link Binomial}, divided by the light on the board.
 */
public final class EvenedPixels {
  private final int width;
  private final int height;
  private final EvenedLight light;
  private final float[][] calm;

  private EvenedPixels(DeckImage deck, EvenedLight light, float[][] rgb) {
    this.width = deck.image().width();
    this.height = deck.image().height();
    this.light = light;
    this.calm = new float[3][];
    for (int c = 0; c < 3; c++) {
      calm[c] = Binomial.blur(rgb[c], width, height);
    }
  }

  /**
   * Evens a board's deck picture.
   *
   * @param deck the picture
   * @param light the light on it
   * @return its pixels
   */
  public static EvenedPixels ofBoard(DeckImage deck, EvenedLight light) {
    return new EvenedPixels(deck, light, Veil.over(deck).lifted());
  }

  /**
   * Evens a picture of open ground, whose light is taken as the camera gives it.
   *
   * @param deck the picture
   * @return its pixels
   */
  public static EvenedPixels ofGround(DeckImage deck) {
    return new EvenedPixels(deck, EvenedLight.ofCamera(), planes(deck.image().rgb(), linear(0)));
  }

  /**
   * Returns a pixel's colour.
   *
   * @param x column
   * @param y row
   * @return red, green, blue; 1 is white
   */
  public float[] at(int x, int y) {
    float[] rgb = light.gainsAt(x, y, width, height);
    int i = y * width + x;
    for (int c = 0; c < 3; c++) {
      rgb[c] *= calm[c][i];
    }
    return rgb;
  }

  /** Returns the linear light of each code value, less a veil. */
  static float[] linear(float veil) {
    float[] light = new float[256];
    for (int v = 0; v < light.length; v++) {
      light[v] = Math.max(0, Srgb.linear((byte) v) - veil);
    }
    return light;
  }

  /** Splits interleaved code values into three planes of their light. */
  static float[][] planes(byte[] bytes, float[] light) {
    float[][] rgb = new float[3][bytes.length / 3];
    float[] red = rgb[0];
    float[] green = rgb[1];
    float[] blue = rgb[2];
    for (int i = 0, at = 0; i < red.length; i++, at += 3) {
      red[i] = light[bytes[at] & 0xff];
      green[i] = light[bytes[at + 1] & 0xff];
      blue[i] = light[bytes[at + 2] & 0xff];
    }
    return rgb;
  }
}
