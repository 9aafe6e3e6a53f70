// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** The connected parts of a mask: by sides, or by sides and corners. */
final class Parts {
  private final boolean diagonal;
  private final int[] labels;
  private int[] sizes = new int[64];
  private boolean[] rim = new boolean[64];
  private int count;

  private Parts(int n, boolean diagonal) {
    this.diagonal = diagonal;
    this.labels = new int[n];
    Arrays.fill(labels, -1);
  }

  /** Returns the parts connected by pixels' sides. */
  static Parts of(boolean[] mask, int width, int height) {
    return new Parts(mask.length, false).all(mask, width, height);
  }

  /** Returns the parts connected by pixels' sides or corners. */
  static Parts alsoDiagonal(boolean[] mask, int width, int height) {
    return new Parts(mask.length, true).all(mask, width, height);
  }

  private Parts all(boolean[] mask, int width, int height) {
    int[] queue = new int[mask.length];
    for (int i = 0; i < mask.length; i++) {
      if (mask[i] && labels[i] < 0) {
        flood(i, mask, new int[] {width, height}, queue);
      }
    }
    return this;
  }

  private void flood(int start, boolean[] mask, int[] size, int[] queue) {
    if (count == sizes.length) {
      sizes = Arrays.copyOf(sizes, 2 * count);
      rim = Arrays.copyOf(rim, 2 * count);
    }
    int head = 0;
    int tail = 0;
    queue[tail++] = start;
    labels[start] = count;
    while (head < tail) {
      int at = queue[head++];
      int x = at % size[0];
      int y = at / size[0];
      rim[count] |= x == 0 || y == 0 || x == size[0] - 1 || y == size[1] - 1;
      for (int dy = y > 0 ? -1 : 0; dy <= (y < size[1] - 1 ? 1 : 0); dy++) {
        for (int dx = x > 0 ? -1 : 0; dx <= (x < size[0] - 1 ? 1 : 0); dx++) {
          if (diagonal || dx == 0 || dy == 0) {
            tail = add(at + dy * size[0] + dx, mask, queue, tail);
          }
        }
      }
    }
    sizes[count++] = tail;
  }

  private int add(int at, boolean[] mask, int[] queue, int tail) {
    if (!mask[at] || labels[at] >= 0) {
      return tail;
    }
    labels[at] = count;
    queue[tail] = at;
    return tail + 1;
  }

  int count() {
    return count;
  }

  /** Returns a pixel's part, or -1 where the mask is not set. */
  int label(int at) {
    return labels[at];
  }

  int size(int part) {
    return sizes[part];
  }

  boolean touchesRim(int part) {
    return rim[part];
  }
}
