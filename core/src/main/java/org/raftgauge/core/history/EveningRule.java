// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.history;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.raftgauge.core.book.SiteId;

/** Chooses between several photos of a raft in one evening, and says how well they agree. */
public final class EveningRule {
  private static final Comparator<Shot> BETTER_LAST =
      Comparator.comparingDouble(Shot::quality)
          .thenComparing(Shot::takenAt)
          .thenComparing(Shot::photo, Comparator.reverseOrder());

  /**
   * Two sound photos of a raft repeat areas to some 0.03 of ln(area); where the median plant
   * differs by ten times what that makes of a difference, they cannot both be true (a working
   * value).
   */
  private static final double DISAGREE_LN = 0.3 * Math.sqrt(2);

  /** Fewer plants seen by both say little. */
  private static final int LEAST_PLANTS = 3;

  private EveningRule() {}

  /**
   * Says whether two photos of a raft in one evening contradict each other.
   *
   * @param first projected areas by site, cm2, 0 or more
   * @param second the same of the other photo
   * @return the factor, over 1, by which the median plant is larger or smaller in the second;
   *     nothing where they agree, or fewer than three plants are seen by both
   */
  public static OptionalDouble contradiction(
      Map<SiteId, Double> first, Map<SiteId, Double> second) {
    double[] off =
        first.keySet().stream()
            .filter(site -> first.get(site) > 0 && second.getOrDefault(site, 0.0) > 0)
            .mapToDouble(site -> Math.abs(Math.log(second.get(site) / first.get(site))))
            .sorted()
            .toArray();
    double median = off.length < LEAST_PLANTS ? 0 : off[(off.length - 1) / 2];
    return median > DISAGREE_LN ? OptionalDouble.of(Math.exp(median)) : OptionalDouble.empty();
  }

  /**
   * Chooses the photo that counts: the one of the best quality, of equals the later, of those the
   * first by name.
   *
   * @param shots photos of one raft in one evening, at least one, in any order
   * @return the photo that counts
   * @throws IllegalArgumentException if there is none
   */
  public static Shot best(List<Shot> shots) {
    return shots.stream()
        .max(BETTER_LAST)
        .orElseThrow(() -> new IllegalArgumentException("shots must be one or more, got none"));
  }

  /**
   * Returns the repeatability of one photo's site areas as the standard deviation of ln(area), from
   * two photos of a raft in one evening: {@code sqrt(sum(d^2) / (2 n))} over the {@code n} sites
   * with canopy in both, {@code d} the difference of ln(area). A common factor between the two
   * photos counts in full, as it does for the user.
   *
   * <p>Source: the error of a method from duplicate determinations, Dahlberg 1940, "Statistical
   * Methods for Medical and Biological Students".
   *
   * @param first projected areas by site, cm2, 0 or more
   * @param second the same of the other photo
   * @return standard deviation of ln(area), or nothing where no site has canopy in both
   */
  public static OptionalDouble repeatabilityLn(
      Map<SiteId, Double> first, Map<SiteId, Double> second) {
    double squares = 0;
    int n = 0;
    for (Map.Entry<SiteId, Double> site : first.entrySet()) {
      double other = second.getOrDefault(site.getKey(), 0.0);
      if (site.getValue() > 0 && other > 0) {
        double d = Math.log(site.getValue() / other);
        squares += d * d;
        n++;
      }
    }
    return n == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / (2 * n)));
  }
}
