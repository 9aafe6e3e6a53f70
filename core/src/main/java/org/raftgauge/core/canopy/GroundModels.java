// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/** The colour model at each pixel of open ground, and what taught ones make of it. */
final class GroundModels {
  /** Places this near, px, share a model. */
  private static final int TILE = 8;

  private final int tilesAcross;
  private final int width;
  private final LeafModel[] models;
  private final float[] odds;
  private boolean taught;

  private GroundModels(SeenBox box) {
    this.width = box.width();
    this.tilesAcross = (box.width() + TILE - 1) / TILE;
    this.models = new LeafModel[tilesAcross * ((box.height() + TILE - 1) / TILE)];
    this.odds = new float[box.width() * box.height()];
  }

  static GroundModels of(DeckImage deck, SeenBox box, ModelMap map) {
    GroundModels own = new GroundModels(box);
    for (int t = 0; t < own.models.length; t++) {
      double x = box.left() + TILE * (t % own.tilesAcross + 0.5);
      double y = box.top() + TILE * (Math.floorDiv(t, own.tilesAcross) + 0.5);
      LeafModel model = map.at(deck.toMm(new PointPx(x, y)));
      own.models[t] = model.knowsOpenGround() ? model : LeafModel.GREEN_LEAF;
      own.taught |= own.models[t] != LeafModel.GREEN_LEAF;
    }
    if (own.taught) {
      own.read(EvenedPixels.ofGround(deck), box);
    }
    return own;
  }

  private void read(EvenedPixels pixels, SeenBox box) {
    for (int i = 0; i < odds.length; i++) {
      LeafModel model = modelAt(i);
      if (model != LeafModel.GREEN_LEAF) {
        float[] rgb = pixels.at(box.left() + i % width, box.top() + i / width);
        float score = model.table().score(rgb[0], rgb[1], rgb[2]);
        odds[i] = (float) TaughtRule.odds(TaughtRule.leafOfScore(score));
      }
    }
  }

  private LeafModel modelAt(int i) {
    return models[i / width / TILE * tilesAcross + i % width / TILE];
  }

  /** Decides anew, by their networks, the shares of leaf of pixels whose models were taught. */
  void decide(float[] share, SeenBox box, GroundEvidence evidence) {
    if (!taught) {
      return;
    }
    boolean[] wanted = box.seen();
    for (int i = 0; i < wanted.length; i++) {
      wanted[i] &= modelAt(i) != LeafModel.GREEN_LEAF;
    }
    new GroundSurroundings(box, evidence, odds)
        .each(
            wanted,
            (i, terms) -> {
              GroundNetwork network = modelAt(i).ground().orElseThrow();
              share[i] = (float) Sigmoid.of(network.score(terms));
            });
  }
}
