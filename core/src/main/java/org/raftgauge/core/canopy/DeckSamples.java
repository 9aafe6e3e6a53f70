// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.ArrayList;
import java.util.List;
import org.raftgauge.core.book.CornerMarkers;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.PointMm;
import org.raftgauge.core.book.TagPlace;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;

/** Samples of the light on a deck: its board and the white of its markers. */
final class DeckSamples {
  /** Pixels looked at, spread over the board. */
  private static final int SAMPLES = 40_000;

  private static final double MOST_LIGHT = 0.985;
  private static final double LEAST_LIGHT = 0.004;

  private final DeckImage deck;
  private final Layout layout;

  DeckSamples(DeckImage deck, Layout layout) {
    this.deck = deck;
    this.layout = layout;
  }

  /**
   * Samples (u, v, ln R/G, ln B/G, ln G) of the deck inside the board, off the markers and the tag.
   */
  List<double[]> board() {
    List<double[]> samples = new ArrayList<>();
    int width = deck.image().width();
    int height = deck.image().height();
    int step = Math.max(1, (int) Math.sqrt((double) width * height / SAMPLES));
    for (int y = step / 2; y < height; y += step) {
      for (int x = step / 2; x < width; x += step) {
        PointMm at = deck.toMm(new PointPx(x, y));
        if (deck.seen(x, y) && onBareBoard(at)) {
          sample(x, y, samples);
        }
      }
    }
    return samples;
  }

  private boolean onBareBoard(PointMm at) {
    double rim = 0.01 * layout.board().widthMm();
    boolean inside =
        at.xMm() > rim
            && at.yMm() > rim
            && at.xMm() < layout.board().widthMm() - rim
            && at.yMm() < layout.board().lengthMm() - rim;
    return inside && !onMark(at);
  }

  private boolean onMark(PointMm at) {
    for (PointMm c : layout.markers().map(CornerMarkers::centresMm).orElse(List.of())) {
      double reach = 0.7 * layout.markers().orElseThrow().sideMm();
      if (Math.abs(at.xMm() - c.xMm()) < reach && Math.abs(at.yMm() - c.yMm()) < reach) {
        return true;
      }
    }
    TagPlace tag = layout.tag().orElse(new TagPlace(-1e4, -1e4, 1));
    double reach = 0.7 * tag.sideMm();
    return Math.abs(at.xMm() - tag.xMm()) < reach && Math.abs(at.yMm() - tag.yMm()) < reach;
  }

  /**
   * The same of the ring of white that a marker keeps about itself, one cell (an eighth of its
   * side) wide.
   */
  List<double[]> markerWhite() {
    List<double[]> samples = new ArrayList<>();
    if (layout.markers().isEmpty()) {
      return samples;
    }
    double side = layout.markers().get().sideMm();
    double ring = side * (0.5 + 1 / 16.0);
    for (PointMm c : layout.markers().get().centresMm()) {
      for (double along = -ring; along <= ring; along += deck.mmPerPx()) {
        ringSample(c.xMm() + along, c.yMm() - ring, samples);
        ringSample(c.xMm() + along, c.yMm() + ring, samples);
        ringSample(c.xMm() - ring, c.yMm() + along, samples);
        ringSample(c.xMm() + ring, c.yMm() + along, samples);
      }
    }
    if (samples.isEmpty()) {
      return samples;
    }
    double bright = quantile(samples, 4, 0.8);
    return samples.stream().filter(s -> s[4] > bright - 0.25).toList();
  }

  private void ringSample(double xMm, double yMm, List<double[]> samples) {
    PointPx p = deck.toPx(new PointMm(xMm, yMm));
    int x = (int) Math.round(p.xPx());
    int y = (int) Math.round(p.yPx());
    if (x >= 0
        && y >= 0
        && x < deck.image().width()
        && y < deck.image().height()
        && deck.seen(x, y)) {
      sample(x, y, samples);
    }
  }

  private void sample(int x, int y, List<double[]> samples) {
    int i = 3 * (y * deck.image().width() + x);
    byte[] rgb = deck.image().rgb();
    double r = Srgb.linear(rgb[i]);
    double g = Srgb.linear(rgb[i + 1]);
    double b = Srgb.linear(rgb[i + 2]);
    double most = Math.max(r, Math.max(g, b));
    boolean halfClipped = most > MOST_LIGHT && Math.min(r, Math.min(g, b)) < MOST_LIGHT;
    if (halfClipped || most < LEAST_LIGHT) {
      return;
    }
    double floor = 0.001;
    samples.add(
        new double[] {
          2.0 * x / deck.image().width() - 1,
          2.0 * y / deck.image().height() - 1,
          Math.log((r + floor) / (g + floor)),
          Math.log((b + floor) / (g + floor)),
          Math.log(g + floor)
        });
  }

  /** Returns a quantile of a column of samples. */
  static double quantile(List<double[]> samples, int column, double share) {
    return Quantile.of(samples.stream().mapToDouble(s -> s[column]).toArray(), share);
  }
}
