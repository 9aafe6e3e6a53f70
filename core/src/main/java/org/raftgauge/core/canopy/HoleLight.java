// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;
import java.util.List;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.plane.DeckImage;

/**
 * Shows the holes of a deck as if all lay in one light.
 *
 * <p>Plugs are told from dead leaf, and their colour from leaf's, by how bright they are. A sun
 * patch brightens a plug threefold, and the board about its hole alike: that board is the measure.
 */
final class HoleLight {
  /** The board is looked at between these radii of the hole. */
  private static final double FROM = 1.25;

  private static final double TO = 2;

  /** Light is levelled within this radius: the layout's hole may be too small. */
  private static final double WITHIN = 1.1;

  /** What scores more may be leaf. */
  private static final float MOST_SCORE = 0.35f;

  /** Where the sun reaches this share of the board about a hole it may reach into the hole. */
  private static final double LIT = 0.1;

  /** A board must show in this share of the ring. */
  private static final double LEAST_SHARE = 0.25;

  /** Plugs of one raft differ by as much: less is no sun patch (working value). */
  private static final double LEAST_TIMES = 1.4;

  /** Sun outshines shade by less; what does more about a hole is no board. */
  private static final double MOST_TIMES = 10;

  private final DeckImage deck;
  private final float[][] even;
  private final float[] scores;
  private final double radiusPx;

  private HoleLight(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    this.deck = deck;
    this.even = even;
    this.scores = scores;
    this.radiusPx = 0.5 * layout.grid().holeMm() / deck.mmPerPx();
  }

  /**
   * Levels the light in the holes.
   *
   * @param deck the deck picture
   * @param layout its layout
   * @param even three planes of evened light
   * @param scores of the same pixels
   * @return the planes, the holes as bright as in the usual hole's light; the same planes where the
   *     light is even, and on trays, whose cells have no board about them
   */
  static float[][] level(DeckImage deck, Layout layout, float[][] even, float[] scores) {
    return layout.grid().close()
        ? even
        : new HoleLight(deck, layout, even, scores).level(layout.grid().sites(), layout);
  }

  private float[][] level(List<SiteId> sites, Layout layout) {
    PointPx[] holes =
        sites.stream().map(s -> deck.toPx(layout.grid().centre(s))).toArray(PointPx[]::new);
    double[] light = Arrays.stream(holes).mapToDouble(this::boardAbout).toArray();
    double[] told = Arrays.stream(light).filter(l -> l > 0).toArray();
    if (told.length == 0) {
      return even;
    }
    double usual = Quantile.of(told, 0.5);
    float[][] level = even;
    for (int s = 0; s < holes.length; s++) {
      double times = Math.max(light[s] / usual, usual / light[s]);
      if (times > LEAST_TIMES && times < MOST_TIMES) {
        level = level == even ? copy() : level;
        dim(level, holes[s], (float) (usual / light[s]));
      }
    }
    return level;
  }

  private float[][] copy() {
    return new float[][] {even[0].clone(), even[1].clone(), even[2].clone()};
  }

  /** Returns the light of the board about a hole, 0 where it hardly shows. */
  private double boardAbout(PointPx hole) {
    int[] box = box(hole, TO * radiusPx);
    int across = Math.max(0, box[2] - box[0] + 1); // none where the hole lies off the picture
    double[] light = new double[across * Math.max(0, box[3] - box[1] + 1)];
    int all = 0;
    int n = 0;
    for (int y = box[1]; y <= box[3]; y++) {
      for (int x = box[0]; x <= box[2]; x++) {
        double radii = radii(hole, x, y);
        if (radii > FROM && radii < TO) {
          int i = y * deck.image().width() + x;
          all++;
          if (scores[i] < MOST_SCORE && deck.seen(x, y)) {
            light[n++] = PlugLight.luminance(even, i);
          }
        }
      }
    }
    return n == 0 || n < LEAST_SHARE * all ? 0 : Quantile.of(Arrays.copyOf(light, n), 1 - LIT);
  }

  private void dim(float[][] level, PointPx hole, float times) {
    int[] box = box(hole, WITHIN * radiusPx);
    for (int y = box[1]; y <= box[3]; y++) {
      for (int x = box[0]; x <= box[2]; x++) {
        if (radii(hole, x, y) < WITHIN) {
          int i = y * deck.image().width() + x;
          for (float[] plane : level) {
            plane[i] *= times;
          }
        }
      }
    }
  }

  private double radii(PointPx hole, int x, int y) {
    double dx = x - hole.xPx();
    double dy = y - hole.yPx();
    return Math.sqrt(dx * dx + dy * dy) / radiusPx;
  }

  /** Left, top, right and bottom of a square about a hole, in the picture. */
  private int[] box(PointPx hole, double reach) {
    return new int[] {
      (int) Math.max(0, hole.xPx() - reach),
      (int) Math.max(0, hole.yPx() - reach),
      (int) Math.max(-1, Math.min(deck.image().width() - 1.0, hole.xPx() + reach)),
      (int) Math.max(-1, Math.min(deck.image().height() - 1.0, hole.yPx() + reach))
    };
  }
}
