// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.track;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.raftgauge.core.book.Planting;

/** Levels of patches for tests. */
final class Levels {
  static final LocalDate FIRST = LocalDate.of(2027, 3, 1);

  private Levels() {}

  static Cohort cohort() {
    return new Cohort(FIRST, new PastCycles(Optional.empty()));
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
    return new PatchLevel(FIRST.plusDays(day), day + 0.75, lnArea, 0.02, 20, station, false);
  }

  static Cohort.Level tonight(Patch patch, int day, double lnArea, String station) {
    return new Cohort.Level(patch, level(day, lnArea, station));
  }
}
