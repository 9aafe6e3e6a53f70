// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.run;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.raftgauge.batch.store.RaftDays;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.FarmDay;
import org.raftgauge.core.book.PlantLife;
import org.raftgauge.core.book.Planting;

/**
 * Finds the plantings that are over and of whose crop and variety something stands: the past cycles
 * that tonight's plants are held against. Of each crop and variety the latest cycles, of each of
 * those some rafts spread over the list: years of photos need not be read for a median.
 */
final class PastPlantings {
  private static final int MOST_CYCLES = 8;
  private static final int MOST_RAFTS = 8;

  /** Plantings that begin so many days after a cycle's first belong to it, as in cohorts. */
  private static final long SAME_CYCLE_DAYS = 2;

  private final FarmDay farmDay;
  private final Instant end;
  private final Set<String> standing = new HashSet<>();
  private final Map<Planting, Instant> over = new LinkedHashMap<>();

  private PastPlantings(CropBook book, LocalDate evening) {
    this.farmDay = book.farmDay();
    this.end = farmDay.start(evening.plusDays(1)).minusNanos(1);
    Set<Planting> stand = new HashSet<>();
    for (PlantLife life : book.plants()) {
      for (PlantLife.Stay stay : life.stays()) {
        if (stay.holdsAt(end)) {
          stand.add(stay.planting());
          standing.add(kind(stay.planting()));
        } else {
          over.merge(stay.planting(), stay.to().orElse(end), PastPlantings::later);
        }
      }
    }
    over.keySet().removeAll(stand);
  }

  /**
   * Finds them.
   *
   * @param book the crop book as known on the evening
   * @param evening the evening
   * @return rafts with the days on which the plantings stood, one day wider at either end
   */
  static List<RaftDays> of(CropBook book, LocalDate evening) {
    return new PastPlantings(book, evening).days();
  }

  private static Instant later(Instant a, Instant b) {
    return a.isAfter(b) ? a : b;
  }

  /** Tells what is compared: trays run on days after sowing, among themselves. */
  private static String kind(Planting planting) {
    String clock = planting.transplantedOn().isPresent() ? "planted" : "sown";
    return String.join("\n", planting.crop(), planting.variety(), clock);
  }

  private List<RaftDays> days() {
    Map<String, NavigableMap<LocalDate, List<Planting>>> kinds = new TreeMap<>();
    for (Planting planting : over.keySet()) {
      if (standing.contains(kind(planting)) && farmDay.start(planting.startsOn()).isBefore(end)) {
        kinds
            .computeIfAbsent(kind(planting), k -> new TreeMap<>())
            .computeIfAbsent(planting.startsOn(), d -> new ArrayList<>())
            .add(planting);
      }
    }
    List<RaftDays> days = new ArrayList<>();
    for (NavigableMap<LocalDate, List<Planting>> kind : kinds.values()) {
      List<List<Planting>> cycles = cycles(kind);
      cycles.subList(Math.max(0, cycles.size() - MOST_CYCLES), cycles.size()).stream()
          .flatMap(cycle -> some(cycle).stream())
          .map(this::window)
          .forEach(days::add);
    }
    return days;
  }

  private static List<List<Planting>> cycles(NavigableMap<LocalDate, List<Planting>> days) {
    List<List<Planting>> cycles = new ArrayList<>();
    LocalDate first = LocalDate.MIN;
    for (Map.Entry<LocalDate, List<Planting>> day : days.entrySet()) {
      if (day.getKey().minusDays(SAME_CYCLE_DAYS).isAfter(first)) {
        first = day.getKey();
        cycles.add(new ArrayList<>());
      }
      cycles.get(cycles.size() - 1).addAll(day.getValue());
    }
    return cycles;
  }

  /** Returns every so-manieth planting, the same ones each time. */
  private static List<Planting> some(List<Planting> plantings) {
    int n = Math.min(MOST_RAFTS, plantings.size());
    List<Planting> some = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      some.add(plantings.get((int) ((long) i * plantings.size() / n)));
    }
    return some;
  }

  private RaftDays window(Planting planting) {
    LocalDate last = farmDay.evening(over.get(planting)).plusDays(1);
    return new RaftDays(planting.raft(), planting.startsOn().minusDays(1), last);
  }
}
