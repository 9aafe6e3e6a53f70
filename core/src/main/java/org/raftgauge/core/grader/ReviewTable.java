// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.raftgauge.core.agreement.LinearFit;
import org.raftgauge.core.agreement.Robust;

/**
 * Looks through a table of sizes of plants for numbers that do not fit: each column is told from
 * the others (logarithms, a bend in each, a level for each group) by Tukey's bisquare, and a number
 * more than 4 robust standard deviations off is named. Where several numbers of a row are off, the
 * one furthest off is blamed. Where there are 40 rows or more, a number is judged against the rows
 * nearest in size, so that a cohort that is different as a whole is no row of suspects. A number
 * that two rows share is named too, where so many rows would share one by chance less than once in
 * five tables.
 *
 * <p>The bounds are working values: of normal numbers, 1 in 16 000 lies beyond 4 standard
 * deviations.
 */
public final class ReviewTable {
  private static final double OFF = 4;
  private static final double NEAR = 2.5;
  private static final int FEWEST = 8;
  private static final int FOR_NEAREST = 40;
  private static final int NEAREST = 15;
  private static final double BY_CHANCE = 0.2;
  private static final double LN_TEN = Math.log(10);

  /**
   * A row.
   *
   * @param name for people
   * @param group plants of one group are alike, such as a variety; may be empty
   * @param numbers sizes above 0 by column; every row has the same columns
   */
  public record Row(String name, String group, Map<String, Double> numbers) {

