// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.raftgauge.core.agreement.LinearFit;
import org.raftgauge.core.agreement.Robust;

/**
 * Looks through weighings for those that a person should check: numbers out of line and slipped
 * decimals ({@link ReviewTable}), and two plants of a raft whose weights fit each other's sites.
 */
public final class ReviewWeighings {
  private static final double OFF = 2.5;
  private static final double FITS = 3;

  private static final int FEWEST = 8;
  private static final Duration SAME_SESSION = Duration.ofHours(12);
  private static final String WEIGHT = "fresh_weight_g";

  private ReviewWeighings() {}

  /**
   * Reviews the weighings of one crop and regime.
   *
   * @param weighed any number; fewer than 8 are not judged
   * @return the suspects; swapped plants first, then in the order of rows
   */
  public static List<Suspect> review(List<Weighed> weighed) {
    List<Suspect> swapped = swapped(weighed);
    Set<String> named = new HashSet<>();
    swapped.forEach(s -> named.add(s.row()));
    List<Suspect> all = new ArrayList<>(swapped);
    ReviewTable.review(rows(weighed)).stream()
        .filter(s -> !named.contains(s.row()))
        .forEach(all::add);
    return List.copyOf(all);
  }

  private static List<ReviewTable.Row> rows(List<Weighed> weighed) {
    List<Size> sizes =
        List.of(Size.values()).stream()
            .filter(s -> s != Size.AREA || weighed.stream().noneMatch(ReviewWeighings::closed))
            .filter(s -> weighed.stream().allMatch(w -> s.of(w.traits()).isPresent()))
            .toList();
    List<ReviewTable.Row> rows = new ArrayList<>();
    for (Weighed plant : weighed) {
      Map<String, Double> numbers = new LinkedHashMap<>();
      numbers.put(WEIGHT, plant.freshWeightG());
      sizes.forEach(s -> numbers.put(s.column(), s.of(plant.traits()).getAsDouble()));
      rows.add(new ReviewTable.Row(plant.label(), plant.traits().variety(), numbers));
    }
    return rows;
  }

  private static List<Suspect> swapped(List<Weighed> weighed) {
    List<Weighed> sized =
        weighed.stream().filter(w -> w.traits().areaCm2().isPresent() && !closed(w)).toList();
    if (sized.size() < FEWEST) {
      return List.of();
    }
    double[][] design =
        sized.stream()
            .map(w -> new double[] {1, Math.log(w.traits().areaCm2().getAsDouble())})
            .toArray(double[][]::new);
    double[] y = FitRegime.lnWeights(sized);
    double[] expected = expected(design, y);
    double[] absolute = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      absolute[i] = Math.abs(y[i] - expected[i]);
    }
    double scale = Math.max(1e-9, Robust.MAD_TO_SD * Robust.median(absolute));
    List<Suspect> found = new ArrayList<>();
    Map<Integer, Integer> taken = new HashMap<>();
    for (int i = 0; i < y.length; i++) {
      for (int j = i + 1; j < y.length; j++) {
        boolean both = absolute[i] > OFF * scale && absolute[j] > OFF * scale;
        boolean fit =
            Math.abs(y[j] - expected[i]) < Math.min(FITS * scale, absolute[i] / 2)
                && Math.abs(y[i] - expected[j]) < Math.min(FITS * scale, absolute[j] / 2);
        boolean free = !taken.containsKey(i) && !taken.containsKey(j);
        if (both && fit && free && together(sized.get(i), sized.get(j))) {
          taken.put(i, j);
          taken.put(j, i);
          found.add(suspect(sized.get(i), sized.get(j)));
          found.add(suspect(sized.get(j), sized.get(i)));
        }
      }
    }
    return found;
  }

  private static double[] expected(double[][] design, double[] y) {
    double[] expected = new double[y.length];
    try {
      LinearFit fit = LinearFit.weighted(design, y, Robust.bisquareWeights(design, y));
      for (int i = 0; i < y.length; i++) {
        expected[i] = LinearFit.dot(design[i], fit.coefficients());
      }
    } catch (IllegalArgumentException oneSize) {
      System.arraycopy(y, 0, expected, 0, y.length); // all of one area: nothing can be swapped
    }
    return expected;
  }

  /** Says whether a plant's area is only a lower bound, which accuses nobody. */
  private static boolean closed(Weighed plant) {
    return plant.regime() == Regime.CLOSED;
  }

  private static boolean together(Weighed one, Weighed other) {
    return one.raft().equals(other.raft())
        && Duration.between(one.weighedAt(), other.weighedAt()).abs().compareTo(SAME_SESSION) <= 0;
  }

  private static Suspect suspect(Weighed plant, Weighed other) {
    return new Suspect(
        plant.label(),
        WEIGHT,
        Suspect.Kind.SWAPPED,
        "this weight fits "
            + other.site()
            + " and that of "
            + other.site()
            + " fits "
            + plant.site()
            + ": were the two sites mixed up?");
  }
}
