// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.BitSet;

/**
 * The canopy of a deck picture: how much of each pixel is leaf, and the light it was judged in.
 * Owns its array; read only.
 */
public final class Canopy {
  private final int width;
  private final int height;
  private final byte[] coverage;
  private final EvenedLight light;
  private final Doubts doubts;

  /**
   * What may be wrong with it.
   *
   * @param threshold the score past which a colour counted as leaf
   * @param nearFraction share of the canopy near the threshold
   * @param near pixels whose colour speaks but weakly for what they were taken for
   * @param fillsHole sites whose canopy is as good as the disc of its hole
   * @param plugLike sites where moss and leaf could not be told apart by anything
   */
  record Doubts(
      double threshold, double nearFraction, BitSet near, BitSet fillsHole, BitSet plugLike) {

    /** Says what may be wrong where nothing is known of single pixels. */
    Doubts(double threshold, double nearFraction) {
      this(threshold, nearFraction, new BitSet(), new BitSet(), new BitSet());
    }
  }

  Canopy(int width, int height, byte[] coverage, EvenedLight light, Doubts doubts) {
    this.width = width;
    this.height = height;
    this.coverage = coverage;
    this.light = light;
    this.doubts = doubts;
  }

  /** Returns the width in px. */
  public int width() {
    return width;
  }

  /** Returns the height in px. */
  public int height() {
    return height;
  }

  /** Returns the coverage of each pixel, 0..255 for 0..1; read only. */
  public byte[] coverage() {
    return coverage;
  }

  /** Returns the light it was judged in. */
  public EvenedLight light() {
    return light;
  }

  /** Returns the score past which a colour counted as leaf. */
  public double threshold() {
    return doubts.threshold();
  }

  /** Returns the share of the canopy whose colour lies near the threshold, 0..1. */
  public double doubtFraction() {
    return doubts.nearFraction();
  }

  /**
   * Returns the next pixel whose colour speaks but weakly for what it was taken for: leaf little
   * past the threshold or short of it, bare deck that came close.
   *
   * @param from the first pixel to look at, y * width + x
   * @return the first such pixel from there on, or past the last one if there is none
   */
  public int nextDoubtful(int from) {
    int next = doubts.near().nextSetBit(from);
    return next < 0 ? coverage.length : next;
  }

  /**
   * Says whether what was taken for canopy at a site is as good as the disc of its planting hole.
   *
   * @param site the site's place in the order of the grid
   * @return true if it fills the hole and hardly reaches beyond
   */
  public boolean fillsHole(int site) {
    return doubts.fillsHole().get(site);
  }

  /**
   * Says whether a mossy plug may have been taken for canopy at a site, or canopy for a plug.
   *
   * @param site the site's place in the order of the grid
   * @return true if neither shape nor light nor the other sites told
   */
  public boolean isPlugLike(int site) {
    return doubts.plugLike().get(site);
  }
}
