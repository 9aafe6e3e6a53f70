// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.Color;

/**
 * A row of colours from dark blue to yellow, evenly lighter, which people with any kind of colour
 * vision read alike.
 *
 * <p>Source: five colours of the map "viridis" of N. Smith and S. van der Walt, 2015 (CC0; from
 * memory), straight between them.
 */
final class Ramp {
  private static final int[] STOPS = {0x440154, 0x3B528B, 0x21918C, 0x5EC962, 0xFDE725};

  private Ramp() {}

  /** Returns the colour of a share, 0 to 1; what lies outside has the colour of the end. */
  static Color at(double share) {
    double place = Math.max(0, Math.min(1, share)) * (STOPS.length - 1);
    int from = (int) Math.min(STOPS.length - 2.0, Math.floor(place));
    return new Color(
        mixed(from, place - from, 16), mixed(from, place - from, 8), mixed(from, place - from, 0));
  }

  private static int mixed(int from, double share, int shift) {
    int a = (STOPS[from] >> shift) & 0xff;
    int b = (STOPS[from + 1] >> shift) & 0xff;
    return (int) Math.round(a + share * (b - a));
  }
}
