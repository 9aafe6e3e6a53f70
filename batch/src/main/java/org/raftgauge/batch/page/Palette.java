// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Color;

/**
 * Colours of the overlays.
 *
 * <p>Source: M. Okabe and K. Ito, Color Universal Design, 2008: eight colours that people with any
 * kind of colour vision tell apart. Green is left out, for it would vanish on leaves.
 */
final class Palette {
  static final Color YELLOW = new Color(0xF0E442);
  static final Color SKY_BLUE = new Color(0x56B4E9);
  static final Color ORANGE = new Color(0xE69F00);
  static final Color REDDISH_PURPLE = new Color(0xCC79A7);
  static final Color VERMILLION = new Color(0xD55E00);

  static final Color HALO = new Color(0x101010);
  static final Color PAPER = Color.WHITE;
  static final Color STRIP = new Color(0x202020);

  private static final Color[] SITES = {YELLOW, SKY_BLUE, ORANGE, REDDISH_PURPLE};

  private Palette() {}

  /** Returns the colour of a site; all eight neighbours on a grid have others. */
  static Color site(int row, int column) {
    return SITES[2 * (row % 2) + column % 2];
  }
}
