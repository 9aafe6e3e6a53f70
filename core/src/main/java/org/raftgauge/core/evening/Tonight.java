// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.evening;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.raftgauge.core.book.CropBook;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.book.SiteId;
import org.raftgauge.core.history.PlantSeries;
import org.raftgauge.core.track.JudgeEvening;
import org.raftgauge.core.track.Judged;

/** What is known as an evening ends: the ground of its worklist. */
record Tonight(CropBook book, Seen seen, Plants plants, JudgeEvening.Said said, LocalDate evening) {

  List<Judged> verdicts() {
    return said.rows();
  }

  LocalDate tomorrow() {
    return evening.plusDays(1);
  }

  /** Returns the first planting on a raft tonight. */
  Optional<Planting> planting(String raft) {
    return book.plantingsOn(raft, evening).stream().findFirst();
  }

  Task.Where whole(String raft) {
    return at(raft, List.of());
  }

  Task.Where at(String raft, List<SiteId> sites) {
    Optional<Planting> planting = planting(raft);
    return new Task.Where(
        "",
        planting.map(Planting::pond).orElse(""),
        planting.map(Planting::berth).orElse(""),
        raft,
        sites);
  }

  /** Returns the day on which the raft's planting began: it tells this crop from the next. */
  String cycle(String raft) {
    return planting(raft).map(p -> p.startsOn().toString()).orElse("none");
  }

  LocalDate evening(RaftLook look) {
    return book.farmDay().evening(look.takenAt().toInstant());
  }

  /** Returns tonight's looks at rafts. */
  List<RaftLook> looks() {
    return seen.rafts().stream().filter(look -> evening(look).equals(evening)).toList();
  }

  /** Returns the rafts that a photo of tonight shows, well or badly. */
  Set<String> photographed() {
    Set<String> rafts = new TreeSet<>();
    looks().forEach(look -> rafts.add(look.raft()));
    return rafts;
  }

  /** Returns the stations that are not as they were tonight. */
  List<StationDoubt> stations() {
    return seen.stations().stream().filter(d -> d.evening().equals(evening)).toList();
  }

  /** Returns tonight's series of plants that were seen. */
  List<PlantSeries> seenTonight() {
    return plants.standing().stream().filter(s -> s.last().evening().equals(evening)).toList();
  }
}
