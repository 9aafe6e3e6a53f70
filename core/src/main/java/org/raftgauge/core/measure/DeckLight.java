// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.measure;

import java.util.List;
import org.raftgauge.core.pixels.Srgb;
import org.raftgauge.core.plane.DeckImage;
import org.raftgauge.core.site.SiteMeasure;

/**
 * How bright a deck is in the photo as it was taken, and what can be told in that light.
 *
 * <p>Read off rendered photos darkened to a fifth with noise added: plants over 10 cm2 keep their
 * area to 2 to 5 % (median) down to a level of 0.03; smaller ones, thin leaves and stalks, are off
 * by 30 % and more under 0.057 and by some 5 to 15 % over 0.08. In less light than 0.03 leaf goes
 * astray on a photo of another renderer.
 *
 * @param level green light that a five hundredth of the deck exceeds, 1 is full scale: the markers'
 *     white is enough
 */
record DeckLight(double level) {
  private static final double SHARE = 0.002;

  /** Under this leaves are one or two steps of an 8-bit camera. */
  private static final double DARK = 0.03;

  /** Under this a small plant is lost in the camera's noise. */
  private static final double DUSK = 0.06;

  private static final double SMALL_CM2 = 10;

  static DeckLight of(DeckImage deck) {
    byte[] rgb = deck.image().rgb();
    int[] counts = new int[256];
    for (int i = 1; i < rgb.length; i += 3) {
      counts[rgb[i] & 255]++;
    }
    double left = SHARE * rgb.length / 3;
    int level = 255;
    while (level > 0 && counts[level] < left) {
      left -= counts[level];
      level--;
    }
    return new DeckLight(Srgb.linear((byte) level));
  }

  boolean tooDark() {
    return level < DARK;
  }

  /** Holds the small plants, and sites that seem empty, where it is too dark for them. */
  List<SiteMeasure> holdSmall(List<SiteMeasure> sites) {
    if (level >= DUSK) {
      return sites;
    }
    return sites.stream()
        .map(
            s ->
                s.projectedAreaCm2().orElse(SMALL_CM2) < SMALL_CM2
                    ? SiteCrops.heldSite(
                        s.site(),
                        "it is too dark to tell so small a plant from the board; give more light or"
                            + " a longer exposure")
                    : s)
        .toList();
  }
}
