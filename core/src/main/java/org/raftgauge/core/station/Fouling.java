// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.raftgauge.core.plane.EdgeBlur;

/**
 * Finds a smear that stays in one place of the picture: dirt or a drop on the lens. The picture is
 * cut into a grid of parts; the blur of each over the middle of all is compared with its own median
 * over the evenings before. A smear covers more than one part, what grows or moves on the boards
 * seldom does: the evening's value, ln, is that of the second most blurred of two neighbours, where
 * it is largest. Parts that scatter from evening to evening, as under a passing station whose
 * ground changes, count for less. Evenings with a large value are not learnt from.
 */
final class Fouling {
  /** Other evenings that a part must have been seen on. */
  private static final int LEAST = 7;

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
   * Judges evenings: the first few against each other, later ones against those before.
   *
   * @param evenings in the order of time
   * @return the worst place each, in the same order; nothing while too little is known
   */
  static List<Optional<Worst>> of(List<StationEvening> evenings) {
    Fouling fouling = new Fouling();
    List<double[]> lns = evenings.stream().map(e -> lns(e.blurCells())).toList();
    List<double[]> seen = lns.stream().filter(e -> e.length > 0).toList();
    List<double[]> first = seen.size() > LEAST ? seen.subList(0, LEAST + 1) : List.of();
    return lns.stream()
        .map(e -> first.contains(e) ? fouling.first(e, first) : fouling.next(e))
        .toList();
  }

  /** Returns ln of the blur of each part over the middle of all, NaN where none is known. */
  private static double[] lns(List<OptionalDouble> blurs) {
    double[] known = blurs.stream().flatMapToDouble(OptionalDouble::stream).toArray();
    double whole = known.length == 0 ? 0 : median(known);
    return known.length == 0
        ? known
        : blurs.stream().mapToDouble(b -> Math.log(b.orElse(Double.NaN) / whole)).toArray();
  }

  private Optional<Worst> first(double[] evening, List<double[]> first) {
    past.add(evening);
    return worst(evening, first.stream().filter(e -> e != evening).toList());
  }

  private Optional<Worst> next(double[] evening) {
    if (evening.length == 0 || past.isEmpty()) {
      return Optional.empty();
    }
    Optional<Worst> worst = worst(evening, past);
    if (worst.isEmpty() || worst.get().ln() < LEARNT) {
      past.add(evening);
    }
    if (past.size() > WINDOW) {
      past.remove(0);
    }
    return worst;
  }

  private static Optional<Worst> worst(double[] evening, List<double[]> others) {
    double[] grown = new double[evening.length];
    for (int i = 0; i < grown.length; i++) {
      int part = i;
      grown[i] = grown(evening[i], others.stream().mapToDouble(e -> e[part]));
    }
    return worst(grown);
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
  private static double grown(double ln, DoubleStream others) {
    double[] known = others.filter(v -> !Double.isNaN(v)).toArray();
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
