// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** The 4-connected parts of a mask. */
final class Parts {
  private final int[] labels;
  private int[] sizes = new int[64];
  private boolean[] rim = new boolean[64];
  private int count;

  private Parts(int n) {
    this.labels = new int[n];
    Arrays.fill(labels, -1);
  }

  static Parts of(boolean[] mask, int width, int height) {
    Parts parts = new Parts(mask.length);
    int[] queue = new int[mask.length];
    for (int i = 0; i < mask.length; i++) {
      if (mask[i] && parts.labels[i] < 0) {
        parts.flood(i, mask, new int[] {width, height}, queue);
      }
    }
    return parts;
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
      tail = add(x > 0 ? at - 1 : -1, mask, queue, tail);
      tail = add(x < size[0] - 1 ? at + 1 : -1, mask, queue, tail);
      tail = add(y > 0 ? at - size[0] : -1, mask, queue, tail);
      tail = add(y < size[1] - 1 ? at + size[0] : -1, mask, queue, tail);
    }
    sizes[count++] = tail;
  }

  private int add(int at, boolean[] mask, int[] queue, int tail) {
    if (at < 0 || !mask[at] || labels[at] >= 0) {
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
