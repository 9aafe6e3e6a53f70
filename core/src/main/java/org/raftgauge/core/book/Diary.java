// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.book;

import java.util.List;

/**
 * What the grower wrote down day by day.
 *
 * @param placements which raft lay in which slot
 * @param events what happened to plants, in the order of time, then of lines
 * @param weighings plants weighed by hand
 * @param harvests what rafts yielded
 * @param calls the head grower's own words
 * @param climate climate by day
 * @param seen worklist rows seen
 */
public record Diary(
    List<Placement> placements,
    List<Event> events,
    List<Weighing> weighings,
    List<HarvestTotal> harvests,
    List<Call> calls,
    List<ClimateDay> climate,
    List<SeenItem> seen) {

  /** Copies the lists. */
  public Diary {
    placements = List.copyOf(placements);
    events = List.copyOf(events);
    weighings = List.copyOf(weighings);
    harvests = List.copyOf(harvests);
    calls = List.copyOf(calls);
    climate = List.copyOf(climate);
    seen = List.copyOf(seen);
  }

  /** Returns the same with other worklist rows seen. */
  Diary withSeen(List<SeenItem> rows) {
    return new Diary(placements, events, weighings, harvests, calls, climate, rows);
  }

  /** Returns a diary with nothing in it. */
  public static Diary empty() {
    return new Diary(List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of());
  }
}
