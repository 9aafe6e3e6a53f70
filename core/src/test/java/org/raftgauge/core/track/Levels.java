// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.raftgauge.core.book.Planting;
import org.raftgauge.core.reference.HouseClimate;

/** Levels of patches for tests. */
final class Levels {
  static final LocalDate FIRST = LocalDate.of(2027, 3, 1);

  private Levels() {}

  static Cohort cohort() {
    return new Cohort(FIRST, new PastCycles(Optional.empty(), HouseClimate.NONE));
  }

  /** Returns a cohort that has learned from a week of photos that its plants grow by 0.15 a day. */
  static Cohort settled() {
    Cohort settled = cohort();
    Cohort elsewhere = cohort();
    List<Patch> rafts =
        IntStream.range(0, 8).mapToObj(i -> patch("L" + i, "P", elsewhere)).toList();
    for (int day = 0; day < 8; day++) {
      List<Cohort.Level> tonight = new ArrayList<>();
      for (Patch raft : rafts) {
        tonight.add(tonight(raft, day, 1 + 0.15 * day, "learned"));
      }
      settled.learnRate(tonight);
      tonight.forEach(level -> level.patch().add(level.level()));
    }
    return settled;
  }

  static Patch patch(String raft, String pond, Cohort cohort) {
    Planting planting =
        new Planting(
            raft,
            pond,
            "",
            "pretend",
            "",
            "board",
            Set.of(),
            Optional.empty(),
            Optional.of(FIRST),
            Optional.empty(),
            Optional.empty(),
            "");
    return new Patch(raft, planting, cohort);
  }

  /** Returns a level of 20 plants with an error of 2 %. */
  static PatchLevel level(int day, double lnArea, String station) {
    return new PatchLevel(FIRST.plusDays(day), day + 0.75, lnArea, 0.02, 20, station, false, 0);
  }

  static Cohort.Level tonight(Patch patch, int day, double lnArea, String station) {
    return new Cohort.Level(patch, level(day, lnArea, station));
  }
}
