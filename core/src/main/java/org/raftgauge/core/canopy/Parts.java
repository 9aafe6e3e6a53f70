// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** The connected parts of a mask: by sides, or by sides and corners. */
final class Parts {
  private final boolean diagonal;

  /** Of each pixel its part plus one; 0 where the mask is not set. */
  private final int[] labels;

  private int[] sizes = {};
  private boolean[] rim = {};
  private int count;

  private Parts(int n, boolean diagonal) {
    this.diagonal = diagonal;
    this.labels = new int[n];
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
    Runs runs = new Runs(diagonal ? 1 : 0, width);
    for (int y = 0; y < height; y++) {
      runs.row(mask, y * width);
    }
    int[] parts = number(runs);
    for (int r = 0; r < runs.count; r++) {
      int part = parts[r];
      Arrays.fill(labels, runs.from[r], runs.to[r], part + 1);
      sizes[part] += runs.to[r] - runs.from[r];
      rim[part] |=
          runs.from[r] < width
              || runs.to[r] > labels.length - width
              || runs.from[r] % width == 0
              || runs.to[r] % width == 0;
    }
    return this;
  }

  /** Numbers the parts in the order of their first pixels. */
  private int[] number(Runs runs) {
    int[] parts = new int[runs.count];
    for (int r = 0; r < parts.length; r++) {
      int first = runs.root(r);
      parts[r] = first == r ? count++ : parts[first];
    }
    sizes = new int[count];
    rim = new boolean[count];
    return parts;
  }

  /** Stretches of set pixels, row by row, each joined to those it touches in the row above. */
  private static final class Runs {
    private final int reach;
    private final int width;
    private final boolean[] none;
    private int[] from = new int[256];
    private int[] to = new int[256];
    private int[] up = new int[256];
    private int count;
    private int above;

    Runs(int reach, int width) {
      this.reach = reach;
      this.width = width;
      this.none = new boolean[width];
    }

    void row(boolean[] mask, int start) {
      int begin = count;
      int over = above;
      boolean empty = Arrays.equals(mask, start, start + width, none, 0, width);
      for (int i = empty ? start + width : start; i < start + width; i++) {
        if (mask[i]) {
          int first = i;
          while (i < start + width && mask[i]) {
            i++;
          }
          over = add(first, i, over);
        }
      }
      above = begin;
    }

    /** Adds a run and joins it to those above; returns the first that the next one may touch. */
    private int add(int first, int end, int over) {
      if (count == from.length) {
        from = Arrays.copyOf(from, 2 * count);
        to = Arrays.copyOf(to, 2 * count);
        up = Arrays.copyOf(up, 2 * count);
      }
      from[count] = first;
      to[count] = end;
      up[count] = count;
      int at = over;
      while (at < count && to[at] + width + reach <= first) {
        at++;
      }
      int next = at;
      while (at < count && from[at] + width < end + reach && to[at] <= first - first % width) {
        join(at, count);
        next = at++;
      }
      count++;
      return next;
    }

    private void join(int a, int b) {
      int p = root(a);
      int q = root(b);
      up[Math.max(p, q)] = Math.min(p, q);
    }

    int root(int run) {
      int at = run;
      while (up[at] != at) {
        up[at] = up[up[at]];
        at = up[at];
      }
      return at;
    }
  }

  int count() {
    return count;
  }

  /** Returns a pixel's part, or -1 where the mask is not set. */
  int label(int at) {
    return labels[at] - 1;
  }

  int size(int part) {
    return sizes[part];
  }

  boolean touchesRim(int part) {
    return rim[part];
  }
}
