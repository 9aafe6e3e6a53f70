// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import org.raftgauge.core.canopy.Canopy;
import org.raftgauge.core.canopy.Cielab;
import org.raftgauge.core.canopy.TileGains;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;

/**
 * The mean colour of a plant's tissue in evened light, of fully covered pixels only.
 *
 * <p>Pale: yellowed, L* over 60 with b* over 45 while a* is over -22; dead: brown, a* over -2 with
 * hue between red and yellow and L* under 55. Working values of our own (no source), on a scale
 * where the board's white is L* 100.
 */
final class SiteColour {
  /** Pixels looked at of a plant's box: some thousands tell a mean and shares well enough. */
  private static final double SAMPLES = 8_000;

  private final DeckImage deck;
  private final Canopy canopy;
  private final TileGains gains;

  SiteColour(DeckImage deck, Canopy canopy) {
    this.deck = deck;
    this.canopy = canopy;
    this.gains = TileGains.of(canopy.light(), canopy.width(), canopy.height());
  }

  SiteMeasure.Colour of(int site, short[] owner, int[] box) {
    double[] sum = new double[6];
    byte[] coverage = canopy.coverage();
    int step = (int) Math.max(1, Math.sqrt((box[2] - box[0]) * (box[3] - box[1]) / SAMPLES));
    for (int y = box[1]; y <= box[3]; y += step) {
      int row = y * canopy.width();
      for (int x = box[0]; x <= box[2]; x += step) {
        if (owner[row + x] == site && coverage[row + x] == (byte) 255) {
          add(sum, evened(x, y));
        }
      }
    }
    if (sum[0] == 0) {
      add(sum, evened((box[0] + box[2]) / 2, (box[1] + box[3]) / 2));
    }
    double n = sum[0];
    return new SiteMeasure.Colour(sum[1] / n, sum[2] / n, sum[3] / n, sum[4] / n, sum[5] / n);
  }

  private static void add(double[] sum, Cielab c) {
    sum[0]++;
    sum[1] += c.l();
    sum[2] += c.a();
    sum[3] += c.b();
    sum[4] += c.l() > 60 && c.b() > 45 && c.a() > -22 ? 1 : 0;
    sum[5] += c.a() > -2 && c.b() > Math.abs(c.a()) && c.l() < 55 ? 1 : 0;
  }

  /** Returns a pixel's colour in evened light. */
  Cielab evened(int x, int y) {
    byte[] rgb = deck.image().rgb();
    int i = 3 * (y * canopy.width() + x);
    return Cielab.ofLinear(
        Srgb.linear(rgb[i]) * gains.at(0, x, y),
        Srgb.linear(rgb[i + 1]) * gains.at(1, x, y),
        Srgb.linear(rgb[i + 2]) * gains.at(2, x, y));
  }
}
