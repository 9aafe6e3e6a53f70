// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.station;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Finds a smear that stays in one part of the picture: dirt or a drop on the lens. For each part
 * the blur of board edges over that of the whole photo is compared with its own median over the
 * evenings before; the part that has lost most tells the evening's value, ln. Evenings on which one
 * has lost much are not learnt from.
 */
final class Fouling {
  private static final int LEAST = 8;
  private static final int WINDOW = 28;

  /** A part that has grown blurrier by so much, ln, is not learnt as usual. */
  private static final double LEARNT = 0.25;

  private static final String[] ROWS = {"upper", "middle", "lower"};
  private static final String[] COLUMNS = {"left", "centre", "right"};

  private final List<double[]> past = new ArrayList<>();

  private Fouling() {}

  /** Which part of a picture has lost most sharpness, and how much, ln. */
  record Worst(int cell, double ln) {
    /** Returns the part in words. */
    String words() {
      return ROWS[cell / COLUMNS.length] + " " + COLUMNS[cell % COLUMNS.length];
    }
  }

  /**
   * Judges evenings.
   *
   * @param evenings in the order of time
   * @return the worst part each, in the same order; nothing while too little is known
   */
  static List<Optional<Worst>> of(List<StationEvening> evenings) {
    Fouling fouling = new Fouling();
    return evenings.stream().map(fouling::next).toList();
  }

  private Optional<Worst> next(StationEvening evening) {
    OptionalDouble whole = evening.value(StationSign.EDGE_BLUR);
    if (whole.isEmpty() || evening.blurCells().isEmpty()) {
      return Optional.empty();
    }
    double[] ratios =
        evening.blurCells().stream()
            .mapToDouble(c -> Math.log(c.orElse(Double.NaN) / whole.getAsDouble()))
            .toArray();
    Optional<Worst> worst = Optional.empty();
    for (int cell = 0; cell < ratios.length; cell++) {
      OptionalDouble usual = usual(cell);
      if (!Double.isNaN(ratios[cell]) && usual.isPresent()) {
        double ln = ratios[cell] - usual.getAsDouble();
        if (worst.isEmpty() || ln > worst.get().ln()) {
          worst = Optional.of(new Worst(cell, ln));
        }
      }
    }
    if (worst.isEmpty() || worst.get().ln() < LEARNT) {
      past.add(ratios);
    }
    if (past.size() > WINDOW) {
      past.remove(0);
    }
    return worst;
  }

  private OptionalDouble usual(int cell) {
    double[] known =
        past.stream().mapToDouble(r -> r[cell]).filter(r -> !Double.isNaN(r)).sorted().toArray();
    int n = known.length;
    return n < LEAST
        ? OptionalDouble.empty()
        : Arrays.stream(new double[] {known[(n - 1) / 2], known[n / 2]}).average();
  }
}
