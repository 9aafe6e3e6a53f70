// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.raftgauge.core.plane.EdgeBlur;

/**
 * Finds a smear that stays in one place of the picture: dirt or a drop on the lens. The picture is
 * cut into a grid of parts; the blur of each over the middle of all is compared with its own median
 * over the evenings before. A smear covers more than one part, what grows or moves on the boards
 * seldom does: the evening's value, ln, is that of the second most blurred of two neighbours, where
 * it is largest. Parts that scatter from evening to evening, as under a passing station whose ground
 * changes, count for less. Evenings with a large value are not learnt from.
 */
final class Fouling {
  private static final int LEAST = 8;
  private static final int WINDOW = 28;

  /** A place that has grown blurrier by so much, ln, is not learnt as usual. */
  private static final double LEARNT = 0.25;

  /** A part whose blur, ln, scatters by so much or less counts in full; a working value. */
  private static final double STEADY = 0.06;

  private static final double MAD_TO_SD = 1.4826;

  private static final String[] ROWS = {"upper", "middle", "lower"};
  private static final String[] COLUMNS = {"left", "centre", "right"};

  private final List<double[]> past = new ArrayList<>();

  private Fouling() {}

  /** Where a picture has lost most sharpness, across and down in shares of it, and how much, ln. */
  record Worst(double across, double down, double ln) {
    /** Returns the place in words. */
    String words() {
      String row = ROWS[(int) (ROWS.length * down)];
      String column = COLUMNS[(int) (COLUMNS.length * across)];
      return row + " " + column;
    }
  }

  /**
   * Judges evenings.
   *
   * @param evenings in the order of time
   * @return the worst place each, in the same order; nothing while too little is known
   */
  static List<Optional<Worst>> of(List<StationEvening> evenings) {
    Fouling fouling = new Fouling();
    return evenings.stream().map(e -> fouling.next(e.blurCells())).toList();
  }

  private Optional<Worst> next(List<OptionalDouble> blurs) {
    double[] known = blurs.stream().flatMapToDouble(OptionalDouble::stream).toArray();
    if (known.length == 0) {
      return Optional.empty();
    }
    double whole = median(known);
    double[] lns = new double[blurs.size()];
    double[] grown = new double[blurs.size()];
    for (int i = 0; i < lns.length; i++) {
      lns[i] = Math.log(blurs.get(i).orElse(Double.NaN) / whole);
      grown[i] = grown(i, lns[i]);
    }
    Optional<Worst> worst = worst(grown);
    if (worst.isEmpty() || worst.get().ln() < LEARNT) {
      past.add(lns);
    }
    if (past.size() > WINDOW) {
      past.remove(0);
    }
    return worst;
  }

  /** Finds the two neighbours of which the less blurred one is most blurred. */
  private static Optional<Worst> worst(double[] grown) {
    int side = EdgeBlur.CELLS;
    Optional<Worst> worst = Optional.empty();
    for (int i = 0; i < grown.length; i++) {
      int right = i % side < side - 1 ? i + 1 : i;
      int below = i + side < grown.length ? i + side : i;
      for (int j : new int[] {right, below}) {
        double both = Math.min(grown[i], grown[j]);
        if (i != j && both > worst.map(Worst::ln).orElse(Double.NEGATIVE_INFINITY)) {
          worst = Optional.of(place(i, j, both));
        }
      }
    }
    return worst;
  }

  private static Worst place(int i, int j, double ln) {
    int side = EdgeBlur.CELLS;
    double across = (i % side + j % side + 1.0) / 2 / side;
    double down = (Math.floorDiv(i, side) + Math.floorDiv(j, side) + 1.0) / 2 / side;
    return new Worst(across, down, ln);
  }

  /** Returns how much blurrier than usual a part is, NaN where too few evenings tell that. */
  private double grown(int part, double ln) {
    double[] known = past.stream().mapToDouble(p -> p[part]).filter(p -> !Double.isNaN(p)).toArray();
    if (known.length < LEAST) {
      return Double.NaN;
    }
    double usual = median(known);
    double off = median(Arrays.stream(known).map(v -> Math.abs(v - usual)).toArray());
    return (ln - usual) * Math.min(1, STEADY / (MAD_TO_SD * off));
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
  }
}
