// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.raftgauge.core.track.Judged;
import org.raftgauge.core.track.Verdict;

/**
 * What an evening came to.
 *
 * @param evening the farm's day
 * @param verdicts on stations, ponds, rafts and sites, in the order of {@link Judged#ORDER}
 * @param curves of rafts and sites
 * @param worklist tomorrow's work, most urgent first
 * @param hidden rows that it would have, had nobody marked them seen, done or put off
 * @param growth rafts to be drawn
 * @param stations stations that are not as they were
 */
public record EveningResult(
    LocalDate evening,
    List<Judged> verdicts,
    List<CurveRow> curves,
    List<Task> worklist,
    List<HiddenRow> hidden,
    List<RaftGrowth> growth,
    List<StationDoubt> stations) {

  /** Copies the lists. */
  public EveningResult {
    verdicts = List.copyOf(verdicts);
    curves = List.copyOf(curves);
    worklist = List.copyOf(worklist);
    hidden = List.copyOf(hidden);
    growth = List.copyOf(growth);
    stations = List.copyOf(stations);
  }

  /** Returns the rows of its worklist, with those that are hidden, by name. */
  public Set<String> rowNames() {
    Set<String> names = new TreeSet<>();
    Stream.concat(worklist.stream().map(Task::item), hidden.stream().map(HiddenRow::item))
        .forEach(
            item -> {
              names.add(item);
              if (Item.isOfSites(item)) {
                for (String site : Item.last(item).split("\\+", -1)) {
                  names.add(Item.stem(item) + "/" + site);
                }
              }
            });
    return names;
  }

  /** Counts the verdicts on sites; those that were not given are left out. */
  public Map<Verdict, Integer> siteCounts() {
    Map<Verdict, Integer> counts = new EnumMap<>(Verdict.class);
    for (Judged row : verdicts) {
      if (row.scope() == Judged.Scope.SITE) {
        counts.merge(row.verdict(), 1, Integer::sum);
      }
    }
    return counts;
  }
}