    /** Copies the map, keeping its order. */
    public Row {
      numbers = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(numbers));
    }
  }

  private final List<Row> rows;
  private final List<String> columns;

  private ReviewTable(List<Row> rows) {
    this.rows = rows;
    this.columns = rows.isEmpty() ? List.of() : List.copyOf(rows.get(0).numbers().keySet());
  }

  /**
   * Reviews a table.
   *
   * @param rows any number; fewer than 8 are not judged
   * @return the suspects, in the order of rows
   */
  public static List<Suspect> review(List<Row> rows) {
    return new ReviewTable(List.copyOf(rows)).suspects();
  }

  private List<Suspect> suspects() {
    Map<Integer, Suspect> found = new java.util.TreeMap<>();
    if (rows.size() >= FEWEST && columns.size() > 1) {
      Map<String, double[]> scores = scores();
      for (int i = 0; i < rows.size(); i++) {
        String worst = worst(scores, i);
        if (Math.abs(scores.get(worst)[2 * i]) > OFF) {
          found.put(i, suspect(i, worst, scores.get(worst)));
        }
      }
    }
    shared(found);
    return List.copyOf(found.values());
  }

  /** Returns for each column, row by row, score and residual one after the other. */
  private Map<String, double[]> scores() {
    Map<String, double[]> scores = new HashMap<>();
    for (String column : columns) {
      scores.put(column, off(column));
    }
    return scores;
  }

  private String worst(Map<String, double[]> scores, int i) {
    String worst = columns.get(0);
    for (String column : columns) {
      if (Math.abs(scores.get(column)[2 * i]) > Math.abs(scores.get(worst)[2 * i])) {
        worst = column;
      }
    }
    return worst;
  }

  private double[] off(String column) {
    double[][] design = design(column);
    double[] y = rows.stream().mapToDouble(r -> Math.log(r.numbers().get(column))).toArray();
    double[] residuals = new double[y.length];
    LinearFit fit;
    try {
      fit = LinearFit.weighted(design, y, Robust.bisquareWeights(design, y));
    } catch (IllegalArgumentException allAlike) {
      return new double[2 * y.length]; // plants alike in a column: nothing can be told from it
    }
    double[] fitted = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      fitted[i] = LinearFit.dot(design[i], fit.coefficients());
      residuals[i] = y[i] - fitted[i];
    }
    residuals = againstNearest(residuals, fitted);
    double scale = Math.max(Robust.MAD_TO_SD * Robust.median(absolute(residuals)), 1e-9);
    double[] both = new double[2 * y.length];
    for (int i = 0; i < y.length; i++) {
      both[2 * i] = residuals[i] / scale;
      both[2 * i + 1] = residuals[i];
    }
    return both;
  }

  /** Takes from each residual the median of those of the rows nearest in fitted size. */
  private static double[] againstNearest(double[] residuals, double[] fitted) {
    int n = residuals.length;
    if (n < FOR_NEAREST) {
      return residuals;
    }
    Integer[] order = IntStream.range(0, n).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> fitted[i]));
    double[] left = residuals.clone();
    for (int at = 0; at < n; at++) {
      int from = Math.max(0, Math.min(n - NEAREST, at - NEAREST / 2));
      double[] near = new double[NEAREST];
      for (int k = 0; k < NEAREST; k++) {
        near[k] = residuals[order[from + k]];
      }
      left[order[at]] -= Robust.median(near);
    }
    return left;
  }

  private static double[] absolute(double[] x) {
    return Arrays.stream(x).map(Math::abs).toArray();
  }

  /** Returns a constant, levels of groups, and the other columns with a bend where rows allow. */
  private double[][] design(String column) {
    Set<String> groups = new TreeSet<>();
    rows.forEach(row -> groups.add(row.group()));
    List<String> others = columns.stream().filter(c -> !c.equals(column)).toList();
    boolean levels = rows.size() >= 4 * (groups.size() + others.size());
    boolean bends = rows.size() >= 8 * (groups.size() + 2 * others.size());
    double[][] design = new double[rows.size()][];
    for (int i = 0; i < design.length; i++) {
      List<Double> x = new ArrayList<>(List.of(1.0));
      Row row = rows.get(i);
      if (levels) {
        groups.stream().skip(1).forEach(g -> x.add(g.equals(row.group()) ? 1.0 : 0.0));
      }
      for (String other : others) {
        double ln = Math.log(row.numbers().get(other));
        x.add(ln);
        if (bends) {
          x.add(ln * ln);
        }
      }
      design[i] = x.stream().mapToDouble(v -> v).toArray();
    }
    return design;
  }

  private Suspect suspect(int i, String column, double[] scores) {
    double z = scores[2 * i];
    double residual = scores[2 * i + 1];
    double value = rows.get(i).numbers().get(column);
    double expected = value / Math.exp(residual);
    double scale = Math.abs(residual / z);
    double tens = Math.rint(residual / LN_TEN);
    boolean slipped = tens != 0 && Math.abs(residual - tens * LN_TEN) < NEAR * scale;
    String found = text(value) + " where about " + text(expected) + " is expected";
    return slipped
        ? new Suspect(
            rows.get(i).name(),
            column,
            Suspect.Kind.SLIPPED_DECIMAL,
            found + ": a slipped decimal point? " + text(value / Math.pow(10, tens)) + " would fit")
        : new Suspect(
            rows.get(i).name(),
            column,
            Suspect.Kind.OUT_OF_LINE,
            String.format(
                Locale.ROOT,
                "%s (%.1f standard deviations off): check the number, the plant, and what the photo"
                    + " shows",
                found,
                Math.abs(z)));
  }

  /** Names numbers that two rows share though chance would hardly have it so. */
  private void shared(Map<Integer, Suspect> found) {
    for (String column : columns) {
      Map<Double, Integer> first = new HashMap<>();
      for (int i = 0; i < rows.size(); i++) {
        double value = rows.get(i).numbers().get(column);
        Integer earlier = first.putIfAbsent(value, i);
        if (earlier != null && byChance(column, value) < BY_CHANCE) {
          found.put(
              i,
              new Suspect(
                  rows.get(i).name(),
                  column,
                  Suspect.Kind.SHARED_VALUE,
                  text(value) + " is also that of " + rows.get(earlier).name() + ": copied?"));
        }
      }
    }
  }

  /** Returns how many pairs near a value would be the same by chance, at its last digit. */
  private double byChance(String column, double value) {
    long near =
        rows.stream().filter(r -> Math.abs(r.numbers().get(column) - value) <= value / 5).count();
    double lastDigit =
        Math.pow(10, -new BigDecimal(Double.toString(value)).stripTrailingZeros().scale());
    return 0.5 * near * near * lastDigit / (0.4 * value);
  }

  private static String text(double value) {
    return new BigDecimal(value).round(new MathContext(4)).toPlainString();
  }
}
