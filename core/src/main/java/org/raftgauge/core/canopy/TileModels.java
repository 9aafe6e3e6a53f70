// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/** The colour model of each small square of a deck picture, that of its middle. Read only. */
final class TileModels {
  private final DeckImage deck;
  private final int across;
  private final LeafModel[] models;

  private TileModels(DeckImage deck, int across, LeafModel[] models) {
    this.deck = deck;
    this.across = across;
    this.models = models;
  }

  static TileModels of(DeckImage deck, ModelMap map) {
    int across = (deck.image().width() + TileGains.TILE - 1) >> TileGains.BITS;
    int down = (deck.image().height() + TileGains.TILE - 1) >> TileGains.BITS;
    LeafModel[] models = new LeafModel[across * down];
    for (int i = 0; i < models.length; i++) {
      double x = (i % across + 0.5) * TileGains.TILE;
      double y = (Math.floorDiv(i, across) + 0.5) * TileGains.TILE;
      models[i] = map.at(deck.toMm(new PointPx(x, y)));
    }
    return new TileModels(deck, across, models);
  }

  LeafModel at(int x, int y) {
    return models[(y >> TileGains.BITS) * across + (x >> TileGains.BITS)];
  }

  /** Says whether a model holds anywhere. */
  boolean has(LeafModel model) {
    for (LeafModel m : models) {
      if (m == model) {
        return true;
      }
    }
    return false;
  }

  /** Says of each pixel whether the deck is seen there and judged by a model. */
  boolean[] seenBy(LeafModel model) {
    int width = deck.image().width();
    boolean[] by = new boolean[width * deck.image().height()];
    for (int y = 0; y < deck.image().height(); y++) {
      for (int left = 0; left < width; left += TileGains.TILE) {
        int right = at(left, y) == model ? Math.min(width, left + TileGains.TILE) : left;
        for (int x = left; x < right; x++) {
          by[y * width + x] = deck.seen(x, y);
        }
      }
    }
    return by;
  }

  /** Scores each pixel that is seen by the model of its square. */
  float[] scores(float[][] even) {
    int width = deck.image().width();
    float[] scores = new float[width * deck.image().height()];
    for (int y = 0; y < deck.image().height(); y++) {
      for (int left = 0; left < width; left += TileGains.TILE) {
        ColourTable table = at(left, y).table();
        for (int x = left, i = y * width + left;
            x < Math.min(width, left + TileGains.TILE);
            x++, i++) {
          if (deck.seen(x, y)) {
            scores[i] = table.score(even[0][i], even[1][i], even[2][i]);
          }
        }
      }
    }
    return scores;
  }
}
