// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.grader;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.raftgauge.core.book.SiteId;

/**
 * Chooses sites to weigh: as many from each part of the range of sizes, at random inside a part, so
 * that light and heavy, open and closed plants are all sampled. Parts are equally wide in the
 * logarithm of size; one that is short of sites gives its share to the others.
 */
public final class PickSites {
  /** Share of the picks that goes to closed sites where there are enough: a working value. */
  private static final double CLOSED_SHARE = 1.0 / 3;

  private static final int MOST_PARTS = 8;

  /**
   * A site that could be weighed.
   *
   * @param raft its raft
   * @param site its site
   * @param regime open or closed
   * @param size predicted weight, g, or area, cm2, where there is no grader; above 0
   */
  public record Candidate(String raft, SiteId site, Regime regime, double size) {}

  /**
   * A site to weigh.
   *
   * @param candidate the site
   * @param part which part of the range it stands for, from 1
   * @param parts number of parts of its regime
   */
  public record Pick(Candidate candidate, int part, int parts) {}

  private PickSites() {}

  /**
   * Picks.
   *
   * @param candidates sites that are not held, empty or brown
   * @param count number of sites wanted, at least 1
   * @param seed of the random choice; the same seed and candidates give the same picks
   * @return the picks, at most as many as candidates, in the order of raft and site
   */
  public static List<Pick> pick(List<Candidate> candidates, int count, long seed) {
    if (count < 1) {
      throw new IllegalArgumentException("count must be >= 1, got " + count);
    }
    Random random = new Random(seed);
    List<Candidate> open = of(candidates, Regime.OPEN);
    List<Candidate> closed = of(candidates, Regime.CLOSED);
    int forClosed = Math.min(closed.size(), (int) Math.round(count * closedShare(open, closed)));
    int forOpen = Math.min(open.size(), count - forClosed);
    forClosed = Math.min(closed.size(), count - forOpen);
    List<Pick> picks = new ArrayList<>(spread(open, forOpen, random));
    picks.addAll(spread(closed, forClosed, random));
    picks.sort(
        Comparator.comparing((Pick p) -> p.candidate().raft())
            .thenComparing(p -> p.candidate().site()));
    return List.copyOf(picks);
  }

  private static List<Candidate> of(List<Candidate> candidates, Regime regime) {
    return candidates.stream()
        .filter(c -> c.regime() == regime)
        .sorted(
            Comparator.comparingDouble(Candidate::size)
                .thenComparing(Candidate::raft)
                .thenComparing(Candidate::site))
        .toList();
  }

  /** Closed sites get their share of the sites, and at least a third. */
  private static double closedShare(List<Candidate> open, List<Candidate> closed) {
    if (open.isEmpty() || closed.isEmpty()) {
      return open.isEmpty() ? 1 : 0;
    }
    return Math.max(CLOSED_SHARE, closed.size() / (double) (open.size() + closed.size()));
  }

  private static List<Pick> spread(List<Candidate> sorted, int count, Random random) {
    if (count == 0) {
      return List.of();
    }
    int parts = Math.min(MOST_PARTS, count);
    Map<Integer, List<Candidate>> byPart = new LinkedHashMap<>();
    for (int part = 0; part < parts; part++) {
      byPart.put(part, new ArrayList<>());
    }
    double low = Math.log(sorted.get(0).size());
    double wide = Math.log(sorted.get(sorted.size() - 1).size()) - low;
    for (Candidate candidate : sorted) {
      double at = wide > 0 ? (Math.log(candidate.size()) - low) / wide : 0;
      byPart.get(Math.min(parts - 1, (int) (at * parts))).add(candidate);
    }
    List<Pick> picks = new ArrayList<>();
    while (picks.size() < count) {
      for (int part = 0; part < parts && picks.size() < count; part++) {
        List<Candidate> left = byPart.get(part);
        if (!left.isEmpty()) {
          Candidate taken = left.remove(random.nextInt(left.size()));
          picks.add(new Pick(taken, part + 1, parts));
        }
      }
    }
    return picks;
  }
}
