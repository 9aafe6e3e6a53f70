// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Optional;
import org.raftgauge.core.pixels.RgbImage;

/**
 * All the pixels of a photo of which {@link DecodedPhoto#image()} is an average: for the few things
 * that are too small there. Read only, until they are let go.
 */
public final class FinePhoto {
  private Optional<StoredPixels> stored;
  private final Upright upright;
  private final int parts;

  FinePhoto(StoredPixels stored, Upright upright, int parts) {
    this.stored = Optional.of(stored);
    this.upright = upright;
    this.parts = parts;
  }

  StoredPixels stored() {
    return stored.orElseThrow();
  }

  /** Lets the pixels go, which are most of what a photo takes: none can be read afterwards. */
  public void letGo() {
    stored = Optional.empty();
  }

  /** Returns the width of all the pixels. */
  public int widthPx() {
    return upright.width();
  }

  /** Returns the height of all the pixels. */
  public int heightPx() {
    return upright.height();
  }

  /** Returns how many pixels, each way, were averaged to one of the picture's. */
  public int parts() {
    return parts;
  }

  /**
   * Cuts out a part in full detail.
   *
   * @param left column of the averaged picture, in it
   * @param top row of the averaged picture, in it
   * @param width columns of the averaged picture, at least 1, all in it
   * @param height rows of the averaged picture, at least 1, all in it
   * @return the part, upright, {@code parts} times as wide and high
   */
  public RgbImage cut(int left, int top, int width, int height) {
    StoredPixels all = stored();
    int across = width * parts;
    int down = height * parts;
    byte[] rgb = new byte[3 * across * down];
    int to = 0;
    for (int y = 0; y < down; y++) {
      for (int x = 0; x < across; x++) {
        int colour = all.rgbAt(upright.storedAt(left * parts + x, top * parts + y));
        rgb[to++] = (byte) (colour >> 16);
        rgb[to++] = (byte) (colour >> 8);
        rgb[to++] = (byte) colour;
      }
    }
    return RgbImage.of(across, down, rgb);
  }
}
