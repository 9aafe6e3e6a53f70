// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.statistics.BenjaminiHochberg;

/**
 * Finds rafts on which the departures of the plants have a pattern: the rim differs from the
 * middle, or they change along the board. The p-values of all rafts of the evening are corrected
 * together, so that one in a hundred patterns that are named is a false one.
 */
final class BoardPatterns {
  private static final double BELIEVED = 0.01;

  private BoardPatterns() {}

  private record Candidate(String raft, BoardShares.Test test) {}

  /**
   * Finds the patterns of an evening.
   *
   * @param tonight the plants seen
   * @param grids the grid of a plant's board, where it is known
   * @return the most credible pattern by raft, of rafts that have one
   */
  static Map<String, BoardShares.Test> find(
      List<Follow> tonight, Function<Follow, Optional<SiteGrid>> grids) {
    Map<String, List<Follow>> rafts = new TreeMap<>();
    for (Follow plant : tonight) {
      if (plant.takenTonight()) {
        rafts.computeIfAbsent(plant.series().last().raft(), r -> new ArrayList<>()).add(plant);
      }
    }
    List<Candidate> all = new ArrayList<>();
    rafts.forEach(
        (raft, plants) ->
            grids.apply(plants.get(0)).map(grid -> shares(grid, plants)).stream()
                .flatMap(s -> tests(s).stream())
                .forEach(test -> all.add(new Candidate(raft, test))));
    return credible(all);
  }

  private static BoardShares shares(SiteGrid grid, List<Follow> plants) {
    List<Follow> on =
        plants.stream().filter(p -> grid.has(p.series().last().measure().site())).toList();
    return new BoardShares(
        grid,
        on.stream().map(p -> p.series().last().measure().site()).toList(),
        on.stream().mapToDouble(p -> p.track().share()).toArray());
  }

  private static List<BoardShares.Test> tests(BoardShares shares) {
    List<BoardShares.Test> tests = new ArrayList<>();
    shares.edge().ifPresent(tests::add);
    shares.gradient().ifPresent(tests::add);
    return tests;
  }

  private static Map<String, BoardShares.Test> credible(List<Candidate> all) {
    double[] q = BenjaminiHochberg.qValues(all.stream().mapToDouble(c -> c.test().p()).toArray());
    Map<String, BoardShares.Test> found = new TreeMap<>();
    for (int i = 0; i < q.length; i++) {
      BoardShares.Test test = all.get(i).test();
      if (q[i] <= BELIEVED && !test.words().isEmpty()) {
        found.merge(all.get(i).raft(), test, (a, b) -> a.p() <= b.p() ? a : b);
      }
    }
    return found;
  }
}
