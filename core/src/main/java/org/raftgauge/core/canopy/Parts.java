// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

import java.util.Arrays;

/** The connected parts of a mask: by sides, or by sides and corners. */
final class Parts {
  private final int pixels;
  private final Runs runs;

  /** Of each run its part. */
  private final int[] parts;

  private final int[] sizes;
  private final boolean[] rim;

  /** Of each pixel its part plus one; 0 where the mask is not set. Empty until one is asked for. */
  private int[] labels = {};

  private Parts(int pixels, Runs runs) {
    this.pixels = pixels;
    this.runs = runs;
    this.parts = new int[runs.count];
    int count = number();
    this.sizes = new int[count];
    this.rim = new boolean[count];
    measure();
  }

  /** Returns the parts connected by pixels' sides. */
  static Parts of(boolean[] mask, int width, int height) {
    return new Parts(mask.length, new Runs(0, width, true).all(mask, height));
  }

  /** Returns the parts of what a mask leaves out, connected by pixels' sides. */
  static Parts outside(boolean[] mask, int width, int height) {
    return new Parts(mask.length, new Runs(0, width, false).all(mask, height));
  }

  /** Returns the parts connected by pixels' sides or corners. */
  static Parts alsoDiagonal(boolean[] mask, int width, int height) {
    return new Parts(mask.length, new Runs(1, width, true).all(mask, height));
  }

  /** Numbers the parts in the order of their first pixels; returns how many there are. */
  private int number() {
    int count = 0;
    for (int r = 0; r < parts.length; r++) {
      int first = runs.root(r);
      parts[r] = first == r ? count++ : parts[first];
    }
    return count;
  }

  private void measure() {
    int width = runs.width;
    for (int r = 0; r < parts.length; r++) {
      sizes[parts[r]] += runs.to[r] - runs.from[r];
      rim[parts[r]] |=
          runs.from[r] < width
              || runs.to[r] > pixels - width
              || runs.from[r] % width == 0
              || runs.to[r] % width == 0;
    }
  }

  /** Stretches of pixels, row by row, each joined to those it touches in the row above. */
  private static final class Runs {
    private final int reach;
    private final int width;
    private final boolean wanted;
    private final boolean[] none;
    private int[] from = new int[256];
    private int[] to = new int[256];
    private int[] up = new int[256];
    private int count;
    private int above;

    /** Sets up for the pixels of a mask that are as wanted. */
    Runs(int reach, int width, boolean wanted) {
      this.reach = reach;
      this.width = width;
      this.wanted = wanted;
      this.none = new boolean[width];
      Arrays.fill(none, !wanted);
    }

    Runs all(boolean[] mask, int height) {
      for (int y = 0; y < height; y++) {
        row(mask, y * width);
      }
      return this;
    }

    private void row(boolean[] mask, int start) {
      int begin = count;
      int over = above;
      boolean empty = Arrays.equals(mask, start, start + width, none, 0, width);
      for (int i = empty ? start + width : start; i < start + width; i++) {
        if (mask[i] == wanted) {
          int first = i;
          while (i < start + width && mask[i] == wanted) {
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
    return sizes.length;
  }

  /** Returns a pixel's part, or -1 where the mask is not set. */
  int label(int at) {
    if (labels.length == 0) {
      labels = labelled();
    }
    return labels[at] - 1;
  }

  private int[] labelled() {
    int[] all = new int[pixels];
    eachRun((part, from, to) -> Arrays.fill(all, from, to, part + 1));
    return all;
  }

  /** Is shown stretches of pixels. */
  interface EachRun {
    /** Sees that the pixels {@code from} to before {@code to} of one row are of a part. */
    void see(int part, int from, int to);
  }

  /** Shows the stretches of all parts, row by row. */
  void eachRun(EachRun each) {
    for (int r = 0; r < parts.length; r++) {
      each.see(parts[r], runs.from[r], runs.to[r]);
    }
  }

  int size(int part) {
    return sizes[part];
  }

  boolean touchesRim(int part) {
    return rim[part];
  }
}
