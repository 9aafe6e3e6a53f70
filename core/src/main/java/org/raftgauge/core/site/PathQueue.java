// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.site;

import java.util.Arrays;

/**
 * Pixels in the order of their path's cost, equal costs in the order of the picture: a binary heap
 * on plain numbers, as a deck has millions of pixels.
 */
final class PathQueue {
  private long[] heap = new long[1024];
  private int size;

  boolean isEmpty() {
    return size == 0;
  }

  /**
   * Adds a pixel.
   *
   * @param cost of the path to it, at least 0
   * @param at its index
   */
  void add(float cost, int at) {
    if (size == heap.length) {
      heap = Arrays.copyOf(heap, 2 * size);
    }
    // The bits of floats that are not negative sort as the floats do.
    long key = (long) Float.floatToIntBits(cost) << 32 | at;
    int i = size++;
    while (i > 0 && heap[(i - 1) >> 1] > key) {
      heap[i] = heap[(i - 1) >> 1];
      i = (i - 1) >> 1;
    }
    heap[i] = key;
  }

  /** Takes out the cheapest entry; {@link #cost} and {@link #at} read it. */
  long poll() {
    long first = heap[0];
    long last = heap[--size];
    int i = 0;
    while (2 * i + 1 < size) {
      int child = 2 * i + 1;
      child += child + 1 < size && heap[child + 1] < heap[child] ? 1 : 0;
      if (heap[child] >= last) {
        break;
      }
      heap[i] = heap[child];
      i = child;
    }
    heap[i] = last;
    return first;
  }

  static float cost(long entry) {
    return Float.intBitsToFloat((int) (entry >>> 32));
  }

  static int at(long entry) {
    return (int) entry;
  }
}
