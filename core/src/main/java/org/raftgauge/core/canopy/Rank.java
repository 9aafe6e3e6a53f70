// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.canopy;

/**
 * Finds the value of a rank without sorting all values.
 *
 * <p>Source: quickselect, Hoare 1961, Algorithm 65, CACM 4:321; the middle of three as pivot.
 */
final class Rank {

  private Rank() {}

  /**
   * Returns the value that would stand at a place if the first n were sorted; they are put in
   * another order.
   *
   * @param values no NaN
   * @param n 1 to length
   * @param rank 0 to n - 1
   */
  static double of(double[] values, int n, int rank) {
    int from = 0;
    int to = n - 1;
    while (from < to) {
      double pivot = middle(values[from], values[(from + to) >>> 1], values[to]);
      int left = from;
      int right = to;
      while (left <= right) {
        while (values[left] < pivot) {
          left++;
        }
        while (values[right] > pivot) {
          right--;
        }
        if (left <= right) {
          double held = values[left];
          values[left++] = values[right];
          values[right--] = held;
        }
      }
      if (rank <= right) {
        to = right;
      } else if (rank >= left) {
        from = left;
      } else {
        return pivot;
      }
    }
    return values[rank];
  }

  /** The same of floats. */
  static float of(float[] values, int n, int rank) {
    int from = 0;
    int to = n - 1;
    while (from < to) {
      float pivot = (float) middle(values[from], values[(from + to) >>> 1], values[to]);
      int left = from;
      int right = to;
      while (left <= right) {
        while (values[left] < pivot) {
          left++;
        }
        while (values[right] > pivot) {
          right--;
        }
        if (left <= right) {
          float held = values[left];
          values[left++] = values[right];
          values[right--] = held;
        }
      }
      if (rank <= right) {
        to = right;
      } else if (rank >= left) {
        from = left;
      } else {
        return pivot;
      }
    }
    return values[rank];
  }

  private static double middle(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
