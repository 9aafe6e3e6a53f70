// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.plane.DeckImage;

/** The smallest upright part of a deck picture that holds all the photo shows of it. */
final class SeenBox {
  private final DeckImage deck;
  private final int left;
  private final int top;
  private final int width;
  private final int height;

  private SeenBox(DeckImage deck, int[] bounds) {
    this.deck = deck;
    this.left = bounds[0];
    this.top = bounds[1];
    this.width = Math.max(0, bounds[2] - bounds[0] + 1);
    this.height = Math.max(0, bounds[3] - bounds[1] + 1);
  }

  static SeenBox of(DeckImage deck) {
    int[] bounds = {deck.image().width(), deck.image().height(), -1, -1};
    for (int y = 0; y < deck.image().height(); y++) {
      for (int x = 0; x < deck.image().width(); x++) {
        if (deck.seen(x, y)) {
          bounds[0] = Math.min(bounds[0], x);
          bounds[1] = Math.min(bounds[1], y);
          bounds[2] = Math.max(bounds[2], x);
          bounds[3] = Math.max(bounds[3], y);
        }
      }
    }
    return new SeenBox(deck, bounds);
  }

  boolean isEmpty() {
    return width == 0 || height == 0;
  }

  /** Returns its first column in the deck picture. */
  int left() {
    return left;
  }

  /** Returns its first row in the deck picture. */
  int top() {
    return top;
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  /** Returns the box's code values. */
  byte[] rgb() {
    byte[] rgb = new byte[3 * width * height];
    for (int y = 0; y < height; y++) {
      int from = 3 * ((top + y) * deck.image().width() + left);
      System.arraycopy(deck.image().rgb(), from, rgb, 3 * y * width, 3 * width);
    }
    return rgb;
  }

  /** Says of each of the box's pixels whether the photo shows it. */
  boolean[] seen() {
    boolean[] seen = new boolean[width * height];
    for (int i = 0; i < seen.length; i++) {
      seen[i] = deck.seen(left + i % width, top + i / width);
    }
    return seen;
  }

  /** Writes shares of the box's pixels, 0..1, as coverage of the whole deck picture. */
  void write(float[] share, byte[] coverage) {
    for (int i = 0; i < share.length; i++) {
      int at = (top + i / width) * deck.image().width() + left + i % width;
      coverage[at] = (byte) Math.round(255 * share[i]);
    }
  }
}
