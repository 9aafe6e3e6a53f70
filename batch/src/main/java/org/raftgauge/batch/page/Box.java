// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

/**
 * A rectangle of pixels.
 *
 * @param left first column
 * @param top first row
 * @param right column behind the last
 * @param bottom row behind the last
 */
record Box(int left, int top, int right, int bottom) {

  /** Returns the box stretched to hold a pixel. */
  Box with(int x, int y) {
    return new Box(
        Math.min(left, x), Math.min(top, y), Math.max(right, x + 1), Math.max(bottom, y + 1));
  }
}
