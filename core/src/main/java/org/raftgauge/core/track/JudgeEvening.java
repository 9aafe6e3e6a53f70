// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.book.SiteGrid;
import org.raftgauge.core.history.CollectSeries;
import org.raftgauge.core.history.PlantSeries;

/** Says of everything that was seen on an evening how it stands. */
public final class JudgeEvening {

  private JudgeEvening() {}

  /**
   * Judges an evening from the series of all plants up to it.
   *
   * @param book the crop book: limits and emergence by crop
   * @param series what was seen of each plant, nothing later than the evening, those that have left
   *     too ({@link CollectSeries#withEnded}): they are the past cycles
   * @param evening the evening
   * @param rules how departures are judged
   * @return one row for each site seen that evening, each of their rafts and ponds, and each
   *     station in doubt, sorted
   */
  public static List<Judged> judge(
      CropBook book, List<PlantSeries> series, LocalDate evening, TrackRules rules) {
    return all(book, series, evening, new How(rules, Spread.IN_TURN)).rows();
  }

  /**
   * What is said on an evening.
   *
   * @param rows as {@link #judge} gives them
   * @param before of sites that stand and were seen last on an evening before: how they stood then
   */
  public record Said(List<Judged> rows, List<Judged> before) {

    /** Copies the lists. */
    public Said {
      rows = List.copyOf(rows);
      before = List.copyOf(before);
    }
  }

  /**
   * How an evening is judged.
   *
   * @param rules how departures are judged
   * @param spread goes through the rafts of an evening; the result is the same whatever it is
   */
  public record How(TrackRules rules, Spread spread) {}

  /**
   * Judges an evening as {@link #judge} does, and says how sites not seen that evening stood last.
   *
   * @param book the crop book
   * @param series what was seen of each plant
   * @param evening the evening
   * @param how by which rules, by how many hands
   * @return what is said
   */
  public static Said all(CropBook book, List<PlantSeries> series, LocalDate evening, How how) {
    TrackRules rules = how.rules();
    FarmPass pass = FarmPass.through(book, series, rules, how.spread());
    Set<PlantSeries> standing = Collections.newSetFromMap(new IdentityHashMap<>());
    standing.addAll(CollectSeries.standing(book, series, evening));
    Map<Boolean, List<Follow>> follows =
        pass.plants().stream()
            .filter(p -> standing.contains(p.series()))
            .collect(Collectors.partitioningBy(p -> seenOn(p, evening)));
    List<Follow> tonight = follows.get(true);
    List<Judged> rows = new ArrayList<>();
    boolean fresh = pass.lastEvening().filter(evening::equals).isPresent();
    Map<String, BoardShares.Test> boards = BoardPatterns.find(tonight, p -> grid(book, p, evening));
    List<Follow> asked = rules.has(TrackRules.Part.POND_GROWTH) ? tonight : List.of();
    PondGrowth growth = new PondGrowth(pass, asked, evening, s -> book.crop(s.planting()));
    JudgeGroups groups =
        new JudgeGroups(
            pass,
            evening,
            boards,
            new JudgeGroups.Also(JudgeTrays.judge(book, series, evening), growth));
    if (fresh) {
      rows.addAll(groups.stations());
      rows.addAll(groups.ponds());
      rows.addAll(groups.rafts());
    }
    JudgeSites sites = new JudgeSites(book, tonight, groups, rules);
    rows.addAll(sites.rows());
    rows.sort(Judged.ORDER);
    List<Judged> before =
        new JudgeSites(book, follows.get(false), groups, rules)
            .rows().stream().sorted(Judged.ORDER).toList();
    return new Said(rows, before);
  }

  private static boolean seenOn(Follow plant, LocalDate evening) {
    return plant.series().last().evening().equals(evening);
  }

  private static Optional<SiteGrid> grid(CropBook book, Follow plant, LocalDate evening) {
    return book.layout(plant.series().planting().layout(), evening).map(Layout::grid);
  }
}
