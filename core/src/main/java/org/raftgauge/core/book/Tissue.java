// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.Locale;
import java.util.Optional;

/** What a pixel of a labelled picture shows, and the colour it is painted in. */
public enum Tissue {
  /** Green leaf and stem. */
  GREEN(0x00A040, true),
  /** Red and purple leaf and stem. */
  RED(0xC0004C, true),
  /** Yellowed or bleached living leaf. */
  PALE(0xF0D000, true),
  /** Brown, dried-up leaf of the crop. */
  DEAD(0x8C5A1E, true),
  /** Algae, moss and films of them. */
  ALGAE(0x00B4C8, false),
  /** The board; on open ground, whatever the plants stand on. */
  BOARD(0xFFFFFF, false),
  /** Holes, water, deep shade, cables: dark and no plant. */
  DARK(0x303030, false);

  private final int rgb;
  private final boolean leaf;

  Tissue(int rgb, boolean leaf) {
    this.rgb = rgb;
    this.leaf = leaf;
  }

  /** Returns the colour of the palette, 0xRRGGBB. */
  public int rgb() {
    return rgb;
  }

  /** Says whether it belongs to the plant and counts into its area. */
  public boolean isLeaf() {
    return leaf;
  }

  /** Returns its name in model files and reports: small letters. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * Finds a tissue by its name in model files.
   *
   * @param label small letters
   * @return the tissue, if there is one of that name
   */
  public static Optional<Tissue> labelled(String label) {
    for (Tissue tissue : values()) {
      if (tissue.label().equals(label)) {
        return Optional.of(tissue);
      }
    }
    return Optional.empty();
  }
}
