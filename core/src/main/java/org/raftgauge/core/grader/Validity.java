// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * What the weighings covered; a grader says nothing for sure beyond it.
 *
 * @param ranges smallest and largest of each size used, by size
 * @param lightestG lightest weighing, g
 * @param heaviestG heaviest weighing, g
 * @param varieties varieties weighed
 */
public record Validity(
    Map<Size, Range> ranges, double lightestG, double heaviestG, Set<String> varieties) {
  /** How far beyond the range is still let pass: a tenth, a working value. */
  private static final double SLACK = 1.1;

  /**
   * A range.
   *
   * @param from smallest
   * @param to largest
   */
  public record Range(double from, double to) {}

  /** Copies, keeping the order. */
  public Validity {
    ranges = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(ranges));
    varieties = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(varieties));
  }

  static Validity of(List<Weighed> weighed, Set<Size> used) {
    Map<Size, Range> ranges = new LinkedHashMap<>();
    for (Size size : Size.values()) {
      if (used.contains(size)) {
        double[] sorted =
            weighed.stream()
                .map(w -> size.of(w.traits()))
                .flatMapToDouble(OptionalDouble::stream)
                .sorted()
                .toArray();
        ranges.put(size, new Range(sorted[0], sorted[sorted.length - 1]));
      }
    }
    Set<String> varieties = new TreeSet<>();
    weighed.forEach(w -> varieties.add(w.traits().variety()));
    double[] weights = weighed.stream().mapToDouble(Weighed::freshWeightG).sorted().toArray();
    return new Validity(ranges, weights[0], weights[weights.length - 1], varieties);
  }

  /**
   * Says what of a plant lies beyond the weighings.
   *
   * @param traits of the plant
   * @return in words, or nothing where all is within a tenth of the range
   */
  public Optional<String> beyond(Traits traits) {
    if (!varieties.contains(traits.variety())) {
      return Optional.of("no plant of variety \"" + traits.variety() + "\" was weighed");
    }
    for (Map.Entry<Size, Range> entry : ranges.entrySet()) {
      double value = entry.getKey().of(traits).orElse(entry.getValue().from());
      if (value > entry.getValue().to() * SLACK || value < entry.getValue().from() / SLACK) {
        return Optional.of(
            String.format(
                Locale.ROOT,
                "%s %.0f is beyond the weighings (%.0f to %.0f)",
                entry.getKey().column(),
                value,
                entry.getValue().from(),
                entry.getValue().to()));
      }
    }
    return Optional.empty();
  }
}
